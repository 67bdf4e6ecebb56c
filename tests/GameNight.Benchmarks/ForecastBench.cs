using System.Diagnostics;
using GameNight.Planning.Appetite;
using GameNight.Planning.Guests;
using GameNight.Planning.Quantities;
using GameNight.TestKit;
using GameNight.TestKit.Nights;
using static GameNight.TestKit.Nights.NightBuilder;

/// <summary>The forecast of 200 guests beside a simulation of the same night with 100,000 draws, and with a dozen past nights each.</summary>
internal static class ForecastBench
{
    private const int Runs = 7;
    private const int Guests = 200;
    private const int Draws = 100_000;
    private static readonly Grams Ball = new(320);

    public static void Run()
    {
        var plain = Night(past: null);
        var known = Night([.. Enumerable.Range(1, 12).Select(ago => new PastEvening(ago, AnswerState.Coming, ago % 5 > 0, ago % 5 > 0 ? 4 + ago % 4 : null, RanOut: ago % 6 == 1))]);

        var (demand, forecast) = Timed(() => Forecast(plain), Runs);
        var (_, learned) = Timed(() => Forecast(known), Runs);
        var lots = new Lots(plain, [], null, Ball / 8);
        var (drawn, simulated) = Timed(() => Enumerable.Range(0, Draws).Sum(_ => (double)lots.Draw()) / Draws, 1);

        Console.WriteLine();
        Console.WriteLine($"forecast of {Guests} guests: {Text(forecast)} ms; with 12 past nights each: {Text(learned)} ms");
        Console.WriteLine(
            $"{Draws:#,0} draws of the same night: {simulated[0]:0} ms, {simulated[0] / forecast[Runs / 2]:0} times as long; mean {drawn:0.0} slices, forecast {demand:0.0}");
    }

    private static double Forecast(IReadOnlyList<GuestSnapshot> guests)
    {
        var (_, demand) = AppetiteModel.Forecast(guests, Ball, 8, SharedFolder.Tables.Appetite);
        return PieCountRule.For(demand, 8, new Share(0.1), null).Count.Value.Value > 0 ? demand.Mean : 0;
    }

    /// <summary>Every fourth is undecided, every fifth shares a household with the next.</summary>
    private static IReadOnlyList<GuestSnapshot> Night(IReadOnlyList<PastEvening>? past) =>
    [
        .. Enumerable.Range(0, Guests).Select(index => new GuestSnapshot(
            $"g{index}", index % 4 == 0 ? AnswerState.Undecided : AnswerState.Coming, [AnEater($"g{index}")],
            index % 5 < 2 ? $"house-{index / 5}" : null, past)),
    ];

    private static (double Value, List<double> Milliseconds) Timed(Func<double> work, int runs)
    {
        var value = runs > 1 ? work() : 0;
        var milliseconds = new List<double>();
        for (var run = 0; run < runs; run++)
        {
            var watch = Stopwatch.StartNew();
            value = work();
            milliseconds.Add(watch.Elapsed.TotalMilliseconds);
        }

        milliseconds.Sort();
        return (value, milliseconds);
    }

    private static string Text(List<double> milliseconds) => $"{milliseconds[Runs / 2]:0.0} ({milliseconds[0]:0.0} to {milliseconds[^1]:0.0})";
}
