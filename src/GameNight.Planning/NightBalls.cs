using GameNight.Planning.Dough;
using GameNight.Planning.Heat;
using GameNight.Planning.Quantities;
using GameNight.Planning.Timeline;
using NodaTime;

namespace GameNight.Planning;

/// <summary>How the balls of a night warm up and cool down, and what of it the timeline takes.</summary>
internal static class NightBalls
{
    /// <summary>The timeline speaks in steps a host can keep.</summary>
    private static readonly Duration Step = Duration.FromMinutes(5);

    private static readonly Duration Shortest = Duration.FromMinutes(30);

    public static BallRests For(NightSnapshot night, DoughPlan dough, ReferenceTables tables)
    {
        var shaped = new Celsius(tables.Materials.BallTimes.CoreCelsius);
        var properties = FoodComposition.Of(dough.Formula, tables.Materials).At(shaped.Value, tables.Materials);
        var (ball, count, room) = (dough.Ball.Value, Math.Max(1, dough.Balls), night.Kitchen.Room);
        var fridge = night.Kitchen.Fridge ?? new Celsius(tables.Fermentation.Fridge.AssumedCelsius);
        var mixed = new Celsius(tables.Dough.TargetDoughCelsius.Value);
        return new BallRests(
            ball, count, room, fridge, mixed,
            Tempered(DoughPlace.LiddedBox), Tempered(DoughPlace.Counter), Cold(DoughPlace.LiddedBox), Cold(DoughPlace.StillFridge));

        Estimate<Duration>? Tempered(DoughPlace place) =>
            BallTimes.UntilTempered(ball, fridge, room, place, properties, tables.Materials);

        Estimate<Duration>? Cold(DoughPlace place) =>
            BallTimes.UntilCold(ball, count, mixed, fridge, place, properties, tables.Materials);
    }

    /// <summary>What the timeline gives balls in their box to be warm enough, whole steps up; never more than is kept to.</summary>
    public static Duration Tempering(BallRests balls)
    {
        var needed = balls.TemperBoxed?.Expected ?? TimelineLimits.LongestTemper;
        var steps = Duration.FromMinutes(Math.Ceiling(needed / Step) * Step.TotalMinutes);
        return Duration.Max(Shortest, Duration.Min(steps, TimelineLimits.LongestTemper));
    }
}
