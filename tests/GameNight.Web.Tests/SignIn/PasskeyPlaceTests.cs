using GameNight.Web.SignIn;
using GameNight.Web.Startup;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Identity;

namespace GameNight.Web.Tests.SignIn;

public class PasskeyPlaceTests
{
    [Theory]
    [InlineData("", "localhost:5080", true)]
    [InlineData("", "127.0.0.1:5080", false)]
    [InlineData("", "evil.example", false)]
    [InlineData("https://night.example", "night.example", true)]
    [InlineData("https://night.example", "localhost:5080", false)]
    [InlineData("https://night.example", "evil.example", false)]
    [InlineData("http://night.example", "night.example", false)]
    [InlineData("https://192.168.1.5", "192.168.1.5", false)]
    [InlineData("http://localhost:5080", "localhost:5080", true)]
    public void Passkeys_are_offered_where_browsers_allow_them(string publicAddress, string openedAs, bool works)
    {
        var request = new DefaultHttpContext().Request;
        request.Host = new HostString(openedAs);

        Assert.Equal(works, Place(publicAddress).WorksFor(request));
    }

    [Theory]
    [InlineData("", "http://localhost:5080", false, true)]
    [InlineData("", "http://localhost:5080", true, false)]
    [InlineData("", "https://evil.example", false, false)]
    [InlineData("https://night.example", "https://night.example", false, true)]
    [InlineData("https://night.example", "https://evil.night.example", false, false)]
    [InlineData("https://night.example", "http://night.example", false, false)]
    [InlineData("https://night.example", "not an address", false, false)]
    public async Task A_passkey_used_on_another_page_is_refused(string publicAddress, string origin, bool isFramed, bool isTaken)
    {
        var options = new IdentityPasskeyOptions();
        Place(publicAddress).Apply(options);

        Assert.Equal(isTaken, await options.ValidateOrigin!(new PasskeyOriginValidationContext
        {
            HttpContext = new DefaultHttpContext(),
            Origin = origin,
            CrossOrigin = isFramed,
        }));
        Assert.Equal("required", options.UserVerificationRequirement);
    }

    private static PasskeyPlace Place(string publicAddress) => new(new GameNightOptions { PublicAddress = publicAddress });
}
