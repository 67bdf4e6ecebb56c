using GameNight.Nights.Links;
using GameNight.Nights.Membership;
using GameNight.Nights.Messages;
using GameNight.Nights.PastNights;
using GameNight.Nights.Plans;
using GameNight.Nights.Records;
using GameNight.Nights.Seats;
using GameNight.Nights.Storage;
using GameNight.Planning.Guests;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Logging;
using NodaTime;

namespace GameNight.Nights.Erasure;

/// <summary>What came of removing a guest.</summary>
public abstract record RemovalResult
{
    private RemovalResult()
    {
    }

    public sealed record Removed : RemovalResult;

    /// <summary>The guest record is that of a host: their account leaves the group first.</summary>
    public sealed record IsHost : RemovalResult;

    /// <summary>Nobody is there (any more) under that id, or nothing behind that link.</summary>
    public sealed record Gone(bool LinkHasEnded = false) : RemovalResult;
}

/// <summary>
/// Removes a guest, by a host or by themselves: effect at once. Of past nights only counts are kept, under the id of a
/// former guest without a name.
/// </summary>
public sealed partial class GuestRemoval
{
    /// <summary>Who was invited for one night only goes so long after it, with the links.</summary>
    public static readonly Duration OneOffsKept = LinkDirectory.KeptAfterNight;

    private readonly GroupSessions _sessions;
    private readonly LinkDirectory _links;
    private readonly ReplanRequests _replans;
    private readonly TableSeats _seats;
    private readonly Outbox _outbox;
    private readonly IClock _clock;
    private readonly ILogger<GuestRemoval> _log;

    internal GuestRemoval(
        GroupSessions sessions, LinkDirectory links, ReplanRequests replans, TableSeats seats, Outbox outbox, IClock clock,
        ILogger<GuestRemoval> log)
    {
        _sessions = sessions;
        _links = links;
        _replans = replans;
        _seats = seats;
        _outbox = outbox;
        _clock = clock;
        _log = log;
    }

    public Task<RemovalResult> RemoveAsync(GroupAccess access, GuestId guest, CancellationToken cancellation)
    {
        access.Demand(HostRole.Organiser);
        return EraseAsync(access, guest, "a host", cancellation);
    }

    /// <summary>By the guest; the link is the authority, and ends with it.</summary>
    public async Task<RemovalResult> RemoveOwnAsync(LinkToken? link, CancellationToken cancellation)
    {
        var lookup = await _links.FindAsync(link, LinkScope.Answer, cancellation);
        return lookup is LinkLookup<LinkHolder>.Found { Holder: var holder }
            ? await EraseAsync(holder.Access, holder.Guest, "themselves", cancellation)
            : new RemovalResult.Gone(lookup is LinkLookup<LinkHolder>.Expired);
    }

    /// <summary>Also when the time of somebody who was invited for one night is over.</summary>
    internal async Task<RemovalResult> EraseAsync(GroupAccess access, GuestId id, string by, CancellationToken cancellation)
    {
        await using var session = await _sessions.OpenAsync(access, cancellation);
        var (db, now) = (session.Db, _clock.GetCurrentInstant());

        var naming = await NamingAsync(db, id, cancellation);
        var invitedTo = await db.Invitations.Where(row => row.GuestId == id).Select(row => row.NightId).ToListAsync(cancellation);

        // In one order everywhere, and before the guest: nobody records a begun dough with what is erased here.
        foreach (var night in invitedTo.Union(naming).OrderBy(night => night.Value))
        {
            await DoughCommitments.TakeTurnAsync(session, night, cancellation);
        }

        // Locked: whoever invites this guest at the same moment comes before and is undone here.
        var guest = await db.Guests.FromSql($"select * from guests where id = {id.Value} for update")
            .SingleOrDefaultAsync(cancellation);
        if (guest is null or { FormerSince: not null })
        {
            return new RemovalResult.Gone();
        }

        if (guest.HostId is not null)
        {
            return new RemovalResult.IsHost();
        }

        var name = guest.Name;
        guest.Leave(now);
        var invited = await db.Invitations.Where(row => row.GuestId == id).ToListAsync(cancellation);
        var nights = invited.Select(row => row.NightId).ToList();
        var coming = (await db.Nights.AsNoTracking().Where(night => nights.Contains(night.Id)).ToListAsync(cancellation))
            .Where(night => NightTime.ToInstant(night.Facts.ServeAt, night.Facts.Zone) > now)
            .Select(night => night.Id).ToHashSet();

        await LookBackErasure.ClearWordsAsync(session, id, cancellation);
        await db.RememberedWishes.Where(row => row.GuestId == id).ExecuteDeleteAsync(cancellation);
        await db.DietaryNotes.Where(row => row.GuestId == id).ExecuteDeleteAsync(cancellation);

        // Those of nights to come go with the invitations; the postman forgets what he no longer finds.
        await db.Messages.Where(row => row.GuestId == id).ExecuteDeleteAsync(cancellation);
        await db.Links.Where(link => link.GroupId == session.GroupId && link.Subject == id.Value).ExecuteDeleteAsync(cancellation);
        var asked = await db.AskedGuests.Where(row => row.GuestId == id).ToListAsync(cancellation);
        db.AskedGuests.RemoveRange(asked);
        await LinkDirectory.EndAsync(session, [.. asked.Select(row => row.Id)], cancellation);
        db.Invitations.RemoveRange(invited.Where(row => coming.Contains(row.NightId)));
        foreach (var past in invited.Where(row => !coming.Contains(row.NightId)))
        {
            past.RenewLink();
            past.WasServed(null);
        }

        foreach (var night in await db.Nights.AsNoTracking().Where(night => coming.Contains(night.Id)).ToListAsync(cancellation))
        {
            await _seats.FillAsync(session, night, cancellation, leaving: id);
        }

        await KeepCountsAsync(db, id, coming, cancellation);
        await EraseFromPlansAsync(db, id, nights, coming, cancellation);
        await EraseNameAsync(db, id, name, naming, cancellation);
        foreach (var night in coming)
        {
            _replans.Night(session, night);
        }

        await session.CommitAsync(cancellation);
        _outbox.Wake();
        foreach (var night in nights)
        {
            _replans.Wake(night);
        }

        SayRemoved(_log, id, session.GroupId, access.HostId?.ToString() ?? by);
        return new RemovalResult.Removed();
    }

