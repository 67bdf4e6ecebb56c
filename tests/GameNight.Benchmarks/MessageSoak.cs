using GameNight.TestKit.Running;

/// <summary>The app is killed while it sends messages, as in the test, many times more.</summary>
internal static class MessageSoak
{
    /// <returns>0 when nothing was lost and nothing sent twice outside the one window.</returns>
    public static async Task<int> RunAsync(int kills)
    {
        await using var sink = MailSink.Open();
        await using var app = await RunningApp.StartAsync(CancellationToken.None, solverSlices: 0, sink.Settings);
        await using var host = await HostAtWork.EnterAsync(app, (await FirstGroup.FoundAsync(app)).Group, CancellationToken.None);
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
}
