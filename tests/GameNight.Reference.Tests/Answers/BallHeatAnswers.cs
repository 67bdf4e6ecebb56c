using GameNight.Planning.Heat;
using GameNight.Planning.Quantities;
using NodaTime;

namespace GameNight.Reference.Tests;

/// <summary>What the engine says of dough balls, with the properties the outside figures were derived with.</summary>
internal static class BallHeatAnswers
{
    private static readonly ThermalProperties Dough = new(0.43, 1200, 2800);

    private static DoughSphere Ball => new(new Grams(250), Dough);

    public static IEnumerable<(string Id, Func<double> Answer)> All =>
    [
        ("E15.series", () =>
        {
            var fourier = OneTermSeries.For(BodyShape.Sphere, Ball.BiotAt(8)).FourierWhenLeftAtCentre(6.0 / 18);
            return fourier / Ball.FourierAfter(60);
        }),
        ("E15.core16", () => Minutes(250, 8, 4, 22, 16)),
        ("E16", () => Ball.LumpedSeconds(8) / 60),
        ("E17", LargestDifferenceFromSeries),
        .. new[] { (180, 5), (180, 8), (250, 5), (250, 8), (250, 12), (280, 8) }.SelectMany(row => Row(row.Item1, row.Item2)),
    ];

    private static IEnumerable<(string Id, Func<double> Answer)> Row(int grams, int coefficient)
    {
        foreach (var core in new[] { 10, 6, 5 })
        {
            yield return ($"E.ball.{grams}.{coefficient}.down{core}", () => Minutes(grams, coefficient, 24, 4, core));
        }

        foreach (var core in new[] { 12, 16, 18, 20 })
        {
            yield return ($"E.ball.{grams}.{coefficient}.up{core}", () => Minutes(grams, coefficient, 4, 22, core));
        }
    }

    private static double Minutes(double grams, double coefficient, double start, double around, double core) => BallHeat
        .Over(start, [new HeatPhase(Duration.FromHours(12), new Grams(grams), around, coefficient)], Dough)
        .UntilCore(core)!.Value.TotalMinutes;

    private static double LargestDifferenceFromSeries()
    {
        var largest = 0.0;
        foreach (var biot in new[] { 0.1, 0.3, 1, 3, 10 })
        {
            var coefficient = biot * Dough.ConductivityWPerMK / Ball.RadiusMetres;
            var temperatures = BallHeat.Over(
                20, [new HeatPhase(Duration.FromHours(6), new Grams(250), 0, coefficient)], Dough);
            var series = OneTermSeries.For(BodyShape.Sphere, biot);
            for (var i = 0; i < temperatures.CoreCelsius.Length; i++)
            {
                var fourier = Ball.FourierAfter(i * 60);
                if (fourier >= OneTermSeries.LeastFourier)
                {
                    largest = Math.Max(largest, Math.Abs(temperatures.CoreCelsius[i] / 20 - series.LeftAt(fourier)));
                }
            }
        }

        return largest;
    }
}