    /// <summary>Nights on which the guest helps, as one of the guests or by the same name, or is named in what a host typed.</summary>
    private static async Task<List<NightId>> NamingAsync(GameNightDb db, GuestId id, CancellationToken cancellation)
    {
        var name = await db.Guests.AsNoTracking().Where(row => row.Id == id).Select(row => row.Name).SingleOrDefaultAsync(cancellation);
        return
        [
            .. (await db.Nights.AsNoTracking().ToListAsync(cancellation))
                .Where(night => night.Overrides.Helpers?.Any(helper => Is(helper, id, name)) == true || TypedNames.IsIn(night.Overrides, name))
                .Select(night => night.Id)
                .Union((await ClocksAsync(db, name, cancellation)).Select(tap => tap.NightId)),
        ];
    }

    private static async Task EraseNameAsync(GameNightDb db, GuestId id, string name, List<NightId> naming, CancellationToken cancellation)
    {
        foreach (var night in await db.Nights.Where(night => naming.Contains(night.Id)).ToListAsync(cancellation))
        {
            night.Overrule(TypedNames.Without(night.Overrides.WithoutHelperNamed(helper => Is(helper, id, name)), name));
        }

        foreach (var clock in await ClocksAsync(db, name, cancellation))
        {
            clock.Rename(TypedNames.Without(clock.Mark.Name!, name));
        }
    }

    /// <summary>Clocks of the night that a host gave a name with the guest's in it.</summary>
    private static async Task<List<LiveTap>> ClocksAsync(GameNightDb db, string? name, CancellationToken cancellation) =>
        [.. (await db.LiveTaps.ToListAsync(cancellation)).Where(tap => TypedNames.IsIn(tap.Mark.Name, name))];

    private static bool Is(HelperOfNight helper, GuestId id, string? name) =>
        helper.Guest == id || string.Equals(helper.Name?.Trim(), name?.Trim(), StringComparison.OrdinalIgnoreCase) && name is not null;

    /// <summary>Of past nights: who came with how many; no likes.</summary>
    private static async Task KeepCountsAsync(
        GameNightDb db, GuestId id, HashSet<NightId> coming, CancellationToken cancellation)
    {
        foreach (var answer in await db.Answers.Where(row => row.GuestId == id && !coming.Contains(row.NightId)).ToListAsync(cancellation))
        {
            var counts = answer.Facts with { Hunger = Hunger.AsUsual, Likes = new Dictionary<string, Liking>(), ComesAtMinute = null, LeavesAtMinute = null, AloneIfNeeded = null };
            answer.Replace(counts, Guid.NewGuid(), answer.AnsweredAt, answer.IsLate);
        }
    }

    private static async Task EraseFromPlansAsync(
        GameNightDb db, GuestId id, List<NightId> nights, HashSet<NightId> coming, CancellationToken cancellation)
    {
        var own = id.ToString();
        bool IsErased(string eater) => eater == own || eater.StartsWith($"{own}+", StringComparison.Ordinal);

        foreach (var plan in await db.Plans.AsNoTracking().Where(row => nights.Contains(row.NightId)).ToListAsync(cancellation))
        {
            // A coming night's cautions are for the others too, until the plan is made anew in a moment.
            await StoredErasure.ApplyAsync(
                db, plan,
                document => coming.Contains(plan.NightId)
                    ? PlanErasure.Without(document, IsErased)
                    : PlanErasure.WithoutAllergens(PlanErasure.Without(document, IsErased)),
                cancellation);
        }

        foreach (var dough in await db.CommittedDoughs.AsNoTracking().Where(row => nights.Contains(row.NightId)).ToListAsync(cancellation))
        {
            await StoredErasure.ApplyAsync(
                db, dough,
                snapshot => PlanErasure.Without(snapshot, IsErased),
                document => PlanErasure.WithoutAllergens(PlanErasure.Without(document, IsErased)),
                cancellation);
        }
    }

    [LoggerMessage(LogLevel.Information, "Guest {Guest} of group {Group} was removed by {By}.")]
    private static partial void SayRemoved(ILogger log, GuestId guest, GroupId group, string by);
}
