using System.Net;
using System.Text.RegularExpressions;
using GameNight.TestKit.Running;

/// <summary>The app is killed while it sends messages, as in the test, many times more.</summary>
internal static partial class MessageSoak
{
    /// <returns>0 when nothing was lost and nothing sent twice outside the one window.</returns>
    public static async Task<int> RunAsync(int kills)
    {
        await using var sink = MailSink.Open();
        await using var app = await RunningApp.StartAsync(CancellationToken.None, solverSlices: 0, sink.Settings);
        await using var host = await HostAtWork.EnterAsync(app, await FoundAsync(app), CancellationToken.None);
        var result = await MessageKills.RunAsync(
            app, host, sink, kills, Environment.TickCount, Console.WriteLine, CancellationToken.None);
        Console.WriteLine(
            $"{result.Kills} kills: {result.Queued} messages queued once, {result.Repeats} sent twice with the same Message-ID, {result.Problems.Count} problems");
        foreach (var problem in result.Problems)
        {
            Console.WriteLine(problem);
        }

        return result.Problems.Count == 0 ? 0 : 1;
    }

    /// <summary>The first account and its group, as a browser without script makes them.</summary>
    private static async Task<Guid> FoundAsync(RunningApp app)
    {
        using var client = new HttpClient(new HttpClientHandler { AllowAutoRedirect = false }) { BaseAddress = app.Address };
        var page = await client.GetStringAsync("/first");
        var hidden = HiddenField().Matches(page).Select(field => KeyValuePair.Create(field.Groups[1].Value, WebUtility.HtmlDecode(field.Groups[2].Value)));
        var founded = await client.PostAsync("/first", new FormUrlEncodedContent([
            .. hidden, new("code", app.FirstAccountCode), new("name", "Ines"), new("email", "ines@example.org"),
            new("password", "pizza on every thursday"), new("group", "Thursday table"), new("zone", "Europe/Lisbon")]));
        return Guid.Parse(founded.Headers.Location!.ToString()["/g/".Length..]);
    }

    [GeneratedRegex("<input type=\"hidden\" name=\"([^\"]+)\" value=\"([^\"]*)\"")]
    private static partial Regex HiddenField();
}
