using GameNight.TestKit.Running;

/// <summary>The app is killed while it sends messages, as in the test, many times more.</summary>
internal static class MessageSoak
{
    /// <summary>One group may send 200 messages a day, three for each kill: every round has an app and a group of its own.</summary>
    private const int KillsEachRound = 50;

    /// <returns>0 when nothing was lost and nothing sent twice outside the one window.</returns>
    public static async Task<int> RunAsync(int kills)
    {
        var (done, queued, repeats, problems) = (0, 0, 0, new List<string>());
        while (done < kills)
        {
            var result = await RoundAsync(Math.Min(KillsEachRound, kills - done), done);
            (done, queued, repeats) = (done + result.Kills, queued + result.Queued, repeats + result.Repeats);
            problems.AddRange(result.Problems);
            Console.WriteLine(
                $"{done} kills: {queued} messages queued once, {repeats} sent twice with the same Message-ID, {problems.Count} problems");
        }

        problems.ForEach(Console.WriteLine);
        return problems.Count == 0 ? 0 : 1;
    }

    private static async Task<MessageKillsResult> RoundAsync(int kills, int before)
    {
        await using var sink = MailSink.Open();
        await using var app = await RunningApp.StartAsync(CancellationToken.None, solverSlices: 0, sink.Settings);
        await using var host = await HostAtWork.EnterAsync(app, (await FirstGroup.FoundAsync(app)).Group, CancellationToken.None);
        return await MessageKills.RunAsync(
            app, host, sink, kills, Environment.TickCount + before, Console.WriteLine, CancellationToken.None);
    }
}
