using GameNight.Nights.Plans;
using GameNight.Nights.Records;
using GameNight.Nights.Storage;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;
using NodaTime;

namespace GameNight.Nights.Messages;

/// <summary>
/// Does the errands that are due, one at a time. Each is claimed, done and recorded in one transaction: whoever dies in between
/// lets go of it, and it is done again. A mail that was accepted and not recorded is then sent a second time, with the same
/// Message-ID; nothing else is ever done twice.
/// </summary>
internal sealed partial class Postman(
    GroupSessions sessions, Outbox outbox, Letters letters, QuestionPost questions, WorkPost work, NightRounds rounds, IMessageCarrier carrier, NightChanges changes,
    IClock clock, ILogger<Postman> log) : BackgroundService
{
    /// <summary>Mails of a group in 24 hours: a big group's busiest day, and no flood. A figure of our own.</summary>
    public const int MostPerDay = 200;

    /// <summary>After this long nobody waits for a message any more.</summary>
    public static readonly Duration GivesUpAfter = Duration.FromDays(3);

    private static readonly Duration LongestWait = Duration.FromHours(1);
    private static readonly Duration UntilThereIsRoom = Duration.FromMinutes(10);
    private static readonly Duration FirstWait = Duration.FromSeconds(30);
    private static readonly Duration ShortestRest = Duration.FromSeconds(2);
    private static readonly Duration LongestRest = Duration.FromMinutes(1);
    private static readonly TimeSpan Poll = TimeSpan.FromSeconds(5);

    /// <summary>Accepted while the database was away: recorded when it is back, and not sent again.</summary>
    private readonly Dictionary<Guid, int> _accepted = [];

    private Instant _restsUntil = Instant.MinValue;
    private Duration _rest = ShortestRest;

    /// <summary>True while the last round went well: for the health check.</summary>
    public bool IsWell { get; private set; } = true;

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        while (!stoppingToken.IsCancellationRequested)
        {
            try
            {
                while (await RunOneAsync(stoppingToken))
                {
                }

                IsWell = true;
            }
            catch (OperationCanceledException) when (stoppingToken.IsCancellationRequested)
            {
                return;
            }
            catch (Exception fault)
            {
                IsWell = false;
                SayRoundFailed(log, fault);
            }

            await WaitAsync(stoppingToken);
        }
    }

    /// <returns>False when nothing is due.</returns>
    internal async Task<bool> RunOneAsync(CancellationToken stopping)
    {
        var now = clock.GetCurrentInstant();
        if (await sessions.ClaimAsync(now, nightsOnly: now < _restsUntil, stopping) is not var (session, errand))
        {
            return false;
        }

        Exception? failure = null;
        await using (session)
        {
            try
            {
                await (errand.Errand switch
                {
                    Errand.Night => LookAfterAsync(session, errand, stopping),
                    Errand.Question => AskAsync(session, errand, now, stopping),
                    Errand.Work => TellOfWorkAsync(session, errand, now, stopping),
                    _ => SendAsync(session, errand, now, stopping),
                });
            }
            catch (Exception fault) when (!stopping.IsCancellationRequested && !NightsUnavailableException.IsMeantBy(fault))
            {
                failure = fault;
            }
        }

        if (failure is not null)
        {
            // One that fails must not keep all others waiting.
            SayErrandFailed(log, errand.Errand, errand.Subject, failure);
            await PutOffAsync(errand, stopping);
        }

        return true;
    }

    private async Task LookAfterAsync(GroupSession session, PostRow errand, CancellationToken cancellation)
    {
        if (await rounds.LookAsync(session, new NightId(errand.Subject), cancellation) is { } next)
        {
            errand.Postpone(next);
        }
        else
        {
            session.Db.PostQueue.Remove(errand);
        }

        await session.CommitAsync(cancellation);
    }

    private async Task SendAsync(GroupSession session, PostRow errand, Instant now, CancellationToken stopping)
    {
        var db = session.Db;
        var id = new MessageId(errand.Subject);
        var message = await db.Messages.AsNoTracking().SingleOrDefaultAsync(row => row.Id == id, stopping);
        if (message is not { State: MessageState.Waiting })
        {
            // Erased with its guest or night, or settled already.
            await DoneAsync(session, errand, id, stopping);
            return;
        }

        if (_accepted.TryGetValue(errand.Subject, out var knew))
        {
            await SentAsync(session, errand, message, now, knew);
            return;
        }

        switch (await letters.OfAsync(session, message, stopping))
        {
            case LetterResult.Dropped:
                await DoneAsync(session, errand, id, stopping, row => row.Settle(MessageState.Dropped, now));
                break;
            case LetterResult.ForHand:
                await DoneAsync(session, errand, id, stopping, row => row.LeaveToHand());
                break;
            case LetterResult.Later later:
                errand.Postpone(later.From);
                await session.CommitAsync(stopping);
                break;
            case LetterResult.Ready when await IsFullAsync(db, now, stopping):
                errand.Postpone(now + UntilThereIsRoom);
                await session.CommitAsync(stopping);
                break;
            case LetterResult.Ready ready:
                await HandOverAsync(session, errand, message, ready, now, stopping);
                break;
        }

        changes.Publish(message.NightId);
    }

    private async Task HandOverAsync(
        GroupSession session, PostRow errand, Message message, LetterResult.Ready ready, Instant now, CancellationToken stopping)
    {
        var result = await carrier.CarryAsync(ready.Letter, stopping);
        NightsTelemetry.Carried($"{message.Kind}", result);
        switch (result)
        {
            case CarryResult.Accepted:
                (_rest, _restsUntil) = (ShortestRest, Instant.MinValue);
                _accepted[errand.Subject] = ready.Moves;
                await SentAsync(session, errand, message, now, ready.Moves);
                break;
            case CarryResult.Refused refused:
                await DoneAsync(
                    session, errand, message.Id, stopping, row => row.Settle(MessageState.GivenUp, now, refused.Fault));
                break;
            case CarryResult.TryLater later when now - message.QueuedAt >= GivesUpAfter:
                await DoneAsync(
                    session, errand, message.Id, stopping, row => row.Settle(MessageState.GivenUp, now, later.Fault));
                break;
            case CarryResult.TryLater later:
                Rest(later, now);
                await TriedInVainAsync(session, errand, message, later.Fault, now, stopping);
                break;
        }
    }

    /// <summary>What stands in the way of all would stand in the way of the next too.</summary>
    private void Rest(CarryResult.TryLater later, Instant now)
    {
        if (later.IsForAll)
        {
            _restsUntil = now + _rest;
            _rest = Duration.Min(LongestRest, _rest * 2);
            SayServerAway(log, later.Fault);
        }
    }

    private static async Task EndAsync(GroupSession session, PostRow errand, CancellationToken cancellation)
    {
        session.Db.PostQueue.Remove(errand);
        await session.CommitAsync(cancellation);
    }

    /// <summary>From here on nothing may be cut short: what was accepted is to be recorded.</summary>
    private async Task SentAsync(GroupSession session, PostRow errand, Message message, Instant now, int moves)
    {
        // Not through the record: it may have been erased while the server took it.
        await session.Db.Messages.Where(row => row.Id == message.Id).ExecuteUpdateAsync(
            row => row.SetProperty(one => one.State, MessageState.Sent)
                .SetProperty(one => one.SettledAt, now)
                .SetProperty(one => one.KnewMoves, moves)
                .SetProperty(one => one.Fault, (MessageFault?)null),
            CancellationToken.None);
        session.Db.PostQueue.Remove(errand);
        await session.CommitAsync(CancellationToken.None);
        _accepted.Remove(errand.Subject);
    }

    private static async Task TriedInVainAsync(
        GroupSession session, PostRow errand, Message message, MessageFault fault, Instant now, CancellationToken cancellation)
    {
        await session.Db.Messages.Where(row => row.Id == message.Id).ExecuteUpdateAsync(
            row => row.SetProperty(one => one.Tries, one => one.Tries + 1).SetProperty(one => one.Fault, fault), cancellation);
        errand.Postpone(now + WaitAfter(message.Tries));
        await session.CommitAsync(cancellation);
    }

    /// <summary>Half a minute, then twice as long each time, up to an hour.</summary>
    internal static Duration WaitAfter(int tries) =>
        tries > 10 ? LongestWait : Duration.Min(LongestWait, FirstWait * (1 << tries));

    private static async Task DoneAsync(
        GroupSession session, PostRow errand, MessageId id, CancellationToken cancellation, Action<Message>? settle = null)
    {
        if (settle is not null && await session.Db.Messages.SingleOrDefaultAsync(row => row.Id == id, cancellation) is { } message)
        {
            settle(message);
        }

        session.Db.PostQueue.Remove(errand);
        await session.CommitAsync(cancellation);
    }

    internal static async Task<bool> IsFullAsync(GameNightDb db, Instant now, CancellationToken cancellation)
    {
        var since = now - Duration.FromDays(1);
        var told = await db.Messages.CountAsync(row => row.State == MessageState.Sent && row.SettledAt > since, cancellation);
        var asked = await db.AskedGuests.CountAsync(row => row.MailState == MessageState.Sent && row.MailAt > since, cancellation);
        var work = await db.WorkReminders.CountAsync(row => row.State == MessageState.Sent && row.SettledAt > since, cancellation);
        return told + asked + work >= MostPerDay;
    }

    private async Task PutOffAsync(PostRow errand, CancellationToken cancellation)
    {
        var now = clock.GetCurrentInstant();
        await using var session = await sessions.OpenAsync(new(errand.GroupId, null, null), cancellation);
        if (errand.Errand == Errand.Question)
        {
            await QuestionPost.TriedInVainAsync(session.Db, new AskedGuestId(errand.Subject), MessageFault.Failed, cancellation);
        }

        if (errand.Errand == Errand.Work)
        {
            await WorkPost.TriedInVainAsync(session.Db, new WorkReminderId(errand.Subject), MessageFault.Failed, cancellation);
        }

        var message = await session.Db.Messages.SingleOrDefaultAsync(
            row => row.Id == new MessageId(errand.Subject), cancellation);
        var isOver = message is not null && now - message.QueuedAt >= GivesUpAfter;
        message?.TriedInVain(MessageFault.Failed);
        if (isOver)
        {
            message!.Settle(MessageState.GivenUp, now, MessageFault.Failed);
        }

        var due = now + WaitAfter(message?.Tries ?? 1);
        var rows = session.Db.PostQueue.Where(row => row.GroupId == errand.GroupId && row.Subject == errand.Subject);
        await (isOver
            ? rows.ExecuteDeleteAsync(cancellation)
            : rows.ExecuteUpdateAsync(row => row.SetProperty(one => one.DueAt, due), cancellation));
        await session.CommitAsync(cancellation);
    }

    private async Task WaitAsync(CancellationToken stopping)
    {
        using var pause = CancellationTokenSource.CreateLinkedTokenSource(stopping);
        pause.CancelAfter(Poll);
        try
        {
            await outbox.WakeUps.ReadAsync(pause.Token);
        }
        catch (OperationCanceledException)
        {
            // Time for the poll, or for the end.
        }
    }

    [LoggerMessage(LogLevel.Error, "Messages could not be looked after; the next round tries again.")]
    private static partial void SayRoundFailed(ILogger log, Exception fault);

    [LoggerMessage(LogLevel.Error, "{Errand} {Subject} failed and will be tried again.")]
    private static partial void SayErrandFailed(ILogger log, Errand errand, Guid subject, Exception fault);

    [LoggerMessage(LogLevel.Warning, "The mail server takes nothing now: {Fault}. Messages wait.")]
    private static partial void SayServerAway(ILogger log, MessageFault fault);
}
