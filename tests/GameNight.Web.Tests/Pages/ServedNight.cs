using GameNight.Nights.Records;
using GameNight.TestKit.Running;

namespace GameNight.Web.Tests.Pages;

/// <summary>A night that was served, with the guests who came by their names.</summary>
internal sealed record ServedNight(RunningApp App, HostAtWork Host, NightId Night, IReadOnlyDictionary<string, GuestId> Guests)
{
    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    /// <summary>Everybody says that they come, and so many days ago they did.</summary>
    public static async Task<ServedNight> OfAsync(SharedApp site, int daysAgo, params IReadOnlyList<string> names)
    {
        var host = await site.HostAsync();
        var guests = new Dictionary<string, GuestId>();
        foreach (var name in names)
        {
            guests[name] = await host.KnowAsync(name, Cancellation);
        }

        return await OfAsync(site, daysAgo, guests, "Board games");
    }

    public static async Task<ServedNight> OfAsync(
        SharedApp site, int daysAgo, IReadOnlyDictionary<string, GuestId> guests, string title)
    {
        var (app, host) = (await site.AppAsync(), await site.HostAsync());
        var night = await host.OpenNightAsync([.. guests.Values], Cancellation, facts => facts with { Title = title });
        foreach (var guest in guests.Values)
        {
            var page = await AnswerPage.OpenAsync(app.Client, await host.LinkAsync(night, guest, Cancellation), Cancellation);
            await page.SendAsync(Cancellation, ("presence", "Coming"));
        }

        await host.PassAsync(night, daysAgo, Cancellation);
        return new ServedNight(app, host, night, guests);
    }

    public Task<string> LinkAsync(string name) => Host.LookBackLinkAsync(Night, Guests[name], Cancellation);

    /// <summary>The look-back page as a browser without script sees it.</summary>
    public async Task<AnswerPage> OpenAsync(string name) => await AnswerPage.OpenAsync(App.Client, await LinkAsync(name), Cancellation);

    public async Task<HttpResponseMessage> SayAsync(string name, params IReadOnlyList<(string Name, string Value)> fields) =>
        await (await OpenAsync(name)).SendAsync(Cancellation, fields);
}
