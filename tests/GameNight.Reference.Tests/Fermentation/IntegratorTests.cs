using GameNight.Planning.Dough;
using GameNight.Planning.Fermentation;
using GameNight.Planning.Quantities;
using GameNight.TestKit;
using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.OdeSolvers;
using MathNet.Numerics.RootFinding;
using NodaTime;

namespace GameNight.Reference.Tests.Fermentation;

/// <summary>
/// The dose against the same equations in a general-purpose library: growth and gas as one system of differential equations,
/// fourth-order Runge-Kutta, and Brent's method for the dose (MathNet.Numerics 5.0).
/// </summary>
public class IntegratorTests
{
    private const int Cases = 10;
    private const int StepsPerHour = 30;

    private static readonly FermentationTable Table = SharedFolder.Tables.Fermentation;

    public static TheoryData<int> Seeds => [.. Enumerable.Range(1, Cases)];

    [Theory]
    [MemberData(nameof(Seeds))]
    public void The_dose_is_that_of_a_general_integrator_and_root_finder(int seed)
    {
        var (journey, formula) = RandomDough(seed);
        var run = new DoughRun(journey, formula, FermentationCalibration.None, Table, SharedFolder.Tables.Materials);
        var series = run.Temperatures.Whole();
        var salt = YeastDoseModel.SaltFactor(formula.Salt, Table.SaltPerPoint);

        var theirs = Brent.FindRoot(
            logarithm => Math.Log(GasOf(Math.Exp(logarithm), series, salt) / run.Target), Math.Log(0.003), Math.Log(4), 1e-8);
        var ours = YeastDoseModel.FreshPercent(journey, formula, Table, SharedFolder.Tables.Materials);

        Assert.Equal(Math.Exp(theirs), ours, 0.002 * ours);
    }

    /// <summary>Ripening, yeast and gas side by side.</summary>
    private static double GasOf(double yeastPercent, TemperatureSeries series, double salt)
    {
        var growth = new CardinalTemperatures(Table.Growth.LowestCelsius, Table.Growth.OptimumCelsius, Table.Growth.HighestCelsius);
        var gas = new CardinalTemperatures(Table.Gas.LowestCelsius, Table.Gas.OptimumCelsius, Table.Gas.HighestCelsius);
        var lag = Table.Growth.LagHours * growth.RateAt(Table.Growth.LagCelsius);
        var perHour = salt * Table.Gas.MillilitresPerHourPerGramFresh / gas.RateAt(Table.Gas.AtCelsius);

        var steps = (int)(series.Hours * StepsPerHour);
        var states = RungeKutta.FourthOrder(
            Vector<double>.Build.Dense([0, yeastPercent, 0]), 0, series.Hours, steps + 1,
            (hours, state) =>
            {
                var celsius = At(series, hours);
                var room = 1 - (state[1] - yeastPercent) / Table.Growth.MostGrowthPercentOfFlour;
                return Vector<double>.Build.Dense(
                [
                    growth.RateAt(celsius),
                    state[0] < lag ? 0 : Table.Growth.RatePerHourAtOptimum * growth.RateAt(celsius) * state[1] * room,
                    perHour * gas.RateAt(celsius) * state[1],
                ]);
            });
        return states[^1][2];
    }

    private static double At(TemperatureSeries series, double hours)
    {
        var place = Math.Clamp(hours / series.StepHours, 0, series.Celsius.Length - 1);
        var index = Math.Min((int)place, series.Celsius.Length - 2);
        return series.Celsius[index] + (place - index) * (series.Celsius[index + 1] - series.Celsius[index]);
    }

    private static (DoughJourney Journey, DoughFormula Formula) RandomDough(int seed)
    {
        var random = new Random(seed);
        var journey = new DoughJourney(
            new Celsius(Between(20, 27)), Duration.FromMinutes(random.Next(60, 240)), Duration.FromMinutes(random.Next(40 * 60, 72 * 60)),
            Duration.FromMinutes(random.Next(90, 240)), new Celsius(Between(17, 27)), new Celsius(Between(2.5, 8)), Between(0, 2000),
            new Grams(Between(180, 400)), new Grams(Between(800, 3000)));
        var formula = new DoughFormula(
            new Share(Between(0.55, 0.75)), new Share(Between(0.015, 0.032)), new Share(0.02), new Share(0), false, YeastForm.Fresh,
            new Share(0), new Share(0.02));
        return (journey, formula);

        double Between(double low, double high) => low + random.NextDouble() * (high - low);
    }
}
