using GameNight.Nights.Links;
using GameNight.Nights.Records;
using GameNight.Nights.Storage;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace GameNight.Nights.Messages;

/// <summary>What there is to send of a question now.</summary>
internal abstract record QuestionResult
{
    internal sealed record Ready(QuestionLetter Letter) : QuestionResult;

    /// <summary>The guest takes no mail (any more): a host passes the link on.</summary>
    internal sealed record ForHand : QuestionResult;

    /// <summary>It was answered, or is asked no more.</summary>
    internal sealed record Dropped : QuestionResult;
}

/// <summary>Mails with the links of a question for a date. What they say is read when they are sent.</summary>
internal sealed class QuestionPost(LinkDirectory links, IClock clock)
{
    /// <summary>Within the session's commit. The question is locked by the caller, so nobody queues the same at the same moment.</summary>
    public async Task QueueAsync(GroupSession session, Guest guest, AskedGuest asked, CancellationToken cancellation)
    {
        var (db, now) = (session.Db, clock.GetCurrentInstant());
        asked.Post(now);
        if (await db.PostQueue.SingleOrDefaultAsync(
            row => row.GroupId == session.GroupId && row.Subject == asked.Id.Value, cancellation) is { } before)
        {
            before.Postpone(now);
        }
        else
        {
            db.PostQueue.Add(new PostRow(session.GroupId, asked.Id.Value, Errand.Question, now));
        }

        await links.ListAsync(session, guest, LinkScope.Unsubscribe, cancellation);
    }

    public async Task<QuestionResult> OfAsync(GroupSession session, AskedGuest asked, CancellationToken cancellation)
    {
        var db = session.Db;
        var choice = await db.DateChoices.AsNoTracking().SingleAsync(row => row.Id == asked.ChoiceId, cancellation);
        var guest = await db.Guests.AsNoTracking().SingleAsync(row => row.Id == asked.GuestId, cancellation);
        if (choice.State != DateChoiceState.Open || asked.Revision > 0 || !Outbox.IsGuest(guest)
            || NightTime.ToInstant(choice.Facts.Options.Max(), choice.Facts.Zone) <= clock.GetCurrentInstant())
        {
            return new QuestionResult.Dropped();
        }

        if (!guest.TakesMail)
        {
            return new QuestionResult.ForHand();
        }

        var group = await db.Groups.AsNoTracking().SingleAsync(cancellation);
        var hosts = await db.Guests.AsNoTracking().Where(row => row.HostId != null).OrderBy(row => row.Name)
            .Select(row => row.Name).ToListAsync(cancellation);
        return new QuestionResult.Ready(new QuestionLetter(
            asked.Id, asked.LinkGeneration, guest.Contact!.MailAddress, guest.Name, group.Name, string.Join(", ", hosts), choice.Facts.Title,
            choice.Facts.Options, choice.Facts.Zone, choice.Facts.OpenUntil, links.TokenFor(asked),
            links.TokenFor(guest, LinkScope.Unsubscribe)));
    }

    public static Task<int> SettleAsync(
        GameNightDb db, AskedGuestId id, MessageState state, Instant at, MessageFault? fault, CancellationToken cancellation) =>
        // Not through the record: the guest may have answered, or the link been renewed, while the server took it.
        db.AskedGuests.Where(row => row.Id == id && row.MailState == MessageState.Waiting).ExecuteUpdateAsync(
            row => row.SetProperty(one => one.MailState, state).SetProperty(one => one.MailAt, at).SetProperty(one => one.MailFault, fault),
            cancellation);

    public static Task<int> TriedInVainAsync(GameNightDb db, AskedGuestId id, MessageFault fault, CancellationToken cancellation) =>
        db.AskedGuests.Where(row => row.Id == id && row.MailState == MessageState.Waiting).ExecuteUpdateAsync(
            row => row.SetProperty(one => one.MailTries, one => one.MailTries + 1).SetProperty(one => one.MailFault, fault), cancellation);
}
