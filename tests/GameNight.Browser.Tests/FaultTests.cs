using System.Collections.Concurrent;
using System.Net;
using GameNight.Nights.Records;
using GameNight.Planning.Guests;
using GameNight.TestKit.Running;
using static Microsoft.Playwright.Assertions;

namespace GameNight.Browser.Tests;

/// <summary>The database goes away, or the app does, in the middle of work.</summary>
public class FaultTests(Site site)
{
    private const int Guests = 12;

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_save_without_the_database_is_said_keeps_the_input_and_goes_through_by_itself()
    {
        await using var app = await OwnAppAsync();
        await using var screen = await Screen.OpenAsync(site.Chromium, app.Address, Screen.Desk);
        var group = await FirstAccount.MakeAsync(screen, app.FirstAccountCode);
        await screen.GoLiveAsync($"/g/{group:N}/kitchen");
        await screen.Field("Room, °C").FillAsync("23.5");

        var outage = await PostgresOutage.BeginAsync(app, Cancellation);
        await screen.Button("Save the kitchen").ClickAsync();

        await screen.SeesAsync("The database cannot be reached. Nothing you typed is lost; trying again by itself.");
        await Expect(screen.Field("Room, °C")).ToHaveValueAsync("23.5");
        await AssertGuestsAreToldAsync(app);

        await outage.EndAsync(Cancellation);

        await screen.SeesAsync("The kitchen is saved; plans of nights to come follow.");
        await Expect(screen.Page.Locator(".notice[role=alert]")).ToHaveCountAsync(0);
        await screen.Page.ReloadAsync();
        await screen.LiveAsync();
        await Expect(screen.Field("Room, °C")).ToHaveValueAsync("23.5");
        Assert.Empty(screen.Faults);
    }

    [Fact]
    public async Task After_a_kill_every_acknowledged_answer_is_there_and_none_counts_twice()
    {
        await using var app = await OwnAppAsync();
        await using var screen = await Screen.OpenAsync(site.Chromium, app.Address, Screen.Desk);
        var group = await FirstAccount.MakeAsync(screen, app.FirstAccountCode);
        await using var host = await HostAtWork.EnterAsync(app, group, Cancellation);
        var night = await ANight.OpenAsync(app, host, [.. Enumerable.Range(1, Guests).Select(number => $"Guest {number}")]);
        var links = await Task.WhenAll(night.Guests.Keys.Select(night.LinkAsync));

        var senders = new ConcurrentBag<Sender>();
        var sending = links.Select(link => Task.Run(async () =>
        {
            var sender = new Sender(app.Client, link);
            senders.Add(sender);
            await sender.SendUntilTheAppIsGoneAsync();
        })).ToList();
        await Task.Delay(TimeSpan.FromSeconds(2), Cancellation);
        await app.KillAsync();
        await Task.WhenAll(sending);
        await app.RestartAsync(Cancellation);

        Assert.Contains(senders, sender => sender.Acknowledged > 0);
        foreach (var sender in senders)
        {
            // What was under way at the kill may have been kept or not; sent again it is there once.
            var kept = int.Parse((await AnswerPage.OpenAsync(app.Client, sender.Link, Cancellation)).Revision);
            Assert.InRange(kept, sender.Acknowledged, sender.Acknowledged + 1);
            await sender.SendLastAgainAsync();
            await sender.SendLastAgainAsync();
            Assert.Equal((sender.Acknowledged + 1).ToString(), (await AnswerPage.OpenAsync(app.Client, sender.Link, Cancellation)).Revision);
        }

        var seen = await host.NightAsync(night.Id, Cancellation);
        Assert.Equal(Guests, seen.Guests.Count(guest => guest.Answer?.Presence == Presence.Coming));
    }

    private async Task<RunningApp> OwnAppAsync()
    {
        await site.Chromium.BrowserAsync();
        return await RunningApp.StartAsync(Cancellation, solverSlices: 0);
    }

    private static async Task AssertGuestsAreToldAsync(RunningApp app)
    {
        var page = await app.Client.GetAsync($"/i/{new string('a', 43)}", Cancellation);
        var ready = await app.Client.GetAsync("/health/ready", Cancellation);
        var live = await app.Client.GetAsync("/health/live", Cancellation);
        Assert.Equal(HttpStatusCode.ServiceUnavailable, page.StatusCode);
        Assert.Contains("Not reachable right now", await page.Content.ReadAsStringAsync(Cancellation), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.ServiceUnavailable, ready.StatusCode);
        Assert.Equal(HttpStatusCode.OK, live.StatusCode);
    }

    /// <summary>A guest who cannot decide, and notes what was acknowledged.</summary>
    private sealed class Sender(HttpClient client, string link)
    {
        private AnswerPage? _last;

        public string Link => link;

        public int Acknowledged { get; private set; }

        public async Task SendUntilTheAppIsGoneAsync()
        {
            try
            {
                while (true)
                {
                    _last = await AnswerPage.OpenAsync(client, link, CancellationToken.None);
                    var hunger = (Hunger)(Acknowledged % 3);
                    var answer = await _last.SendAsync(CancellationToken.None, ("presence", "Coming"), ("hunger", hunger.ToString()));
                    Assert.Equal(HttpStatusCode.SeeOther, answer.StatusCode);
                    Acknowledged++;
                }
            }
            catch (HttpRequestException)
            {
                // The app is gone.
            }
        }

        public async Task SendLastAgainAsync()
        {
            var isOld = _last is null || int.Parse(_last.Revision) < Acknowledged;
            _last = isOld ? await AnswerPage.OpenAsync(client, link, CancellationToken.None) : _last;
            var answer = await _last!.SendAsync(CancellationToken.None, ("presence", "Coming"));
            Assert.Equal(HttpStatusCode.SeeOther, answer.StatusCode);
        }
    }
}
