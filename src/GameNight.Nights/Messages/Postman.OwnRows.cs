using GameNight.Nights.Records;
using GameNight.Nights.Storage;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace GameNight.Nights.Messages;

/// <content>Mails that are no message to a guest of a night: their own row says where they stand.</content>
internal sealed partial class Postman
{
    /// <summary>The link of a question, sent once for each link. Where it stands is kept with the guest who is asked.</summary>
    private async Task AskAsync(GroupSession session, PostRow errand, Instant now, CancellationToken stopping)
    {
        var (db, id) = (session.Db, new AskedGuestId(errand.Subject));
        var asked = await db.AskedGuests.AsNoTracking().SingleOrDefaultAsync(row => row.Id == id, stopping);
        if (asked is not { MailState: MessageState.Waiting, MailAt: { } since })
        {
            // Taken out of the question, or another link was made.
            await EndAsync(session, errand, stopping);
            return;
        }

        var read = await questions.OfAsync(session, asked, stopping);
        await PostAsync(
            session,
            errand,
            new Posted(
                asked.LinkGeneration,
                since,
                asked.MailTries,
                read is QuestionResult.Ready { Letter: var letter } ? () => carrier.CarryAsync(letter, stopping) : null,
                read is QuestionResult.ForHand ? MessageState.ForHand : MessageState.Dropped,
                (state, fault, cancellation) => QuestionPost.SettleAsync(db, id, state, now, fault, cancellation),
                fault => QuestionPost.TriedInVainAsync(db, id, fault, stopping)),
            now,
            stopping);
        changes.Publish(asked.ChoiceId);
    }

    private async Task TellOfWorkAsync(GroupSession session, PostRow errand, Instant now, CancellationToken stopping)
    {
        var (db, id) = (session.Db, new WorkReminderId(errand.Subject));
        if (await db.WorkReminders.AsNoTracking().SingleOrDefaultAsync(row => row.Id == id, stopping) is not { State: MessageState.Waiting } reminder)
        {
            await EndAsync(session, errand, stopping);
            return;
        }

        var letter = await work.OfAsync(session, reminder, stopping);
        await PostAsync(
            session,
            errand,
            new Posted(
                0,
                reminder.QueuedAt,
                reminder.Tries,
                letter is null ? null : () => carrier.CarryAsync(letter, stopping),
                MessageState.Dropped,
                (state, fault, cancellation) => WorkPost.SettleAsync(db, id, state, now, fault, cancellation),
                fault => WorkPost.TriedInVainAsync(db, id, fault, stopping)),
            now,
            stopping);
        changes.Publish(reminder.NightId);
    }

    /// <summary>A mail that no guest's answer changes: where it stands is kept with what it tells of.</summary>
    /// <param name="Version">Of what it says: another one is another mail.</param>
    /// <param name="Carry">Null when there is nothing to send any more.</param>
    /// <param name="WhenNothing">How it is settled then.</param>
    private sealed record Posted(
        int Version, Instant Since, int Tries, Func<Task<CarryResult>>? Carry, MessageState WhenNothing,
        Func<MessageState, MessageFault?, CancellationToken, Task<int>> SettleAsync, Func<MessageFault, Task<int>> TriedInVainAsync);

    private async Task PostAsync(GroupSession session, PostRow errand, Posted mail, Instant now, CancellationToken stopping)
    {
        if (_accepted.TryGetValue(errand.Subject, out var version) && version == mail.Version)
        {
            await SettledAsync(MessageState.Sent, null, CancellationToken.None);
            return;
        }

        if (mail.Carry is null)
        {
            await SettledAsync(mail.WhenNothing, null, stopping);
            return;
        }

        if (await IsFullAsync(session.Db, now, stopping))
        {
            errand.Postpone(now + UntilThereIsRoom);
            await session.CommitAsync(stopping);
            return;
        }

        var result = await mail.Carry();
        NightsTelemetry.Carried($"{errand.Errand}", result);
        switch (result)
        {
            case CarryResult.Accepted:
                (_rest, _restsUntil) = (ShortestRest, Instant.MinValue);
                _accepted[errand.Subject] = mail.Version;
                await SettledAsync(MessageState.Sent, null, CancellationToken.None);
                break;
            case CarryResult.Refused refused:
                await SettledAsync(MessageState.GivenUp, refused.Fault, stopping);
                break;
            case CarryResult.TryLater later when now - mail.Since >= GivesUpAfter:
                await SettledAsync(MessageState.GivenUp, later.Fault, stopping);
                break;
            case CarryResult.TryLater later:
                Rest(later, now);
                await mail.TriedInVainAsync(later.Fault);
                errand.Postpone(now + WaitAfter(mail.Tries));
                await session.CommitAsync(stopping);
                break;
        }

        async Task SettledAsync(MessageState state, MessageFault? fault, CancellationToken cancellation)
        {
            await mail.SettleAsync(state, fault, cancellation);
            await EndAsync(session, errand, cancellation);
            _accepted.Remove(errand.Subject);
        }
    }
}
