using GameNight.Nights.ForGuests;
using GameNight.Nights.Plans;
using GameNight.Nights.Records;
using GameNight.Nights.Seats;
using GameNight.Nights.Storage;
using GameNight.Planning;
using GameNight.Planning.Guests;
using GameNight.Planning.Timeline;
using GameNight.Planning.Toppings;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace GameNight.Nights.Snapshots;

/// <summary>From records to what the planner is handed: the only mapping between the two worlds.</summary>
internal sealed class NightSnapshots(ReferenceTables tables)
{
    /// <summary>Own hours are handed over for this long before the serving time, and one day after it.</summary>
    private static readonly Period HoursBefore = Period.FromDays(9);

    /// <returns>Null when the night is not there (any more).</returns>
    public async Task<NightSnapshot?> LoadAsync(GroupSession session, NightId id, CancellationToken cancellation)
    {
        var db = session.Db;
        var night = await db.Nights.AsNoTracking().SingleOrDefaultAsync(row => row.Id == id, cancellation);
        if (night is null)
        {
            return null;
        }

        var kitchen = await db.Kitchens.AsNoTracking().SingleAsync(cancellation);
        var recipe = await db.Recipes.AsNoTracking().SingleAsync(row => row.Id == night.Facts.Formula, cancellation);
        var items = await db.MenuItems.AsNoTracking()
            .Where(item => item.IsOffered)
            .OrderBy(item => item.Role).ThenBy(item => item.Order).ThenBy(item => item.Id).ToListAsync(cancellation);
        var dough = await db.CommittedDoughs.AsNoTracking().SingleOrDefaultAsync(row => row.NightId == id, cancellation);
        var invited = await db.InvitedTo(id).ToListAsync(cancellation);
        // Who waits for a seat is not expected, nor is who could only wait; a seat that becomes free makes another plan.
        var isFull = night.Facts.Seats is { } seats && TableSeats.Taken(invited.Select(row => (row.Guest, row.Answer))) >= seats;
        var expected = invited.Where(row => row.Answer is not { IsWaiting: true } && !(isFull && CouldOnlyWait(row))).ToList();
        var households = Households([.. expected.Select(row => row.Guest)]);
        var past = kitchen.Facts.LeavesPastOut == true
            ? null
            : await PastEvenings.LoadAsync(db, night, tables.Appetite, cancellation);

        List<OwnStep> own = [.. (night.Overrides.Own ?? []).Select(named => named.Step)];
        return new NightSnapshot(
            NightTime.ToInstant(night.Facts.ServeAt, night.Facts.Zone),
            [.. expected.Select(row => ToSnapshot(
                row.Guest, row.Answer?.Facts, row.Note, past?[row.Guest.Id].ToList(),
                households.GetValueOrDefault(row.Guest.Id), StayTimes.Of(night.Facts, row.Answer?.Facts)))],
            WithHands(dough is null ? kitchen.Facts.Kitchen : AsPlanned(kitchen.Facts.Kitchen, dough), night.Overrides.Helpers),
            recipe.Formula,
            recipe.Shape,
            MenuOf(items, kitchen.Facts.Menu ?? HouseMenu.Usual),
            [
                .. Away(
                    kitchen.Facts.Hours,
                    (night.Facts.ServeAt - HoursBefore).Date,
                    night.Facts.ServeAt.Date.PlusDays(1),
                    night.Facts.Zone),
                .. (night.Overrides.Busy ?? []).Select(busy => new HostAway(busy.From, busy.Until)),
            ],
            new ColdFerment(
                Duration.FromHours(night.Facts.ShortestColdHours),
                Duration.FromHours(night.Facts.WantedColdHours),
                Duration.FromHours(night.Facts.LongestColdHours)),
            night.Facts.RunOutChance,
            night.Overrides.ToByHand(),
            dough is null ? null : Begun(dough, own),
            night.Readings.Count > 0 ? night.Readings : null,
            kitchen.Facts.Sauce,
            kitchen.Facts.CheeseBlend,
            night.Facts.Courses is { Count: > 0 } courses ? courses : null,
            PastEvenings.Length(night.Facts),
            night.Facts.ShortageWeight,
            dough is null ? null : night.Overrides.Late,
            night.Facts.Played?.Players is { } players and not { Fewest: null, Most: null } ? players : null,
            own.Count > 0 ? own : null,
            SkillsOf(night.Overrides.Helpers));
    }

    private static KitchenSnapshot WithHands(KitchenSnapshot kitchen, IReadOnlyList<HelperOfNight>? helpers) =>
        helpers is null ? kitchen : kitchen with { Hands = 1 + helpers.Count };

    /// <summary>Null where all do everything: then it is only a number of hands.</summary>
    private static IReadOnlyList<HelperSkill>? SkillsOf(IReadOnlyList<HelperOfNight>? helpers) =>
        helpers?.Any(helper => helper.Skill != HelperSkill.Everything) == true ? [.. helpers.Select(helper => helper.Skill)] : null;

