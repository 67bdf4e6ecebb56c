using GameNight.Nights.Records;
using GameNight.Planning;
using GameNight.Planning.Dough;
using GameNight.Planning.Quantities;
using GameNight.Web.Wording;
using GameNight.Web.Wording.Texts;
using NodaTime;

namespace GameNight.Web.Host.Kitchen;

/// <summary>The kitchen as text fields, in the measures of the host.</summary>
public sealed class KitchenForm(KitchenSnapshot shown, Measures measures)
{
    public string Room { get; set; } = "";
    public string Fridge { get; set; } = "";
    public string FridgeBalls { get; set; } = "";
    public string Bowls { get; set; } = "";
    public string HobRings { get; set; } = "";
    public string Tap { get; set; } = "";
    public string Oven { get; set; } = "";
    public string Altitude { get; set; } = "";
    public string BatchCapacity { get; set; } = "";
    public KneadingWay Kneading { get; set; }
    public string PiesPerBake { get; set; } = "";
    public string Hands { get; set; } = "";
    public string Preheat { get; set; } = "";
    public string Soak { get; set; } = "";
    public string Bake { get; set; } = "";
    public string Recovery { get; set; } = "";
    public PlaceForm Place { get; init; } = new(null, measures);
    public string SleepFrom { get; set; } = "";
    public string SleepUntil { get; set; } = "";
    public SortedSet<IsoDayOfWeek> WorkDays { get; } = [];
    public string WorkFrom { get; set; } = "08:30";
    public string WorkUntil { get; set; } = "17:30";
    public FlourForm Flour { get; } = new(shown);

    public static KitchenForm Of(KitchenFacts facts, Measures measures)
    {
        var kitchen = facts.Kitchen;
        var form = new KitchenForm(kitchen, measures)
        {
            Room = measures.Temperature.Typed(kitchen.Room.Value),
            Fridge = kitchen.Fridge is { } fridge ? measures.Temperature.Typed(fridge.Value) : "",
            FridgeBalls = kitchen.FridgeBalls is { } places ? TypedNumbers.Text(places) : "",
            Bowls = kitchen.Bowls is { } bowls ? TypedNumbers.Text(bowls) : "",
            HobRings = kitchen.HobRings is { } rings ? TypedNumbers.Text(rings) : "",
            Tap = measures.Temperature.Typed(kitchen.Tap.Value),
            Oven = measures.Temperature.Typed(kitchen.Oven.Value),
            Altitude = measures.Altitude.Typed(kitchen.AltitudeMetres),
            BatchCapacity = measures.Mass.Typed(kitchen.BatchCapacity.Value),
            Kneading = kitchen.Kneading,
            PiesPerBake = TypedNumbers.Text(kitchen.PiesPerBake),
            Hands = TypedNumbers.Text(kitchen.Hands),
            Preheat = TypedNumbers.Text(kitchen.Preheat.TotalMinutes),
            Soak = TypedNumbers.Text(kitchen.Soak.TotalMinutes),
            Bake = TypedNumbers.Text(kitchen.Bake.TotalMinutes),
            Recovery = TypedNumbers.Text(kitchen.Recovery.TotalMinutes),
            Place = PlaceForm.Of(kitchen.Place, measures),
            SleepFrom = TypedTimes.Text(facts.Hours.SleepFrom),
            SleepUntil = TypedTimes.Text(facts.Hours.SleepUntil),
        };
        form.WorkDays.UnionWith(facts.Hours.Work.Select(work => work.Day));
        if (facts.Hours.Work is [var first, ..])
        {
            form.WorkFrom = TypedTimes.Text(LocalTime.FromMinutesSinceMidnight(first.FromMinute));
            form.WorkUntil = TypedTimes.Text(LocalTime.FromMinutesSinceMidnight(first.UntilMinute));
        }

        return form;
    }

