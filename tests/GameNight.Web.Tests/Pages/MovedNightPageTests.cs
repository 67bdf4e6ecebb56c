using System.Net;
using GameNight.Nights.Records;

namespace GameNight.Web.Tests.Pages;

public class MovedNightPageTests(SharedApp site)
{
    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_moved_night_says_from_when_to_when_and_takes_the_confirmation_without_script()
    {
        var invited = await AnsweredAsync();
        await invited.Host.ChangeAsync(invited.Night, facts => facts with { ServeAt = facts.ServeAt.PlusDays(1) }, Cancellation);

        var moved = (await invited.OpenAsync()).Html;
        var sent = await invited.App.Client.PostAsync($"{invited.Link}/confirm", null, Cancellation);

        Assert.Matches("moved from Saturday, .*19:30 to Sunday, .*19:30", moved);
        Assert.Contains("Yes, I am coming", moved, StringComparison.Ordinal);
        Assert.Equal($"{invited.Link}?sent=confirmed", sent.Headers.Location!.ToString());
        Assert.DoesNotContain("moved from", (await invited.OpenAsync()).Html, StringComparison.Ordinal);
        Assert.False((await invited.SeenByHostAsync()).HasNotConfirmed);
    }

    [Fact]
    public async Task A_cancelled_night_says_so_on_top_and_takes_no_answer()
    {
        var invited = await AnsweredAsync();
        var page = await invited.OpenAsync();
        var before = await invited.App.Client.GetStringAsync($"{invited.Link}/night.ics", Cancellation);
        await invited.Host.CancelAsync(invited.Night, Cancellation);

        var sent = await page.SendAsync(Cancellation, ("presence", "NotComing"));
        var html = (await invited.OpenAsync()).Html;
        var after = await invited.App.Client.GetStringAsync($"{invited.Link}/night.ics", Cancellation);

        Assert.Equal(HttpStatusCode.SeeOther, sent.StatusCode);
        Assert.Contains("This night is called off", html, StringComparison.Ordinal);
        Assert.DoesNotContain("Send my answer", html, StringComparison.Ordinal);
        Assert.Equal(Presence.Coming, (await invited.SeenByHostAsync()).Answer!.Presence);
        Assert.Contains("STATUS:CONFIRMED", before, StringComparison.Ordinal);
        Assert.Contains("STATUS:CANCELLED", after, StringComparison.Ordinal);
        Assert.Contains("SEQUENCE:0", before, StringComparison.Ordinal);
        Assert.Contains("SEQUENCE:1", after, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Remembered_wishes_fill_the_next_invitation_until_they_are_forgotten()
    {
        var invited = await site.InviteAsync();
        await (await invited.OpenAsync()).SendAsync(
            Cancellation, ("presence", "Coming"), ("hunger", "More"), ("consent", "on"), ("must0-Nuts", "t"), ("note", "only for tonight"), ("remember", "on"));
        var night = await invited.Host.OpenNightAsync([invited.Guest], Cancellation);
        var next = invited with { Night = night, Link = await invited.Host.LinkAsync(night, invited.Guest, Cancellation) };

        var filled = (await next.OpenAsync()).Html;
        await invited.App.Client.PostAsync($"{next.Link}/forget", null, Cancellation);
        var forgotten = (await next.OpenAsync()).Html;

        Assert.Matches("value=\"More\" checked", filled);
        Assert.Matches("name=\"consent\" checked", filled);
        Assert.Matches("value=\"t\" selected", filled);
        Assert.DoesNotContain("only for tonight", filled, StringComparison.Ordinal);
        Assert.DoesNotMatch("value=\"t\" selected", forgotten);
        Assert.DoesNotMatch("name=\"consent\" checked", forgotten);
        Assert.DoesNotContain("Forget what you remember", forgotten, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Another_guests_name_is_read_only_with_their_tick()
    {
        var invited = await site.InviteAsync("Wilhelmine");
        var reader = await invited.Host.KnowAsync("Reader", Cancellation);
        var night = await invited.Host.OpenNightAsync([invited.Guest, reader], Cancellation);
        var shown = invited with { Night = night, Link = await invited.Host.LinkAsync(night, invited.Guest, Cancellation) };
        var reading = invited with { Night = night, Link = await invited.Host.LinkAsync(night, reader, Cancellation) };

        await (await shown.OpenAsync()).SendAsync(Cancellation, ("presence", "Coming"));
        var hidden = (await reading.OpenAsync()).Html;
        await (await shown.OpenAsync()).SendAsync(Cancellation, ("presence", "Coming"), ("showsName", "on"));
        var named = (await reading.OpenAsync()).Html;

        Assert.Contains("2 people come so far.", hidden, StringComparison.Ordinal);
        Assert.DoesNotContain("Wilhelmine", hidden, StringComparison.Ordinal);
        Assert.Contains("2 people come so far, among them Wilhelmine.", named, StringComparison.Ordinal);
    }

    private async Task<Invited> AnsweredAsync()
    {
        var invited = await site.InviteAsync();
        await (await invited.OpenAsync()).SendAsync(Cancellation, ("presence", "Coming"));
        return invited;
    }
}
