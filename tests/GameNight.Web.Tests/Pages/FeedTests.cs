using System.Net;
using System.Text.RegularExpressions;

namespace GameNight.Web.Tests.Pages;

public sealed partial class FeedTests(SharedApp site)
{
    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Lists_every_night_of_the_guest_and_says_what_is_called_off()
    {
        var invited = await site.InviteAsync();
        var second = await invited.Host.OpenNightAsync([invited.Guest], Cancellation, facts => facts with { Title = "Second night" });
        var third = await invited.Host.OpenNightAsync([invited.Guest], Cancellation, facts => facts with { Title = "Third night" });
        await (await invited.OpenAsync()).SendAsync(
            Cancellation, ("presence", "Coming"), ("consent", "on"), ("must0-Lupin", "a"), ("note", "Zirbelmark"));
        var feed = await FeedAsync(invited);
        await invited.Host.CancelAsync(second, Cancellation);
        var link = await invited.Host.LinkAsync(third, invited.Guest, Cancellation);
        await (await GameNight.TestKit.Running.AnswerPage.OpenAsync(invited.App.Client, link, Cancellation))
            .SendAsync(Cancellation, ("presence", "NotComing"));

        var text = Unfolded().Replace(await invited.App.Client.GetStringAsync(feed, Cancellation), "");

        Assert.Equal(["CANCELLED", "CONFIRMED"], Regex.Matches(text, "^STATUS:(\\w+)", RegexOptions.Multiline).Select(one => one.Groups[1].Value).Order());
        Assert.Contains("Rua das Flores 7", text, StringComparison.Ordinal);
        Assert.Contains("REFRESH-INTERVAL;VALUE=DURATION:PT1H", text, StringComparison.Ordinal);
        Assert.DoesNotMatch("(?i)zirbelmark|lupin", text);
    }

    [Fact]
    public async Task Is_kept_until_something_changes_and_never_by_anybody_between()
    {
        var invited = await site.InviteAsync();
        var feed = await FeedAsync(invited);
        var first = await invited.App.Client.GetAsync(feed, Cancellation);
        Assert.Equal("text/calendar", first.Content.Headers.ContentType!.MediaType);
        Assert.Equal("no-cache, private", string.Join(", ", first.Headers.CacheControl!.ToString().Split(", ").Order()));

        Assert.Equal(HttpStatusCode.NotModified, (await AgainAsync(invited, feed, first)).StatusCode);

        await (await invited.OpenAsync()).SendAsync(Cancellation, ("presence", "Coming"));
        Assert.Equal(HttpStatusCode.OK, (await AgainAsync(invited, feed, first)).StatusCode);
    }

    [Fact]
    public async Task Ends_when_the_guest_makes_another_link_or_leaves()
    {
        var invited = await site.InviteAsync();
        var first = await FeedAsync(invited);
        var second = await FeedAsync(invited);

        Assert.NotEqual(first, second);
        Assert.Equal(HttpStatusCode.NotFound, (await invited.App.Client.GetAsync(first, Cancellation)).StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await invited.App.Client.GetAsync(second, Cancellation)).StatusCode);

        await invited.App.Client.PostAsync(
            $"{invited.Link}/my-data/remove", new FormUrlEncodedContent([new("sure", "on")]), Cancellation);
        Assert.Equal(HttpStatusCode.NotFound, (await invited.App.Client.GetAsync(second, Cancellation)).StatusCode);
    }

    private static async Task<string> FeedAsync(Invited invited)
    {
        var made = await invited.App.Client.PostAsync($"{invited.Link}/messages/calendar", null, Cancellation);
        Assert.Equal(HttpStatusCode.SeeOther, made.StatusCode);
        var page = await (await invited.App.Client.GetAsync($"{invited.Link}/messages", Cancellation)).DocumentAsync();
        return new Uri(page.QuerySelector("#feed")!.GetAttribute("value")!).AbsolutePath;
    }

    private static Task<HttpResponseMessage> AgainAsync(Invited invited, string feed, HttpResponseMessage before)
    {
        var request = new HttpRequestMessage(HttpMethod.Get, feed);
        request.Headers.IfNoneMatch.Add(before.Headers.ETag!);
        return invited.App.Client.SendAsync(request, Cancellation);
    }

    [GeneratedRegex("\r\n[ \t]")]
    private static partial Regex Unfolded();
}
