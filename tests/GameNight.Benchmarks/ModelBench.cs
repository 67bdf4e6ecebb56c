using System.Diagnostics;
using GameNight.Planning.Dough;
using GameNight.Planning.Fermentation;
using GameNight.Planning.Heat;
using GameNight.Planning.Quantities;
using GameNight.TestKit;
using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.OdeSolvers;
using MathNet.Numerics.RootFinding;
using NodaTime;

/// <summary>
/// The two models that a plan waits for, beside the same equations in a general-purpose library (MathNet.Numerics): a dose for
/// 72 hours of cold, and the temperatures of one ball over them, minute by minute.
/// </summary>
internal static class ModelBench
{
    private const int Runs = 7;

    private static readonly FermentationTable Table = SharedFolder.Tables.Fermentation;
    private static readonly MaterialsTable Materials = SharedFolder.Tables.Materials;

    private static readonly DoughFormula Formula = new(
        new Share(0.62), new Share(0.025), new Share(0.02), default, false, YeastForm.Fresh, default, default);

    private static readonly DoughJourney Journey = new(
        new Celsius(24), Duration.FromHours(2), Duration.FromHours(72), Duration.FromHours(2), new Celsius(22), new Celsius(4), 0,
        new Grams(250), new Grams(1500));

    public static void Run()
    {
        Console.WriteLine();
        Console.WriteLine($"{"model",-34} {"ours, ms",26} {"kB",8} {"library, ms",26} {"kB",8} {"times",7} {"differs by",12}");

        var run = new DoughRun(Journey, Formula, FermentationCalibration.None, Table, Materials);
        var series = run.Temperatures.Whole();
        Row("dose, temperatures known",
            () => YeastDoseModel.Solve(run.Over(series, 0), run.Target),
            () => Math.Exp(Brent.FindRoot(dose => Math.Log(GasOf(Math.Exp(dose), series) / run.Target), Math.Log(0.003), Math.Log(4), 1e-9)));
        Row("ball, 76 h, mean at the end", () => BallOurs()[^1], BallTheirs);
        Row("dose with its temperatures",
            () => YeastDoseModel.FreshPercent(Journey, Formula, Table, Materials),
            null);
    }

    private static void Row(string name, Func<double> ours, Func<double>? theirs)
    {
        var (value, milliseconds, kilobytes) = Timed(ours);
        var line = $"{name,-34} {Text(milliseconds),26} {kilobytes,8:0}";
        if (theirs is not null)
        {
            var (other, otherMilliseconds, otherKilobytes) = Timed(theirs);
            line += $" {Text(otherMilliseconds),26} {otherKilobytes,8:0} {otherMilliseconds[Runs / 2] / milliseconds[Runs / 2],7:0} {Math.Abs(other / value - 1),12:0.0e0}";
        }

        Console.WriteLine(line);
    }

    private static string Text(List<double> milliseconds) => $"{milliseconds[Runs / 2]:0.00} ({milliseconds[0]:0.00} to {milliseconds[^1]:0.00})";

    private static (double Value, List<double> Milliseconds, double Kilobytes) Timed(Func<double> work)
    {
        var value = work();
        var milliseconds = new List<double>();
        var allocated = GC.GetTotalAllocatedBytes(precise: true);
        for (var index = 0; index < Runs; index++)
        {
            var watch = Stopwatch.StartNew();
            value = work();
            milliseconds.Add(watch.Elapsed.TotalMilliseconds);
        }

        var kilobytes = (GC.GetTotalAllocatedBytes(precise: true) - allocated) / 1024.0 / Runs;
        milliseconds.Sort();
        return (value, milliseconds, kilobytes);
    }

    private static double GasOf(double yeastPercent, TemperatureSeries series)
    {
        var growth = new CardinalTemperatures(Table.Growth.LowestCelsius, Table.Growth.OptimumCelsius, Table.Growth.HighestCelsius);
        var gas = new CardinalTemperatures(Table.Gas.LowestCelsius, Table.Gas.OptimumCelsius, Table.Gas.HighestCelsius);
        var lag = Table.Growth.LagHours * growth.RateAt(Table.Growth.LagCelsius);
        var perHour = YeastDoseModel.SaltFactor(Formula.Salt, Table.SaltPerPoint) * Table.Gas.MillilitresPerHourPerGramFresh
            / gas.RateAt(Table.Gas.AtCelsius);
        return RungeKutta.FourthOrder(
            Vector<double>.Build.Dense([0, yeastPercent, 0]), 0, series.Hours, series.Celsius.Length,
            (hours, state) =>
            {
                var place = Math.Clamp(hours / series.StepHours, 0, series.Celsius.Length - 1);
                var index = Math.Min((int)place, series.Celsius.Length - 2);
                var celsius = series.Celsius[index] + (place - index) * (series.Celsius[index + 1] - series.Celsius[index]);
                var rate = growth.RateAt(celsius);
                var room = 1 - (state[1] - yeastPercent) / Table.Growth.MostGrowthPercentOfFlour;
                return Vector<double>.Build.Dense(
                [
                    rate,
                    state[0] < lag ? 0 : Table.Growth.RatePerHourAtOptimum * rate * state[1] * room,
                    perHour * gas.RateAt(celsius) * state[1],
                ]);
            })[^1][2];
    }

    private static System.Collections.Immutable.ImmutableArray<double> BallOurs() => BallHeat.Over(
        24, [new HeatPhase(Duration.FromHours(74), Journey.Ball, 4, 5), new HeatPhase(Duration.FromHours(2), Journey.Ball, 22, 5)], Dough()).MeanCelsius;

    private static ThermalProperties Dough() => FoodComposition.Of(Formula, Materials).At(22, Materials);

    /// <summary>As many shells, and steps as long as the explicit method bears.</summary>
    private static double BallTheirs()
    {
        const int shells = BallHeat.Shells;
        var (dough, sphere) = (Dough(), new DoughSphere(Journey.Ball, Dough()));
        var thickness = sphere.RadiusMetres / shells;
        var heat = Enumerable.Range(0, shells).Select(i => dough.DensityKgPerM3 * dough.HeatCapacityJPerKgK * 4 / 3 * Math.PI
            * (Math.Pow((i + 1) * thickness, 3) - Math.Pow(i * thickness, 3))).ToArray();
        var inward = Enumerable.Range(0, shells).Select(i => dough.ConductivityWPerMK * 4 * Math.PI * Math.Pow(i * thickness, 2) / thickness).ToArray();
        var surface = 1 / (thickness / 2 / (dough.ConductivityWPerMK * sphere.AreaM2) + 1 / (5 * sphere.AreaM2));

        var state = Vector<double>.Build.Dense(shells, 24);
        foreach (var (hours, place) in new[] { (74, 4.0), (2, 22.0) })
        {
            state = RungeKutta.FourthOrder(state, 0, hours * 3600.0, hours * 600, (_, celsius) =>
            {
                var change = Vector<double>.Build.Dense(shells);
                for (var i = 0; i < shells; i++)
                {
                    var outside = i + 1 < shells ? inward[i + 1] * (celsius[i + 1] - celsius[i]) : surface * (place - celsius[i]);
                    change[i] = (outside - (i > 0 ? inward[i] * (celsius[i] - celsius[i - 1]) : 0)) / heat[i];
                }

                return change;
            })[^1];
        }

        return heat.Zip(state, (capacity, celsius) => capacity * celsius).Sum() / heat.Sum();
    }
}
