using System.Net;
using System.Text.RegularExpressions;

namespace GameNight.Web.Tests.Pages;

public partial class HeaderTests(SharedApp site)
{
    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData("/sign-in")]
    [InlineData("/no-such-page")]
    [InlineData("/health/live")]
    [InlineData("/css/plain.css")]
    [InlineData("/openapi/v1.json")]
    public async Task Every_answer_forbids_framing_and_guessing_of_types(string path)
    {
        var answer = await (await site.ClientAsync()).GetAsync(path, Cancellation);

        Assert.Equal("nosniff", Assert.Single(answer.Headers.GetValues("X-Content-Type-Options")));
        Assert.Contains("frame-ancestors 'none'", Policy(answer), StringComparison.Ordinal);
        Assert.Contains("object-src 'none'", Policy(answer), StringComparison.Ordinal);
        Assert.DoesNotContain("unsafe-eval", Policy(answer), StringComparison.Ordinal);
        Assert.False(answer.Headers.Contains("Server"));
    }

    [Fact]
    public async Task Scripts_need_a_nonce_that_is_never_the_same_twice()
    {
        var client = await site.ClientAsync();

        var first = Nonce().Match(Policy(await client.GetAsync("/sign-in", Cancellation))).Groups[1].Value;
        var second = Nonce().Match(Policy(await client.GetAsync("/sign-in", Cancellation))).Groups[1].Value;

        Assert.InRange(first.Length, 22, 64);
        Assert.NotEqual(first, second);
        Assert.DoesNotContain("script-src 'self' 'unsafe-inline'", Policy(await client.GetAsync("/sign-in", Cancellation)), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Secret_pages_are_not_stored_and_not_told_to_other_sites()
    {
        var invited = await site.InviteAsync();

        foreach (var path in new[] { invited.Link, $"{invited.Link}/night.ics", "/i/unknown" })
        {
            var answer = await invited.App.Client.GetAsync(path, Cancellation);
            Assert.True(answer.Headers.CacheControl!.NoStore, path);
            Assert.Equal("no-referrer", Assert.Single(answer.Headers.GetValues("Referrer-Policy")));
            Assert.Contains("noindex", Assert.Single(answer.Headers.GetValues("X-Robots-Tag")), StringComparison.Ordinal);
            Assert.DoesNotContain("unsafe-inline", Policy(answer), StringComparison.Ordinal);
        }
    }

    [Theory]
    [InlineData("/health/live")]
    [InlineData("/health/ready")]
    public async Task Health_is_told_to_whoever_asks(string path)
    {
        var answer = await (await site.ClientAsync()).GetAsync(path, Cancellation);

        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Equal("Healthy", await answer.TextAsync());
    }

    [Theory]
    [InlineData("/no-such-page")]
    [InlineData("/g/not-a-guid")]
    [InlineData("/css/no-such.css")]
    public async Task A_page_that_is_not_there_says_so_plainly(string path)
    {
        var answer = await (await site.ClientAsync()).GetAsync(path, Cancellation);

        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
        Assert.Contains("This page is not there, or not for you.", await answer.TextAsync(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_call_of_the_interface_that_is_not_there_is_answered_for_programs()
    {
        var answer = await (await site.ClientAsync()).GetAsync("/api/no-such-thing", Cancellation);

        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
        Assert.Equal("application/problem+json", answer.Content.Headers.ContentType!.MediaType);
    }

    private static string Policy(HttpResponseMessage answer) => Assert.Single(answer.Headers.GetValues("Content-Security-Policy"));

    [GeneratedRegex("'nonce-([^']+)'")]
    private static partial Regex Nonce();
}
