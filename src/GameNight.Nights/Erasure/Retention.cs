using GameNight.Nights.Dates;
using GameNight.Nights.Links;
using GameNight.Nights.Membership;
using GameNight.Nights.Plans;
using GameNight.Nights.Records;
using GameNight.Nights.Storage;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;
using NodaTime;

namespace GameNight.Nights.Erasure;

/// <summary>
/// Keeps the word given with the consent: <see cref="DietaryNote.KeptDays"/> days after the night, must-nots and notes are
/// erased, and plans and dough commitments lose what they say of them; who was invited for one night goes with its links. Safe to run as often as one likes.
/// </summary>
internal sealed partial class Retention(
    GroupSessions sessions, GuestRemoval removal, IClock clock, ILogger<Retention> log) : BackgroundService
{
    /// <summary>A link that has ended is remembered this long, so that whoever opens it late is told so.</summary>
    public static readonly Duration EndedLinksKept = Duration.FromDays(30);

    /// <summary>Plans that still name somebody, or an allergen to keep away; looked for where they lie, for they are large.</summary>
    private const string TellingPlans =
        """
        select * from plans where document @? '$.**.eaterId' or document @? '$.**.eaterIds[*]'
        or document @? '$.split.pies[*].ownPieFor[*]' or document @? '$.cautions[*].allergens[*]'
        """;

    private const string TellingDoughs =
        """
        select * from committed_doughs where plan @? '$.**.eaterId' or plan @? '$.**.eaterIds[*]'
        or plan @? '$.split.pies[*].ownPieFor[*]' or plan @? '$.cautions[*].allergens[*]'
        or snapshot @? '$.guests[*].eaters[*].needs.*[*]' or snapshot @? '$.guests[*].past[*]'
        or snapshot @? '$.guests[*].hasOpenNote'
        """;

    private static readonly TimeSpan Pause = TimeSpan.FromHours(1);
    private static readonly TimeSpan PauseAfterFault = TimeSpan.FromMinutes(1);

    public static bool IsOver(Night night, Instant now) =>
        NightTime.ToInstant(night.Facts.ServeAt, night.Facts.Zone) + Duration.FromDays(DietaryNote.KeptDays) < now;

    /// <returns>How many guests' must-nots and notes were erased.</returns>
    /// <exception cref="NightsUnavailableException">The database is away; the next round does the rest.</exception>
    public async Task<int> EraseAsync(CancellationToken cancellation)
    {
        var erased = 0;
        foreach (var group in await GroupsAsync(cancellation))
        {
            try
            {
                erased += await EraseAsync(group, cancellation);
            }
            catch (Exception fault) when (fault is not OperationCanceledException && !NightsUnavailableException.IsMeantBy(fault))
            {
                // One group's trouble must not keep the others' notes.
                SayGroupFailed(log, group, fault);
            }
        }

        var endedBefore = clock.GetCurrentInstant() - EndedLinksKept;
        await using var db = await sessions.OpenGlobalAsync(cancellation);
        await db.Links.Where(link => link.ExpiresAt < endedBefore).ExecuteDeleteAsync(cancellation);
        NightsTelemetry.Erased(erased);
        return erased;
    }

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        while (!stoppingToken.IsCancellationRequested)
        {
            var pause = Pause;
            try
            {
                await EraseAsync(stoppingToken);
            }
            catch (Exception fault) when (!stoppingToken.IsCancellationRequested)
            {
                SayNotErased(log, fault);
                pause = PauseAfterFault;
            }
            catch (OperationCanceledException)
            {
                return;
            }

            await Task.Delay(pause, stoppingToken).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        }
    }

    private async Task<int> EraseAsync(GroupId group, CancellationToken cancellation)
    {
        var now = clock.GetCurrentInstant();
        await using var session = await sessions.OpenAsync(new GroupAccess(group, null, null), cancellation);
        var db = session.Db;
        var nights = await db.Nights.AsNoTracking().ToListAsync(cancellation);
        var over = nights.Where(night => IsOver(night, now)).Select(night => night.Id).ToList();
        var erased = await db.DietaryNotes.Where(note => over.Contains(note.NightId)).ExecuteDeleteAsync(cancellation);

        // What went to whom is kept as long as the links in it work.
        var linksEnded = nights
            .Where(night => NightTime.ToInstant(night.Facts.ServeAt, night.Facts.Zone) + LinkDirectory.KeptAfterNight < now)
            .Select(night => night.Id).ToList();
        await db.Messages.Where(message => linksEnded.Contains(message.NightId)).ExecuteDeleteAsync(cancellation);

        // Who helped is of no use then either; how many hands there were stays.
        foreach (var night in (await db.Nights.Where(night => linksEnded.Contains(night.Id)).ToListAsync(cancellation))
            .Where(night => night.Overrides.Helpers?.Any(helper => helper.HasName) == true))
        {
            night.Overrule(night.Overrides.WithoutHelperNamed(_ => true));
        }

        // What somebody said of evenings is of no use once they are over; a chosen night keeps its own answers.
        var asked = (await db.DateChoices.AsNoTracking().ToListAsync(cancellation))
            .Where(choice => DateDesk.LastOf(choice.Facts) + LinkDirectory.KeptAfterNight < now)
            .Select(choice => choice.Id).ToList();
        await db.DateChoices.Where(choice => asked.Contains(choice.Id)).ExecuteDeleteAsync(cancellation);
        await db.HostInvitations.Where(invitation => invitation.ExpiresAt < now).ExecuteDeleteAsync(cancellation);
        foreach (var plan in await db.Plans.FromSqlRaw(TellingPlans).AsNoTracking()
            .Where(plan => over.Contains(plan.NightId)).ToListAsync(cancellation))
        {
            await KeepServedAsync(db, plan, cancellation);
            await StoredErasure.ApplyAsync(db, plan, PlanErasure.WithoutPeople, cancellation);
        }

        foreach (var dough in await db.CommittedDoughs.FromSqlRaw(TellingDoughs).AsNoTracking()
            .Where(dough => over.Contains(dough.NightId)).ToListAsync(cancellation))
        {
            await StoredErasure.ApplyAsync(db, dough, PlanErasure.WithoutNeeds, PlanErasure.WithoutPeople, cancellation);
        }

        await session.CommitAsync(cancellation);
        await RemoveOneOffsAsync(group, linksEnded, cancellation);
        return erased;
    }

    /// <summary>One number a guest stays: how near they came to their best. It says nothing of what they must not have.</summary>
    private static async Task KeepServedAsync(GameNightDb db, SavedPlan plan, CancellationToken cancellation)
    {
        if (PlanBook.Read(plan)?.Split.Satisfactions is not { Count: > 0 } satisfactions)
        {
            return;
        }

        var served = satisfactions.Where(row => row.BestPossible > 0).ToDictionary(row => row.EaterId, row => row.Score / row.BestPossible);
        foreach (var invitation in await db.Invitations.Where(row => row.NightId == plan.NightId).ToListAsync(cancellation))
        {
            if (served.TryGetValue(invitation.GuestId.ToString(), out var share))
            {
                invitation.WasServed(Math.Clamp(Math.Round(share, 3), 0, 1));
            }
        }
    }

    /// <summary>
    /// Who was invited for one night goes when the links of that night end, or at once when the invitation is taken back: of
    /// them stays what stays of anybody who leaves.
    /// </summary>
    private async Task RemoveOneOffsAsync(GroupId group, List<NightId> linksEnded, CancellationToken cancellation)
    {
        var access = new GroupAccess(group, null, null);
        List<GuestId> gone;
        await using (var session = await sessions.OpenAsync(access, cancellation))
        {
            var db = session.Db;
            gone = await db.Guests.AsNoTracking()
                .Where(guest => guest.IsOneOff && guest.FormerSince == null && guest.HostId == null)
                .Where(guest => !db.Invitations.Any(row => row.GuestId == guest.Id && !linksEnded.Contains(row.NightId)))
                .Select(guest => guest.Id).ToListAsync(cancellation);
        }

        foreach (var guest in gone)
        {
            await removal.EraseAsync(access, guest, "the end of their night", cancellation);
        }
    }

    /// <summary>
    /// Row-level security shows no group to nobody, so they are found from both ends: the accounts that keep them, and the
    /// links that are still listed.
    /// </summary>
    private async Task<IReadOnlyCollection<GroupId>> GroupsAsync(CancellationToken cancellation)
    {
        await using var db = await sessions.OpenGlobalAsync(cancellation);
        var groups = (await db.Links.AsNoTracking().Select(link => link.GroupId).Distinct().ToListAsync(cancellation)).ToHashSet();
        foreach (var account in await db.Users.AsNoTracking().Select(account => account.Id).ToListAsync(cancellation))
        {
            var memberships = await sessions.MembershipsOfAsync(new HostId(account), cancellation);
            groups.UnionWith(memberships.Select(membership => membership.GroupId));
        }

        return groups;
    }

    [LoggerMessage(LogLevel.Warning, "Notes could not be erased now; they will be in the next round.")]
    private static partial void SayNotErased(ILogger log, Exception fault);

    [LoggerMessage(LogLevel.Error, "Notes of group {Group} could not be erased; the next round tries again.")]
    private static partial void SayGroupFailed(ILogger log, GroupId group, Exception fault);
}