    private Menu MenuOf(IEnumerable<PantryItem> items, HouseMenu house) => new(
        [.. items.Select(item => item.ForPlanning())],
        house.MostToppings ?? HouseMenu.UsualMostToppings,
        tables.Menu.DoughWith(house.Peel, house.Oil),
        house.Apart,
        house.Named is { } named ? [.. named.Select(set => new ToppingSet(set.ToppingIds))] : null,
        house.SecondDough?.Dough);

    /// <summary>
    /// A dough that is begun is followed from the factors it was planned with: what it teaches the kitchen must not count for it
    /// a second time.
    /// </summary>
    private static KitchenSnapshot AsPlanned(KitchenSnapshot kitchen, CommittedDough dough) =>
        kitchen with { Calibration = DoughCommitments.Read(dough).Night.Kitchen.Calibration };

    /// <summary>An own step that was taken out or changed since does not stand with the dough.</summary>
    private static BegunDough? Begun(CommittedDough dough, List<OwnStep> own)
    {
        var then = DoughCommitments.Read(dough);
        List<int> stand = [.. (then.Night.OwnSteps ?? []).Intersect(own).Select(step => step.Number)];
        return BegunDough.Of(then.Night, then.Plan) is { } begun
            ? begun with { Steps = [.. begun.Steps.Where(step => step.Kind != StepKind.Own || stand.Contains(step.Number))] }
            : null;
    }

    /// <summary>The id of a companion in snapshots and plans: the guest's id and their number from 1.</summary>
    public static string CompanionId(GuestId guest, int number) => $"{guest}+{number}";

    private static bool CouldOnlyWait(InvitedRow row) =>
        row.Guest.HostId is null && row.Answer?.Counted is null or { Presence: Presence.Undecided, Remotely: false };

    /// <summary>A number for each household of which more than one is expected: its name stays where people are.</summary>
    private static Dictionary<GuestId, string> Households(IReadOnlyList<Guest> guests) => guests
        .Where(guest => guest.Household is not null)
        .GroupBy(guest => guest.Household!)
        .Where(home => home.Count() > 1)
        .OrderBy(home => home.Min(guest => guest.Id.Value))
        .SelectMany((home, index) => home.Select(guest => (guest.Id, Number: index + 1)))
        .ToDictionary(row => row.Id, row => $"household-{row.Number}");

    private static GuestSnapshot ToSnapshot(
        Guest guest, AnswerFacts? answer, DietaryNote? note, List<PastEvening>? past, string? household, Stay? stay)
    {
        var self = new Eater(
            guest.Id.ToString(),
            guest.Portion,
            answer?.Hunger ?? Hunger.AsUsual,
            EatsHere: answer is not { Remotely: true },
            NeedsOf(0),
            answer?.Likes ?? new Dictionary<string, Liking>());
        var companions = (answer?.Companions ?? []).Select((companion, index) => new Eater(
            CompanionId(guest.Id, index + 1),
            companion.Portion,
            Hunger.AsUsual,
            EatsHere: answer is not { Remotely: true },
            NeedsOf(index + 1),
            new Dictionary<string, Liking>()));
        return new GuestSnapshot(guest.Id.ToString(), StateOf(guest, answer), [self, .. companions], household, past is { Count: > 0 } ? past : null, stay,
            note is { IsOpen: true } ? true : null);

        DietaryNeeds NeedsOf(int index) => note?.NeedsOf(index) ?? DietaryNeeds.None;
    }

    internal static AnswerState StateOf(Guest guest, AnswerFacts? answer) => answer?.Presence switch
    {
        Presence.Coming => guest.HostId is null ? AnswerState.Coming : AnswerState.Host,
        Presence.Undecided => AnswerState.Undecided,
        Presence.NotComing => AnswerState.NotComing,
        null => guest.HostId is null ? AnswerState.NoAnswer : AnswerState.Host,
    };

    /// <summary>Sleep and work of these days.</summary>
    internal static List<HostAway> Away(HostHours hours, LocalDate first, LocalDate last, string zone)
    {
        var away = new List<HostAway>();
        for (var day = first; day <= last; day = day.PlusDays(1))
        {
            if (hours.SleepFromMinute != hours.SleepUntilMinute)
            {
                var wakes = hours.SleepUntil > hours.SleepFrom ? day : day.PlusDays(1);
                Add(day + hours.SleepFrom, wakes + hours.SleepUntil);
            }

            foreach (var work in hours.Work.Where(work => work.Day == day.DayOfWeek))
            {
                Add(
                    day + LocalTime.FromMinutesSinceMidnight(work.FromMinute),
                    day + LocalTime.FromMinutesSinceMidnight(work.UntilMinute));
            }
        }

        return away;

        void Add(LocalDateTime from, LocalDateTime until)
        {
            var (start, end) = (NightTime.ToInstant(from, zone), NightTime.ToInstant(until, zone));
            if (end > start)
            {
                away.Add(new HostAway(start, end));
            }
        }
    }
}
