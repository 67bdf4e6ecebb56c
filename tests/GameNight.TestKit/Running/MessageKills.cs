using GameNight.Nights.Records;
using MimeKit;

namespace GameNight.TestKit.Running;

/// <summary>What came of killing an app that sends messages, again and again.</summary>
/// <param name="Kills">How often it was killed.</param>
/// <param name="Queued">Messages that were queued.</param>
/// <param name="Repeats">Message-IDs that the sink holds twice: killed between acceptance and record.</param>
/// <param name="Problems">Lost, queued twice, or held more than twice: none.</param>
public sealed record MessageKillsResult(int Kills, int Queued, int Repeats, IReadOnlyList<string> Problems);

/// <summary>
/// Kills the app, by SIGKILL, at every place on a message's way: between the commit and the mail server, while the server takes
/// it, and after it was taken, a random moment on. The mail server and Postgres live on.
/// </summary>
public static class MessageKills
{
    private const int GuestsEach = 3;

    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(180);
    private static readonly TimeSpan Poll = TimeSpan.FromMilliseconds(50);

    /// <param name="app">Sends to <paramref name="sink"/>, and has a group in which <paramref name="host"/> works.</param>
    /// <param name="seed">Chooses the moments.</param>
    public static async Task<MessageKillsResult> RunAsync(
        RunningApp app, HostAtWork host, MailSink sink, int kills, int seed, Action<string> say, CancellationToken cancellation)
    {
        var random = new Random(seed);
        var already = sink.Mails.Count;
        var queued = 0;
        List<GuestId> guests = [];
        for (var number = 0; number < GuestsEach; number++)
        {
            guests.Add(await host.KnowAsync($"Guest {number}", cancellation));
            await host.ReachAsync(guests[^1], $"guest{number}@example.org", cancellation);
        }

        for (var kill = 0; kill < kills; kill++)
        {
            var night = await host.OpenNightAsync(guests, cancellation);
            if (kill % 4 == 0)
            {
                // Between the commit and the mail server, whatever the app was about to do. What was killed before is sent first:
                // nothing is to be struck twice.
                await DrainAsync(app, cancellation);
                await host.SendInvitationsAsync(night, cancellation);
                await Task.Delay(random.Next(0, 100), cancellation);
                await app.KillAsync();
            }
            else
            {
                await host.SendInvitationsAsync(night, cancellation);
                var hit = Arm(app, sink, kill % 4, random);
                app.BeginAgain();
                await hit.WaitAsync(Patience, cancellation);
                await app.WaitForDeathAsync(cancellation);
            }

            (sink.Asked, sink.Taken) = (() => Task.CompletedTask, _ => Task.CompletedTask);
            queued += GuestsEach;
            if ((kill + 1) % 4 == 0 || kill + 1 == kills)
            {
                await app.RestartAsync(cancellation);
            }

            say($"{kill + 1} kills, {queued} messages queued, {sink.Mails.Count - already} taken");
        }

        await DrainAsync(app, cancellation);
        return await CountAsync(app, host, sink, kills, queued, already, cancellation);
    }

    /// <returns>Ends when the app was killed.</returns>
    private static Task Arm(RunningApp app, MailSink sink, int place, Random random)
    {
        var hit = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
        var (isArmed, later) = (1, random.Next(0, 30));

        // One that the server has already is on its way again: it is left alone.
        bool IsNew(MimeMessage mail) => sink.Mails.Count(other => other.MessageId == mail.MessageId) == 1;

        async Task KillAsync()
        {
            if (Interlocked.Exchange(ref isArmed, 0) == 1)
            {
                await app.SignalAsync("KILL");
                hit.TrySetResult();
            }
        }

        switch (place)
        {
            case 1:
                sink.Asked = KillAsync;
                break;
            case 2:
                // Taken, and the app never hears of it.
                sink.Taken = mail => IsNew(mail) ? KillAsync() : Task.CompletedTask;
                break;
            case 3:
                sink.Taken = mail =>
                {
                    if (IsNew(mail))
                    {
                        Task.Run(async () =>
                        {
                            await Task.Delay(later);
                            await KillAsync();
                        });
                    }

                    return Task.CompletedTask;
                };
                break;
        }

        return hit.Task;
    }

    /// <summary>Until every message is settled.</summary>
    private static async Task DrainAsync(RunningApp app, CancellationToken cancellation)
    {
        var giveUp = DateTime.UtcNow + Patience;
        while (DateTime.UtcNow < giveUp
            && await HostAtWork.AskAsync<long>(app, "select count(*) from post_queue where errand = 'Message'", cancellation) > 0)
        {
            await Task.Delay(Poll, cancellation);
        }
    }

    private static async Task<MessageKillsResult> CountAsync(
        RunningApp app, HostAtWork host, MailSink sink, int kills, int queued, int already, CancellationToken cancellation)
    {
        var ids = await HostAtWork.AskAsync<string[]>(
            app, $"select coalesce(array_agg(replace(id::text, '-', '')), array[]::text[]) from messages where group_id = '{host.Group.Value}' and state = 'Sent'",
            cancellation);
        var total = await HostAtWork.AskAsync<long>(
            app, $"select count(*) from messages where group_id = '{host.Group.Value}'", cancellation);
        var held = sink.Mails.Skip(already).GroupBy(mail => mail.MessageId!.Split('@')[0])
            .ToDictionary(group => group.Key, group => group.Count());
        List<string> problems =
        [
            .. ids.Where(id => !held.ContainsKey(id)).Select(id => $"{id} is called sent and the sink does not hold it"),
            .. held.Keys.Except(ids).Select(id => $"{id} is held and not called sent"),
            .. held.Where(one => one.Value > 2).Select(one => $"{one.Key} is held {one.Value} times"),
        ];
        if (total != queued || ids.Length != queued)
        {
            problems.Add($"{queued} messages were queued, {total} are there, {ids.Length} are sent");
        }

        return new MessageKillsResult(kills, queued, held.Count(one => one.Value == 2), problems);
    }
}
