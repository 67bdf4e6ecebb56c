using System.Net;
using GameNight.TestKit.Running;
using GameNight.Web.Startup;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Http;

namespace GameNight.Web.Tests.Startup;

public class TrustedProxyTests
{
    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData("127.0.0.1")]
    [InlineData("10.1.1.1, 127.0.0.0/8")]
    public async Task What_a_named_proxy_says_about_the_caller_is_taken(string proxies) => Assert.Equal(
        "https 203.0.113.7", await SeenAsync(proxies, "203.0.113.7", "https"));

    [Theory]
    [InlineData("")]
    [InlineData("10.1.1.1")]
    [InlineData("10.0.0.0/8, fd00::/8")]
    public async Task What_anybody_else_says_is_not_looked_at(string proxies) => Assert.Equal(
        "http 127.0.0.1", await SeenAsync(proxies, "203.0.113.7", "https"));

    [Fact]
    public async Task What_a_caller_claims_before_the_proxy_adds_its_word_is_not_believed() => Assert.Equal(
        "https 203.0.113.7", await SeenAsync("127.0.0.1", "127.0.0.9, 198.51.100.1, 203.0.113.7", "https"));

    [Theory]
    [InlineData(null, null)]
    [InlineData("127.0.0.0/8", "; secure")]
    public async Task Cookies_are_for_encrypted_ways_once_a_named_proxy_says_that_it_is_one(string? proxies, string? marked)
    {
        await using var app = await RunningApp.StartAsync(
            Cancellation, solverSlices: 0, new Dictionary<string, string?> { ["GAMENIGHT_TRUSTED_PROXIES"] = proxies });
        using var request = new HttpRequestMessage(HttpMethod.Get, "/first");
        request.Headers.Add("X-Forwarded-Proto", "https");
        request.Headers.Add("X-Forwarded-For", "203.0.113.7");

        var answer = await app.Client.SendAsync(request, Cancellation);

        var cookie = Assert.Single(answer.Headers.GetValues("Set-Cookie"));
        Assert.Equal(marked is not null, cookie.Contains("; secure", StringComparison.OrdinalIgnoreCase));
    }

    /// <summary>How a request from 127.0.0.1 looks behind the forwarded headers.</summary>
    private static async Task<string> SeenAsync(string proxies, string forwardedFor, string forwardedProto)
    {
        var builder = WebApplication.CreateEmptyBuilder(new());
        builder.WebHost.UseKestrelCore();
        await using var app = builder.Build();
        app.Urls.Add($"http://127.0.0.1:{RunningApp.FreePort()}");
        app.UseTrustedProxies(new GameNightOptions { TrustedProxies = proxies });
        app.Run(context => context.Response.WriteAsync($"{context.Request.Scheme} {context.Connection.RemoteIpAddress}", Cancellation));
        await app.StartAsync(Cancellation);
        using var client = new HttpClient();
        using var request = new HttpRequestMessage(HttpMethod.Get, app.Urls.Single());
        request.Headers.Add("X-Forwarded-For", forwardedFor);
        request.Headers.Add("X-Forwarded-Proto", forwardedProto);
        var answer = await client.SendAsync(request, Cancellation);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        return await answer.Content.ReadAsStringAsync(Cancellation);
    }
}
