using GameNight.Web.Startup;

namespace GameNight.Web.Tests.Startup;

public class OpenWaysTests
{
    [Theory]
    [InlineData("https://night.example")]
    [InlineData("http://localhost:5080")]
    [InlineData("http://127.0.0.1")]
    [InlineData("http://[::1]:5080")]
    [InlineData("http://192.168.1.20:5080")]
    [InlineData("http://[fd00::7]:5080")]
    [InlineData("http://kitchen:5080")]
    [InlineData("http://kitchen.local")]
    public void Lead_through_this_machine_and_the_home(string address) => Assert.True(OpenWays.Allow(new Uri(address)));

    [Theory]
    [InlineData("http://night.example")]
    [InlineData("http://172.32.0.1")]
    [InlineData("http://203.0.113.7")]
    [InlineData("http://[2001:db8::7]")]
    [InlineData("http://local.example")]
    public void Do_not_lead_through_the_internet(string address) => Assert.False(OpenWays.Allow(new Uri(address)));
}
