using GameNight.Nights.ForGuests;
using GameNight.Nights.Links;
using GameNight.Nights.Records;
using GameNight.Nights.Storage;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace GameNight.Nights.Messages;

/// <summary>What there is to send of a message now.</summary>
internal abstract record LetterResult
{
    /// <param name="Moves">How many moves of the night it knows of.</param>
    internal sealed record Ready(Letter Letter, int Moves) : LetterResult;

    /// <summary>Ready as well, but the guest takes no mail.</summary>
    internal sealed record ForHand(Letter Letter) : LetterResult;

    internal sealed record Later(Instant From) : LetterResult;

    /// <summary>It no longer holds or is no longer needed.</summary>
    internal sealed record Dropped : LetterResult;
}

/// <summary>From a message to what it says, read from the records as they stand.</summary>
internal sealed class Letters(LinkDirectory links, IClock clock)
{
    private static readonly Duration AfterTheOther = Duration.FromSeconds(20);

    public async Task<LetterResult> OfAsync(GroupSession session, Message message, CancellationToken cancellation)
    {
        var (db, now) = (session.Db, clock.GetCurrentInstant());
        var night = await db.Nights.AsNoTracking().SingleAsync(row => row.Id == message.NightId, cancellation);
        var guest = await db.Guests.AsNoTracking().SingleAsync(row => row.Id == message.GuestId, cancellation);
        var answer = await db.Answers.AsNoTracking().SingleOrDefaultAsync(
            row => row.NightId == night.Id && row.GuestId == guest.Id, cancellation);
        var told = await db.Messages.AsNoTracking()
            .Where(row => row.NightId == night.Id && row.GuestId == guest.Id && row.Id != message.Id
                && (row.State == MessageState.Sent || row.State == MessageState.PassedOn)).ToListAsync(cancellation);
        var answerBy = await db.Plans.AsNoTracking().Where(row => row.NightId == night.Id)
            .Select(row => row.AnswerBy).SingleOrDefaultAsync(cancellation);
        var standing = new Standing(night, guest, answer, told, answerBy, now);
        if (!Outbox.IsGuest(guest) || !standing.Holds(message))
        {
            return new LetterResult.Dropped();
        }

        // Not before what was queued earlier for this guest: whether this one still holds may depend on it.
        if (message.State == MessageState.Waiting && await db.Messages.AnyAsync(
            row => row.NightId == night.Id && row.GuestId == guest.Id && row.Id != message.Id
                && row.State == MessageState.Waiting && row.QueuedAt < message.QueuedAt
                // A seat may wait for the morning, and nothing that is queued after it depends on whether it was read.
                && row.Kind != MessageKind.Seat, cancellation))
        {
            return new LetterResult.Later(now + AfterTheOther);
        }

        if (message is { Kind: MessageKind.Reminder or MessageKind.Seat, State: MessageState.Waiting }
            && NightMoments.IsQuiet(now, night.Facts.Zone))
        {
            var morning = NightMoments.Awake(now, night.Facts.Zone);
            if (morning < (message.Kind == MessageKind.Seat ? standing.ServeAt : answerBy))
            {
                return new LetterResult.Later(morning);
            }

            // A seat at a table of this same night is told at once, or it stays empty.
            if (message.Kind == MessageKind.Reminder)
            {
                return new LetterResult.Dropped();
            }
        }

        var letter = await LetterAsync(db, message, standing, cancellation);
        return guest.TakesMail ? new LetterResult.Ready(letter, night.Moves.Count) : new LetterResult.ForHand(letter);
    }

    private async Task<Letter> LetterAsync(GameNightDb db, Message message, Standing standing, CancellationToken cancellation)
    {
        var (night, guest) = (standing.Night, standing.Guest);
        var group = await db.Groups.AsNoTracking().SingleAsync(cancellation);
        var hosts = await db.Guests.AsNoTracking().Where(row => row.HostId != null).OrderBy(row => row.Name)
            .Select(row => row.Name).ToListAsync(cancellation);
        var invitation = await db.Invitations.AsNoTracking().SingleAsync(
            row => row.NightId == night.Id && row.GuestId == guest.Id, cancellation);
        return new Letter(
            message.Id,
            message.Kind,
            message.About,
            guest.Contact?.MailAddress ?? "",
            guest.Name,
            string.Join(", ", hosts),
            CalendarNight.Of(group, night, guest.Id, standing.Answer),
            night.Facts.Bring,
            links.TokenFor(invitation),
            links.TokenFor(invitation, LinkScope.LookBack),
            links.TokenFor(guest, LinkScope.Unsubscribe),
            NightMoves.Since(night, standing.News),
            NightMoves.IsElsewhereSince(night, standing.News),
            standing.AnswerBy > standing.Now ? standing.AnswerBy : null,
            await EveningsAsync(db, night, guest, cancellation));
    }

    private static async Task<int?> EveningsAsync(GameNightDb db, Night night, Guest guest, CancellationToken cancellation) =>
        (await db.DateChoices.AsNoTracking()
            .Where(choice => choice.NightId == night.Id
                && db.AskedGuests.Any(asked => asked.ChoiceId == choice.Id && asked.GuestId == guest.Id))
            .Select(choice => choice.Facts).FirstOrDefaultAsync(cancellation))?.Options.Count;

    /// <summary>How things stand between a night and a guest.</summary>
    private sealed record Standing(
        Night Night, Guest Guest, Answer? Answer, IReadOnlyList<Message> Told, Instant? AnswerBy, Instant Now)
    {
        /// <summary>The moves that the guest does not know of: counted, for clocks do not say which of two commits was first.</summary>
        public IReadOnlyList<NightMove> News => Told.Max(row => row.KnewMoves) is { } known
            ? [.. Night.Moves.Skip(known)]
            : [.. Night.Moves.Where(move => move.At > Answer?.AnsweredAt)];

        public Instant ServeAt => NightTime.ToInstant(Night.Facts.ServeAt, Night.Facts.Zone);

        private bool IsAhead => ServeAt > Now;

        private bool TakesPlace => Night.CancelledAt is null;

        private bool StaysAway => Answer?.Facts.Presence == Presence.NotComing;

        private bool Knows => Told.Count > 0 || Answer is not null;

        private bool KnowsOfCancellation
        {
            get
            {
                var last = Told.Where(row => row.Kind is MessageKind.Cancellation or MessageKind.Reinstatement)
                    .MaxBy(row => row.SettledAt);
                return last?.Kind == MessageKind.Cancellation;
            }
        }

        public bool Holds(Message message) => message.Kind switch
        {
            MessageKind.Invitation => IsAhead && TakesPlace,
            MessageKind.Reminder => IsAhead && TakesPlace && Answer is null && Now < AnswerBy,
            MessageKind.Change => IsAhead && TakesPlace && !StaysAway && Knows
                && (NightMoves.Since(Night, News) is not null || NightMoves.IsElsewhereSince(Night, News)),
            MessageKind.Cancellation => !TakesPlace && IsAhead && !StaysAway && Knows && !KnowsOfCancellation,
            MessageKind.Reinstatement => IsAhead && TakesPlace && !StaysAway && KnowsOfCancellation,
            MessageKind.Thanks => TakesPlace && !IsAhead && Answer?.Counted.Presence == Presence.Coming,

            // An answer of after it says that the guest knows.
            MessageKind.Seat => IsAhead && TakesPlace && Answer is { Counted.Presence: Presence.Coming } seated && seated.Revision == message.About,
            var other => throw new InvalidOperationException($"Unknown kind {other}."),
        };
    }
}
