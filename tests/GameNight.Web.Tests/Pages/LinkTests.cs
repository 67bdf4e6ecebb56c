using System.Net;

namespace GameNight.Web.Tests.Pages;

public class LinkTests(SharedApp site)
{
    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData("aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa")]
    [InlineData("short")]
    [InlineData("%2e%2e%2f%2e%2e")]
    [InlineData("aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa'")]
    [InlineData("<script>alert(1)<script>")]
    public async Task An_unknown_or_malformed_link_is_a_plain_page_that_says_whom_to_ask(string token)
    {
        var client = await site.ClientAsync();

        var looked = await client.GetAsync($"/i/{token}", Cancellation);
        var sent = await client.PostAsync($"/i/{token}", new FormUrlEncodedContent([new("presence", "Coming")]), Cancellation);
        var calendar = await client.GetAsync($"/i/{token}/night.ics", Cancellation);

        foreach (var answer in new[] { looked, sent, calendar })
        {
            Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
            var text = await answer.TextAsync();
            Assert.Contains("This link is not valid", text, StringComparison.Ordinal);
            Assert.DoesNotContain("alert(1)", text, StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task A_renewed_link_ends_the_old_one_at_once()
    {
        var invited = await site.InviteAsync();

        await invited.Host.RenewLinkAsync(invited.Night, invited.Guest, Cancellation);

        var old = await invited.App.Client.GetAsync(invited.Link, Cancellation);
        var renewed = await invited.App.Client.GetAsync(await invited.Host.LinkAsync(invited.Night, invited.Guest, Cancellation), Cancellation);
        Assert.Equal(HttpStatusCode.NotFound, old.StatusCode);
        Assert.Equal(HttpStatusCode.OK, renewed.StatusCode);
    }

    [Fact]
    public async Task An_ended_link_says_that_the_night_is_over()
    {
        var invited = await site.InviteAsync();
        var page = await invited.OpenAsync();

        await invited.Host.ExpireLinksAsync(invited.Night, Cancellation);

        var looked = await invited.App.Client.GetAsync(invited.Link, Cancellation);
        var sent = await page.SendAsync(Cancellation, ("presence", "Coming"));
        foreach (var answer in new[] { looked, sent })
        {
            Assert.Equal(HttpStatusCode.Gone, answer.StatusCode);
            Assert.Contains("This link has ended", await answer.TextAsync(), StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task One_guests_link_shows_nothing_of_another()
    {
        var (rui, eva) = (await site.InviteAsync("Rui"), await site.InviteAsync("Eva"));
        await (await eva.OpenAsync()).SendAsync(Cancellation, ("presence", "Coming"), ("consent", "on"), ("note", "only for the host"));

        var page = await rui.OpenAsync();

        Assert.DoesNotContain("Eva", page.Html, StringComparison.Ordinal);
        Assert.DoesNotContain("only for the host", page.Html, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Links_and_notes_are_not_written_to_the_log()
    {
        var invited = await site.InviteAsync();
        await (await invited.OpenAsync()).SendAsync(Cancellation, ("presence", "Coming"), ("consent", "on"), ("note", "very private words"));

        Assert.DoesNotContain(invited.Link["/i/".Length..], invited.App.Log, StringComparison.Ordinal);
        Assert.DoesNotContain("very private words", invited.App.Log, StringComparison.Ordinal);
    }
}
