using System.Net;
using GameNight.Nights.Records;
using GameNight.TestKit.Running;

namespace GameNight.Browser.Tests;

/// <summary>A night on the app with the private links of its guests.</summary>
public sealed record ANight(RunningApp App, HostAtWork Host, NightId Id, IReadOnlyDictionary<string, GuestId> Guests)
{
    public string Path => $"/g/{Host.Group}/n/{Id}";

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    public static async Task<ANight> OpenAsync(RunningApp app, HostAtWork host, IReadOnlyList<string> names, Func<NightFacts, NightFacts>? but = null)
    {
        var guests = new Dictionary<string, GuestId>();
        foreach (var name in names)
        {
            guests[name] = await host.KnowAsync(name, Cancellation);
        }

        return new ANight(app, host, await host.OpenNightAsync([.. guests.Values], Cancellation, but), guests);
    }

    public Task<string> LinkAsync(string name) => Host.LinkAsync(Id, Guests[name], Cancellation);

    /// <summary>Answers as a browser without script does.</summary>
    public async Task AnswerAsync(string name, params IReadOnlyList<(string Name, string Value)> fields)
    {
        var page = await AnswerPage.OpenAsync(App.Client, await LinkAsync(name), Cancellation);
        var answer = await page.SendAsync(Cancellation, fields);
        Assert.Equal(HttpStatusCode.SeeOther, answer.StatusCode);
    }
}
