using System.Net;
using System.Net.WebSockets;

namespace GameNight.Web.Tests.Pages;

public class ProtectionTests(SharedApp site)
{
    private const string Foreign = "https://elsewhere.example";

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Whoever_guesses_links_is_soon_not_looked_up_and_nobody_else_notices()
    {
        var invited = await site.InviteAsync();
        var guesser = await site.ClientAsync();
        var answers = new List<HttpResponseMessage>();
        for (var guess = 0; guess < 30; guess++)
        {
            answers.Add(await guesser.GetAsync($"/i/{new string('x', 41)}{guess:D2}", Cancellation));
        }

        var refused = answers[^1];
        Assert.Equal(HttpStatusCode.NotFound, answers[0].StatusCode);
        Assert.Equal(HttpStatusCode.TooManyRequests, refused.StatusCode);
        Assert.True(refused.Headers.RetryAfter!.Delta > TimeSpan.Zero);
        Assert.Contains("try again", await refused.TextAsync(), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.TooManyRequests, (await guesser.GetAsync(invited.Link, Cancellation)).StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await invited.App.Client.GetAsync(invited.Link, Cancellation)).StatusCode);
    }

    [Fact]
    public async Task A_form_sent_over_and_over_is_held_up_without_touching_another_guests()
    {
        var (busy, other) = (await site.InviteAsync(), await site.InviteAsync("Mara"));
        var client = await site.ClientAsync();
        var statuses = new List<HttpStatusCode>();
        for (var time = 0; time < 25; time++)
        {
            statuses.Add((await client.PostAsync(busy.Link, new FormUrlEncodedContent([]), Cancellation)).StatusCode);
        }

        Assert.Equal(HttpStatusCode.BadRequest, statuses[0]);
        Assert.Equal(HttpStatusCode.TooManyRequests, statuses[^1]);
        Assert.Equal(
            HttpStatusCode.BadRequest,
            (await client.PostAsync(other.Link, new FormUrlEncodedContent([]), Cancellation)).StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await client.GetAsync(busy.Link, Cancellation)).StatusCode);
    }

    [Fact]
    public async Task Passwords_tried_from_one_address_are_held_up_and_another_address_is_not()
    {
        using var visitor = new Visitor((await site.AppAsync()).Address);
        var statuses = new List<HttpStatusCode>();
        for (var time = 0; time < 25; time++)
        {
            statuses.Add((await visitor.PostAsync("/sign-in", [("email", $"nobody{time}@example.org")])).StatusCode);
        }

        Assert.Equal(HttpStatusCode.TooManyRequests, statuses[^1]);
        using var host = new Visitor((await site.AppAsync()).Address);
        Assert.Equal(HttpStatusCode.Redirect, (await host.SignInAsync(SharedApp.Email, SharedApp.Password)).StatusCode);
    }

    [Fact]
    public async Task A_flood_from_one_address_is_answered_with_wait()
    {
        var client = await site.ClientAsync();

        var statuses = await Task.WhenAll(Enumerable.Range(0, 600).Select(
            async _ => (await client.GetAsync("/sign-in", Cancellation)).StatusCode));

        Assert.Contains(HttpStatusCode.TooManyRequests, statuses);
        Assert.Equal(HttpStatusCode.OK, (await client.GetAsync("/health/live", Cancellation)).StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await (await site.ClientAsync()).GetAsync("/sign-in", Cancellation)).StatusCode);
    }

    [Theory]
    [InlineData(Foreign, false)]
    [InlineData(null, true)]
    public async Task Live_connections_are_opened_from_our_own_pages_only(string? origin, bool isOpened)
    {
        var app = await site.AppAsync();
        using var socket = new ClientWebSocket();
        socket.Options.SetRequestHeader("Origin", origin ?? app.Address.GetLeftPart(UriPartial.Authority));
        socket.Options.CollectHttpResponseDetails = true;
        var address = new UriBuilder(app.Address) { Scheme = "ws", Path = "/_blazor" }.Uri;

        if (isOpened)
        {
            await socket.ConnectAsync(address, Cancellation);
            Assert.Equal(WebSocketState.Open, socket.State);
        }
        else
        {
            await Assert.ThrowsAsync<WebSocketException>(() => socket.ConnectAsync(address, Cancellation));
            Assert.Equal(HttpStatusCode.Forbidden, socket.HttpStatusCode);
        }
    }

    [Fact]
    public async Task Other_sites_may_read_nothing()
    {
        var client = await site.ClientAsync();
        foreach (var path in new[] { "/sign-in", "/api/plans", "/openapi/v1.json", "/health/ready" })
        {
            using var request = new HttpRequestMessage(HttpMethod.Options, path);
            request.Headers.Add("Origin", Foreign);
            request.Headers.Add("Access-Control-Request-Method", "POST");
            var answer = await client.SendAsync(request, Cancellation);

            Assert.False(answer.Headers.Contains("Access-Control-Allow-Origin"), path);
        }
    }

    [Theory]
    [InlineData("TRACE")]
    [InlineData("DELETE")]
    public async Task Methods_that_nobody_needs_are_refused(string method)
    {
        using var request = new HttpRequestMessage(new HttpMethod(method), "/sign-in");

        var answer = await (await site.ClientAsync()).SendAsync(request, Cancellation);

        Assert.Equal(HttpStatusCode.MethodNotAllowed, answer.StatusCode);
    }

    [Theory]
    [InlineData("GET", "Purpose", "prefetch")]
    [InlineData("GET", "Sec-Purpose", "prefetch;prerender")]
    [InlineData("GET", "User-Agent", "previewer/1.0 (+https://chat.example/previews)")]
    [InlineData("HEAD", "User-Agent", "uptime/2")]
    [InlineData("OPTIONS", "User-Agent", "scanner")]
    public async Task A_previewer_learns_nothing_and_leaves_nothing_behind(string method, string header, string value)
    {
        var invited = await site.InviteAsync("Quirin", facts => facts with { Title = "Secret title" });
        using var request = new HttpRequestMessage(new HttpMethod(method), invited.Link);
        request.Headers.TryAddWithoutValidation(header, value);

        var answer = await (await site.ClientAsync()).SendAsync(request, Cancellation);
        var page = await answer.DocumentAsync();

        Assert.False(answer.Headers.Contains("Set-Cookie"));
        Assert.DoesNotContain("Secret title", $"{page.Title}{page.Head?.InnerHtml}", StringComparison.Ordinal);
        Assert.DoesNotContain("Quirin", $"{page.Title}{page.Head?.InnerHtml}", StringComparison.Ordinal);
        Assert.Null((await invited.SeenByHostAsync()).Answer);
        if (method == "HEAD")
        {
            Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
            Assert.Equal("", await answer.TextAsync());
        }
    }
}
