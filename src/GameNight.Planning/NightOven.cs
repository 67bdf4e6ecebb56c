using GameNight.Planning.Dough;
using GameNight.Planning.Heat;
using GameNight.Planning.Quantities;
using GameNight.Planning.Timeline;
using GameNight.Planning.Toppings;
using NodaTime;

namespace GameNight.Planning;

/// <summary>Hands the models of oven, surface and ball what they need of the night.</summary>
internal sealed class NightOven
{
    private const int SampleMinutes = 5;

    /// <summary>What is shown after the last pie.</summary>
    private static readonly Duration Tail = Duration.FromMinutes(30);

    private static readonly Duration LongestEvening = Duration.FromHours(24);

    private readonly NightSnapshot _night;
    private readonly ReferenceTables _tables;
    private readonly BakingPlace _place;
    private readonly Oven _oven;
    private readonly LearnedHeat? _learned;
    private readonly SurfaceReadiness _readiness;

    private NightOven(NightSnapshot night, BakingPlace place, Oven oven, ReferenceTables tables)
    {
        (_night, _place, _tables) = (night, place, tables);
        _learned = place.Readings is { Count: >= LearnedHeat.FewestReadings } readings
            ? LearnedHeat.From(place.Surface, oven, readings, tables.Materials)
            : null;
        _oven = _learned is { } learned ? oven with { HeatMultiplier = learned.Multiplier.Expected } : oven;
        _readiness = SurfaceReadiness.For(place.Surface, oven, tables.Materials, _learned);

        // Whoever said what they bake on and trusts the model gets its soak; else what they wrote down themselves stands.
        var leads = night.Kitchen.Place is not null && place.Lead == SoakLead.Model && _readiness.AfterAirIsHot is not null;
        Soak = _readiness.Soak(place.Lead, leads ? null : night.Kitchen.Soak);
    }

    /// <summary>What the timeline takes.</summary>
    public Explained<Duration> Soak { get; }

    /// <returns>Null when nobody said what is baked on, and what is assumed does not stand this oven.</returns>
    public static NightOven? For(NightSnapshot night, ReferenceTables tables)
    {
        var (kitchen, place) = (night.Kitchen, night.Kitchen.Place ?? BakingPlace.Assumed);
        var oven = place.In(kitchen.Room, kitchen.Oven, kitchen.Preheat);
        return place.Problems("kitchen.place", oven, tables.Materials).Count == 0
            ? new NightOven(night, place, oven, tables)
            : null;
    }

    /// <param name="onSecond">Pies that do not lie on the main dough; their toppings are among the amounts.</param>
    public OvenPlan Plan(DoughPlan dough, BallRests balls, IReadOnlyList<ItemAmount> amounts, int onSecond, HostTimeline timeline)
    {
        var kitchen = _night.Kitchen;
        var shaped = new Celsius(_tables.Materials.BallTimes.CoreCelsius);
        var properties = FoodComposition.Of(dough.Formula, _tables.Materials).At(shaped.Value, _tables.Materials);
        var altitude = new Altitude(kitchen.AltitudeMetres);
        var toppings = amounts.Sum(amount => amount.Amount.Expected.Value) / Math.Max(1, dough.Balls + onSecond);
        var pie = PieHeat.Of(
            dough.Ball.Value, new Grams(Math.Min(PieHeat.MostToppingsGrams, toppings)), shaped, altitude, properties, _tables.Materials);
        var bakes = new Bakes([], kitchen.Bake, pie, Math.PI / 4 * Math.Pow(_night.Shape.Diameter.Value / 100, 2));

        return new OvenPlan(
            _place with { Readings = null },
            kitchen.Place is null,
            _readiness,
            Soak,
            SurfaceReadiness.Recovery(_place.Surface, _oven, bakes, _tables.Materials),
            kitchen.Recovery,
            [.. SurfaceRanking.At(kitchen.Oven, shaped, properties, altitude, _tables.Materials).Select(one => one.Kind)],
            balls,
            _learned,
            Evening(timeline, bakes));
    }

    private SurfaceEvening? Evening(HostTimeline timeline, Bakes bakes)
    {
        // Each of several places has its own surface, and they take turns: one of them is followed.
        var steps = timeline.Steps
            .Where(step => step.Kind == StepKind.Bake)
            .OrderBy(step => step.Start).ThenBy(step => step.Number)
            .Where((_, index) => index % _night.Kitchen.PiesPerBake == 0)
            .ToList();
        if (steps.Count == 0 || timeline.Steps.FirstOrDefault(step => step.Kind == StepKind.Preheat) is not { } preheat)
        {
            return null;
        }

        var on = preheat.Start;
        var length = Duration.Min(steps[^1].End - on + Tail, LongestEvening);
        var surface = SurfaceHeat.Over(
            _place.Surface, _oven, length, _tables.Materials,
            bakes with { Starts = [.. steps.Select(step => step.Start - on)], Length = steps[0].End - steps[0].Start });
        var pies = steps.Zip(surface.Dips, (step, dip) => new PieOnSurface(
            step.Number, step.Start, step.End, Rounded(dip.AtStartCelsius), Rounded(dip.AtEndCelsius), dip.Back)).ToList();
        var minutes = Enumerable.Range(0, (int)Math.Ceiling(length.TotalMinutes / SampleMinutes)).Select(index => index * SampleMinutes)
            .Concat(pies.SelectMany(pie => new[] { (int)(pie.Start - on).TotalMinutes, (int)(pie.End - on).TotalMinutes }))
            .Append((int)length.TotalMinutes)
            .Distinct().Order();
        return new SurfaceEvening(on, [.. minutes.Select(At)], pies);

        SurfaceMoment At(int minute) => new(
            Duration.FromMinutes(minute),
            Rounded(surface.AirCelsius[minute]),
            Rounded(surface.TopCelsius[minute]),
            surface.IronCelsius.IsEmpty ? null : Rounded(surface.IronCelsius[minute]));
    }

    /// <summary>Digits that no thermometer shows only fill the database.</summary>
    private static Celsius Rounded(double celsius) => new(Math.Round(celsius, 1));
}
