using GameNight.TestKit.Running;
using GameNight.Web.Tests.Pages;

namespace GameNight.Web.Tests.Visibility;

/// <summary>A marked note and a link are followed through a whole journey: where they may lie, and where they may not.</summary>
public sealed class MarkerTests(SharedApp site)
{
    private const string Marker = "Zirbelmark in the left cupboard";

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_private_note_and_a_link_lie_in_no_log_no_table_and_nobody_elses_page()
    {
        var invited = await site.InviteAsync("Xanthippe");
        var other = await site.InviteAsync("Rui");
        await invited.Host.SeenByAsync(invited.Night, Nights.Records.HostRole.Cook, seesNotes: false, Cancellation);
        var page = await invited.OpenAsync();
        await page.SendAsync(Cancellation, ("presence", "Coming"), ("consent", "on"), ("note", Marker), ("must0-Nuts", "t"));
        var again = await invited.OpenAsync();
        await again.SendAsync(Cancellation, ("presence", "Undecided"), ("consent", "on"), ("note", Marker));
        await invited.App.Client.GetAsync($"{invited.Link}/night.ics", Cancellation);
        await invited.App.Client.GetAsync($"{invited.Link}?sent=yes", Cancellation);
        await invited.App.Client.PostAsync($"{invited.Link}/not-me", null, Cancellation);
        var token = invited.Link["/i/".Length..];

        Assert.Contains(Marker, (await invited.OpenAsync()).Html, StringComparison.Ordinal);
        Assert.Equal(Marker, (await invited.SeenByHostAsync()).Note);
        foreach (var (where, text) in new[]
        {
            ("the log", invited.App.Log),
            ("the database", await EverythingAsync(invited.App)),
            ("another guest's page", (await other.OpenAsync()).Html),
            ("the calendar", await invited.App.Client.GetStringAsync($"{invited.Link}/night.ics", Cancellation)),
            ("a stranger's page", await invited.App.Client.GetStringAsync("/sign-in", Cancellation)),
        })
        {
            Assert.False(text.Contains(Marker, StringComparison.OrdinalIgnoreCase), $"The note lies in {where}.");
            Assert.False(text.Contains(token, StringComparison.Ordinal), $"The link lies in {where}.");
        }

        Assert.DoesNotContain("Xanthippe", invited.App.Log, StringComparison.Ordinal);
    }

    private static async Task<string> EverythingAsync(RunningApp app)
    {
        var tables = await HostAtWork.AskAsync<string[]>(
            app, "select array_agg(relname::text) from pg_class where relnamespace = 'public'::regnamespace and relkind = 'r'", Cancellation);
        var text = "";
        foreach (var table in tables)
        {
            text += await HostAtWork.AskAsync<string>(app, $"select coalesce(string_agg(t::text, ' '), '') from {table} t", Cancellation);
        }

        return text;
    }
}