    /// <param name="kept">The kitchen as it is kept now: what has no field here stays.</param>
    /// <returns>The facts, or the fields that cannot be read. Field names are those of the planner's check.</returns>
    public (KitchenFacts? Facts, IReadOnlyDictionary<string, string> Problems) Read(KitchenFacts kept)
    {
        var numbers = new TypedNumbers("kitchen");
        var times = new Dictionary<string, string>();
        var room = numbers.Read("roomCelsius", Room, 5, 40, measures.Temperature, shown.Room.Value);
        var fridge = Fridge.Trim().Length == 0
            ? (double?)null
            : numbers.Read("fridgeCelsius", Fridge, -1, 14, measures.Temperature, shown.Fridge?.Value);
        if (fridge > room && !numbers.Problems.ContainsKey("roomCelsius"))
        {
            numbers.Refuse("fridgeCelsius", ProblemText.WarmerThanRoom(fridge.Value, room, measures));
        }

        var (sleepFrom, sleepUntil) = (Minute("sleep", SleepFrom), Minute("sleep", SleepUntil));
        var (workFrom, workUntil) = (Minute("work", WorkFrom), Minute("work", WorkUntil));
        if (WorkDays.Count > 0 && workUntil <= workFrom)
        {
            times["work"] = KitchenPages.WorkBackToFront;
        }

        var oven = new Celsius(numbers.Read("ovenCelsius", Oven, 150, 550, measures.Temperature, shown.Oven.Value));
        var kitchen = kept.Kitchen with
        {
            Room = new Celsius(room),
            Fridge = fridge is { } measured ? new Celsius(measured) : null,
            FridgeBalls = Optional("fridgeBalls", FridgeBalls, PieCount.Highest),
            Bowls = Optional("bowls", Bowls, KitchenSnapshot.MostBowls),
            HobRings = Optional("hobRings", HobRings, KitchenSnapshot.MostHobRings),
            Tap = new Celsius(numbers.Read("tapCelsius", Tap, 0, 35, measures.Temperature, shown.Tap.Value)),
            Oven = oven,
            AltitudeMetres = numbers.Read("altitudeMetres", Altitude, -400, 5000, measures.Altitude, shown.AltitudeMetres),
            BatchCapacity = new Grams(numbers.Read("batchCapacityGrams", BatchCapacity, 200, 50_000, measures.Mass, shown.BatchCapacity.Value)),
            Kneading = Kneading,
            PiesPerBake = numbers.ReadWhole("piesPerBake", PiesPerBake, 1, 6),
            Hands = numbers.ReadWhole("hands", Hands, 1, 8),
            Preheat = Duration.FromMinutes(numbers.Read("preheatMinutes", Preheat, 0, 180)),
            Soak = Duration.FromMinutes(numbers.Read("soakMinutes", Soak, 0, 180)),
            Bake = Duration.FromMinutes(numbers.Read("bakeMinutes", Bake, 1, 60)),
            Recovery = Duration.FromMinutes(numbers.Read("recoveryMinutes", Recovery, 0, 60)),
            Place = Place.Read(numbers, kept.Kitchen.Place, isSameOven: oven == kept.Kitchen.Oven),
            Flour = Flour.ReadFlour(numbers),
            Scale = Flour.ReadScale(numbers),
        };
        var hours = new HostHours(sleepFrom, sleepUntil, [.. WorkDays.Select(day => new WorkingHours(day, workFrom, workUntil))]);
        var problems = numbers.Problems.Concat(times).ToDictionary();
        return (problems.Count == 0 ? kept with { Kitchen = kitchen, Hours = hours } : null, problems);

        // Left empty, nothing is said of it.
        int? Optional(string field, string text, int most) => text.Trim().Length == 0 ? null : numbers.ReadWhole(field, text, 1, most);

        int Minute(string field, string text)
        {
            var parsed = TypedTimes.Parse(text);
            if (!parsed.Success)
            {
                times[field] = KitchenPages.GiveTimes;
                return 0;
            }

            return parsed.Value.Hour * 60 + parsed.Value.Minute;
        }
    }
}
