using System.Text.Json;
using GameNight.Nights.Erasure;
using GameNight.Nights.ForGuests;
using GameNight.Nights.Links;
using GameNight.Nights.Plans;
using GameNight.Nights.Records;
using GameNight.Nights.Storage;
using GameNight.Planning;
using GameNight.Planning.Contract;
using NodaTime;

namespace GameNight.Nights.Moving;

/// <summary>From a checked document to records, within one session.</summary>
internal sealed class DocumentRecords(
    GroupSession session, HostId owner, LinkDirectory links, GuestNotes notes, ReplanRequests replans, Instant now)
{
    private GroupId Group => session.GroupId;

    private GameNightDb Db => session.Db;

    public void AddAll(GroupDocument document)
    {
        var group = new Group(Group, document.Group.Name, document.Group.Zone);
        group.Meet(document.Group.Rhythm);
        Db.Groups.Add(group);
        Db.Memberships.Add(new GroupMembership(Group, owner, HostRole.Owner, seesNotes: true));
        Db.Kitchens.Add(new KitchenSetup(Group, document.Kitchen));
        Db.Recipes.AddRange(document.Doughs.Select(part => new DoughRecipe(Group, part.Id, part.Name, part.Formula, part.Shape)));
        foreach (var part in document.Menu)
        {
            var item = new PantryItem(Group, part.Id, part.Name, part.Role, part.GramsPerCm2, part.Composition, part.Order, part.WaterShare);
            item.Set(part.Name, part.GramsPerCm2, part.Composition, part.WaterShare, part.IsOffered);
            item.Keep(part.Stock);
            Db.MenuItems.Add(item);
        }

        foreach (var part in document.Guests)
        {
            Add(part, part.Id == document.OwnEater);
        }

        var former = document.Guests.Where(guest => guest.FormerSince is not null).Select(guest => guest.Id).ToHashSet();
        foreach (var part in document.Nights)
        {
            Add(part, former);
        }

        DateParts.AddAll(session, document.Dates ?? [], owner, former, links, now);
    }

    private void Add(GuestPart part, bool isOwner)
    {
        var guest = new Guest(Group, part.Id, part.Name, part.Portion, isOwner ? owner : null);
        guest.Stand(part.IsStanding);
        guest.ShowName(part.ShowsName);
        guest.Keep(part.Contact);
        guest.LiveIn(part.Household);
        if (part.IsOneOff == true)
        {
            guest.ComeOnce();
        }

        if (part.FormerSince is { } since)
        {
            guest.Leave(since);
        }

        Db.Guests.Add(guest);
        if (part.Wishes is { } wishes)
        {
            var kept = new RememberedWishes(Group, part.Id, wishes.Facts, wishes.ConsentedAt);
            Db.RememberedWishes.Add(kept);
            Db.Entry(kept).Property(row => row.ConsentedVersion).CurrentValue = wishes.ConsentedVersion;
        }
    }

    private void Add(NightPart part, HashSet<GuestId> former)
    {
        var night = new Night(Group, part.Id, part.Facts);
        night.Overrule(part.Overrides);
        if (part.CancelledAt is { } cancelled)
        {
            night.Cancel(cancelled);
        }

        foreach (var move in part.Moves)
        {
            night.Moved(move);
        }

        foreach (var reading in part.Readings ?? [])
        {
            night.Read(reading);
        }

        Db.Nights.Add(night);
        foreach (var tap in part.Taps ?? [])
        {
            var kept = new LiveTap(Group, part.Id, tap.Id, tap.Mark, by: null);
            if (tap.TakenBackAt is { } taken)
            {
                kept.TakeBack(taken);
            }

            Db.LiveTaps.Add(kept);
        }

        var serveAt = NightTime.ToInstant(part.Facts.ServeAt, part.Facts.Zone);
        var isPastKeeping = Retention.IsOver(night, now);
        foreach (var row in part.Invited)
        {
            var invitation = new Invitation(Group, part.Id, row.Guest);
            if (row.DisownedAt is { } disowned)
            {
                invitation.Disown(disowned);
            }

            invitation.WasServed(row.Served);
            Db.Invitations.Add(invitation);
            if (serveAt + LinkDirectory.KeptAfterNight > now && !former.Contains(row.Guest))
            {
                links.List(session, invitation, serveAt);
            }

            Add(part.Id, row, isPastKeeping);
        }

        AddPlans(part, isPastKeeping);
        if (serveAt > now)
        {
            replans.Night(session, part.Id);
            session.LookAfter(part.Id, now);
        }
    }

    private void Add(NightId night, InvitedPart part, bool isPastKeeping)
    {
        if (part.Answer is { } answer)
        {
            var kept = Answer.First(
                Group, night, part.Guest, answer.Facts, Guid.NewGuid(), answer.AnsweredAt, answer.IsLate, answer.SaidBy);
            if (answer.WaitingNumber is { } number)
            {
                kept.Wait(number);
            }

            Db.Answers.Add(kept);
        }

        if (part.Dietary is { } dietary && !isPastKeeping)
        {
            var kept = new DietaryNote(Group, night, part.Guest);
            kept.Set(dietary.Needs, dietary.Note is { Length: > 0 } note ? notes.Protect(note) : null, dietary.ConsentedAt);
            if (dietary.Ruling is { } ruling)
            {
                kept.Settle(ruling);
            }

            Db.DietaryNotes.Add(kept);
            Db.Entry(kept).Property(row => row.ConsentedVersion).CurrentValue = dietary.ConsentedVersion;
        }

        if (part.LookBack is { } back)
        {
            Db.LookBacks.Add(new LookBack(Group, night, part.Guest, back.Facts, Guid.NewGuid(), back.SavedAt));
        }
    }

    private void AddPlans(NightPart part, bool isPastKeeping)
    {
        if (part.Plan is { } plan)
        {
            var saved = new SavedPlan(Group, part.Id);
            saved.Replace(plan.Fingerprint, plan.Document, plan.MadeAt, Write(Kept(plan.Document)));
            Db.Plans.Add(saved);

            // What was promised when the dough was begun, not what a later plan says of it.
            Db.Entry(saved).Property(row => row.AnswerBy).CurrentValue = plan.AnswerBy;
            Db.Entry(saved).Property(row => row.DoughCommitment).CurrentValue = plan.DoughCommitment;
        }

        if (part.CommittedDough is { } dough)
        {
            var snapshot = isPastKeeping ? PlanErasure.WithoutNeeds(dough.Snapshot) : dough.Snapshot;
            Db.CommittedDoughs.Add(new CommittedDough(
                Group, part.Id, dough.At, dough.ByHand ? owner : null, dough.Envelope, Write(snapshot), Write(Kept(dough.Plan))));
        }

        if (part.BakeLog is { } log)
        {
            Db.BakeLogs.Add(new BakeLog(Group, part.Id, log.Facts, log.SavedAt));
        }

        NightPlan Kept(NightPlan document) => isPastKeeping ? PlanErasure.WithoutPeople(document) : document;
    }

    private static string Write<T>(T document) => JsonSerializer.Serialize(document, PlanJson.Options);
}
