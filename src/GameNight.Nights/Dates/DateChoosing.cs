using GameNight.Nights.ForHosts;
using GameNight.Nights.Links;
using GameNight.Nights.Membership;
using GameNight.Nights.Messages;
using GameNight.Nights.Plans;
using GameNight.Nights.Records;
using GameNight.Nights.Storage;
using GameNight.Planning;
using GameNight.Planning.Quantities;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace GameNight.Nights.Dates;

/// <summary>
/// Makes the night of the evening that a host chooses: with last time's choices, an invitation for everybody who was asked, and
/// one message to each. It answers for nobody.
/// </summary>
public sealed class DateChoosing
{
    private readonly GroupSessions _sessions;
    private readonly LinkDirectory _links;
    private readonly ReplanRequests _replans;
    private readonly Outbox _outbox;
    private readonly ReferenceTables _tables;
    private readonly NightChanges _changes;
    private readonly IClock _clock;

    internal DateChoosing(
        GroupSessions sessions, LinkDirectory links, ReplanRequests replans, Outbox outbox, ReferenceTables tables, NightChanges changes,
        IClock clock)
    {
        (_sessions, _links, _replans, _outbox, _tables, _changes, _clock) = (sessions, links, replans, outbox, tables, changes, clock);
    }

    /// <summary>Safe to repeat, and for two hosts at once: one evening is chosen once, with one night and one message each.</summary>
    /// <param name="night">Made by the page; another one is answered when the evening was chosen before.</param>
    public async Task<ChoosingResult> ChooseAsync(
        GroupAccess access, DateChoiceId id, LocalDateTime evening, NightId night, CancellationToken cancellation)
    {
        access.Demand(HostRole.Organiser);
        await using var session = await _sessions.OpenAsync(access, cancellation);
        var (db, now) = (session.Db, _clock.GetCurrentInstant());
        var choice = await DateDesk.LockAsync(db, id, cancellation);
        switch (choice)
        {
            case null:
                return new ChoosingResult.Gone();
            case { State: DateChoiceState.Withdrawn }:
                return new ChoosingResult.Withdrawn();
            case { State: DateChoiceState.Chosen, NightId: { } made, Chosen: { } before }:
                return before == evening ? new ChoosingResult.Chosen(made) : new ChoosingResult.ChosenOtherwise(made, before);
            case { Facts: var asked } when !asked.Options.Contains(evening):
                return new ChoosingResult.NotAnOption();
        }

        if (NightTime.ToInstant(evening, choice.Facts.Zone) <= now)
        {
            return new ChoosingResult.HasPassed();
        }

        if (await FactsAsync(db, choice, evening, cancellation) is not { } facts)
        {
            return new ChoosingResult.NoDough();
        }

        await OpenAsync(session, access, choice, new Night(access.GroupId, night, facts), cancellation);
        choice.Choose(evening, night, now);
        _replans.Night(session, night);
        session.LookAfter(night, now);
        await session.CommitAsync(cancellation);
        _outbox.Wake();
        _replans.Wake(night);
        _changes.Publish(id);
        return new ChoosingResult.Chosen(night);
    }

    private async Task OpenAsync(
        GroupSession session, GroupAccess access, DateChoice choice, Night night, CancellationToken cancellation)
    {
        var db = session.Db;
        db.Nights.Add(night);
        var asked = await db.AskedGuests.AsNoTracking().Where(row => row.ChoiceId == choice.Id).Select(row => row.GuestId).ToListAsync(cancellation);
        var guests = await db.Guests
            .Where(guest => guest.FormerSince == null && (asked.Contains(guest.Id) || guest.HostId == access.HostId || guest.HostId == choice.By))
            .Where(guest => asked.Contains(guest.Id) || guest.HostId != null)
            .ToListAsync(cancellation);
        foreach (var guest in guests)
        {
            var invitation = InvitationDesk.Invite(session, _links, night, guest.Id);
            if (Outbox.IsGuest(guest))
            {
                // Nobody else can queue for a night that is not there yet.
                await _outbox.QueueAsync(session, night.Id, guest, MessageKind.Invitation, invitation.LinkGeneration, cancellation);
            }
        }
    }

    /// <summary>Last time's choices on the evening, or our own for a first night. Null without any dough.</summary>
    private async Task<NightFacts?> FactsAsync(GameNightDb db, DateChoice choice, LocalDateTime evening, CancellationToken cancellation)
    {
        var last = await db.Nights.AsNoTracking().Where(night => night.CancelledAt == null)
            .OrderByDescending(night => night.ServeAt).FirstOrDefaultAsync(cancellation);
        var doughs = await db.Recipes.AsNoTracking().OrderBy(recipe => recipe.Name).ThenBy(recipe => recipe.Id)
            .Select(recipe => recipe.Id).ToListAsync(cancellation);
        if (doughs.Count == 0)
        {
            return null;
        }

        if (last?.Facts is { } facts)
        {
            var length = facts.EndsAt is { } end ? Period.Between(facts.ServeAt, end, PeriodUnits.Minutes) : null;
            return facts with
            {
                Title = choice.Facts.Title,
                ServeAt = evening,
                EndsAt = length is null ? null : evening + length,
                Zone = choice.Facts.Zone,
                Formula = doughs.Contains(facts.Formula) ? facts.Formula : doughs[0],
            };
        }

        var cold = _tables.Steps.ColdFerment;
        return new NightFacts(
            choice.Facts.Title, evening, null, choice.Facts.Zone, "", "", doughs[0],
            new Share(_tables.Appetite.RunOutChance.Usual), (int)cold.ShortestHours, (int)cold.WantedHours, (int)cold.LongestHours,
            MostCompanions: NightFacts.UsualCompanions);
    }
}
