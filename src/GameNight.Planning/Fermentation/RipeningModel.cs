using GameNight.Planning.Dough;
using GameNight.Planning.Heat;
using GameNight.Planning.Quantities;
using NodaTime;

namespace GameNight.Planning.Fermentation;

/// <summary>Follows a dough with a known amount of yeast, and finds when it can be baked.</summary>
public static class RipeningModel
{
    /// <summary>Beyond it no dough is looked at: it is past its best by every rule.</summary>
    private static readonly Duration Furthest = Duration.FromDays(10);

    private static readonly Duration BetweenPoints = Duration.FromHours(1);

    /// <summary>Above 5 to 6 % of flour (baking texts, as reported on trade pages).</summary>
    private const double SugarLimit = 0.05;

    private const double EthanolGramsPerMole = 46.07;
    private const double EthanolGramsPerMillilitre = 0.789;
    private const double GasLitresPerMole = 24.465;

    /// <param name="mixAt">When water meets yeast.</param>
    /// <param name="yeast">As a share of flour, in the form the formula names.</param>
    /// <param name="worthwhile">Hours in the cold that the trade holds worth the wait.</param>
    /// <param name="readings">Of this dough, in any order; those before mixing do not count.</param>
    public static Ripening For(
        DoughJourney journey, DoughFormula formula, Share yeast, Instant mixAt, IReadOnlyList<DoughReading> readings,
        (Duration Shortest, Duration Longest) worthwhile, FermentationTable table, DoughTable dough, MaterialsTable materials)
    {
        var counted = readings.Where(reading => reading.At >= mixAt).OrderBy(reading => reading.At).ToList();
        var observed = Observed(journey, counted, mixAt);
        var fresh = yeast.Percent / dough.Of(formula.Yeast).MassPerFresh;
        var prior = CalibrationBelief.Prior(observed.Calibration ?? FermentationCalibration.None, table.BandFactor);
        var first = new DoughRun(observed, formula, prior.Expected, table, materials);
        var belief = counted.Where(reading => reading.Look is not null).Aggregate(
            prior, (so, reading) => so.After(first.With(so.Expected), fresh, reading.At - mixAt, reading.Look!.Value));

        var run = first.With(belief.Expected);
        var whole = run.Over(run.Temperatures.Whole(), 0);
        var end = whole.From(fresh, out var gas);
        var ofWanted = end.GasMillilitresPer100GramsFlour / run.Target;
        var looks = counted.Count(reading => reading.Look is not null);
        var band = BandOf(run, belief, fresh, isLookedAt: looks > 0);

        return new Ripening(
            WindowOf(run, fresh, mixAt, band, worthwhile.Longest),
            Course(run, gas, mixAt),
            ofWanted,
            band,
            Reasons(run, gas, formula, counted.Count, looks > 0 ? FactorOf(run, prior, fresh, end) : 1, worthwhile),
            looks > 0 ? belief.Expected : null);
    }

    /// <summary>
    /// By what factor the gas may be more or less, four times out of five; as gas goes nearly with the dose, so may the dose.
    /// A colder fridge makes less of the gas and so seems to make it surer, but the laws of gas in the cold differ too much for
    /// that: until somebody looked at the dough, a cold one keeps the band of its kind.
    /// </summary>
    internal static double BandOf(DoughRun run, CalibrationBelief belief, double fresh, bool isLookedAt)
    {
        var spread = Math.Exp(BandWidth.Deviations
            * Math.Sqrt(Math.Pow(belief.SpreadOf(run, fresh), 2) + Math.Pow(SpreadOfFridge(run, fresh), 2)));
        return !isLookedAt && run.Journey.IsCold ? Math.Max(spread, run.Table.BandFactor.ColdDose) : spread;
    }

    /// <summary>The journey as it turned out: its fridge and dough as measured.</summary>
    private static DoughJourney Observed(DoughJourney journey, IReadOnlyList<DoughReading> readings, Instant mixAt)
    {
        var fridge = readings.Where(reading => reading.Fridge is not null).Select(reading => reading.Fridge!.Value.Value).ToList();
        return journey with
        {
            Fridge = fridge.Count > 0 ? new Celsius(fridge.Average()) : journey.Fridge,
            Measured =
            [
                .. readings.Where(reading => reading.Dough is not null)
                    .Select(reading => new MeasuredDough(reading.At - mixAt, reading.Dough!.Value)),
            ],
        };
    }

    /// <summary>What a fridge that nobody measured adds: the logarithm of the gas between a warm and a cold home, as a deviation.</summary>
    private static double SpreadOfFridge(DoughRun run, double fresh)
    {
        var fridge = run.Table.Fridge;
        return run.Journey.Fridge is null && run.Journey.InFridge > Duration.Zero
            ? Math.Log(Gas(fridge.WarmCelsius) / Gas(fridge.ColdCelsius)) / (2 * BandWidth.Deviations)
            : 0;

        double Gas(double celsius)
        {
            var other = run.In(new Celsius(celsius));
            return other.Over(other.Temperatures.Whole(), 0).From(fresh).GasMillilitresPer100GramsFlour;
        }
    }

    private static ReadyWindow WindowOf(DoughRun run, double fresh, Instant mixAt, double band, Duration longestCold)
    {
        var (from, until) = run.ReadyRatios;
        var longest = run.LongestOut(Furthest);
        longest.Model.From(fresh, out var gas);
        var (best, byGas) = (At(1), At(until));

        // A fridge that is cold enough stops the gas but not what else goes on: the dough slackens all the same.
        Instant? byHours = run.Journey.InFridge > Duration.Zero
            ? mixAt + run.Journey.AtRoom + Duration.Max(longestCold, run.Journey.InFridge) + run.Journey.Tempering
            : null;
        var endsByHours = byHours is { } end && !(byGas <= end) && best <= end;
        var (ends, notAfter) = (endsByHours ? byHours : byGas, At(band));
        return new ReadyWindow(At(from), best, ends, At(1 / band), notAfter is { } late && late <= ends ? late : ends ?? notAfter, endsByHours);

        Instant? At(double ratio) => longest.Reaches(ratio * run.Target, gas, fresh) is { } minutes ? mixAt + Duration.FromMinutes(minutes) : null;
    }

    /// <summary>Each full hour, and the moments where the dough changes its place.</summary>
    private static IReadOnlyList<DoughState> Course(DoughRun run, double[] gas, Instant mixAt)
    {
        var celsius = run.Temperatures.Whole().Celsius;
        var hour = JourneyTemperatures.Minutes(BetweenPoints);
        var out1 = JourneyTemperatures.Minutes(run.Journey.AtRoom);
        var out2 = out1 + JourneyTemperatures.Minutes(run.Journey.InFridge);
        return
        [
            .. Enumerable.Range(0, celsius.Length)
                .Where(minute => minute % hour == 0 || minute == out1 || minute == out2 || minute == celsius.Length - 1)
                .Select(minute => run.State(mixAt + Duration.FromMinutes(minute), celsius[minute], gas[minute])),
        ];
    }

    private static double FactorOf(DoughRun run, CalibrationBelief prior, double fresh, Fermented end)
    {
        var before = run.With(prior.Expected);
        return end.GasMillilitresPer100GramsFlour
            / before.Over(before.Temperatures.Whole(), 0).From(fresh).GasMillilitresPer100GramsFlour;
    }

    /// <summary>One molecule of ethanol for each of CO2.</summary>
    private static double EthanolPercent(double gasMillilitres, DoughFormula formula)
    {
        var ethanol = gasMillilitres / 1000 / GasLitresPerMole * EthanolGramsPerMole / EthanolGramsPerMillilitre;
        return 100 * ethanol / (100 * formula.PouredPerFlour + ethanol);
    }

    private static List<Reason> Reasons(
        DoughRun run, double[] gas, DoughFormula formula, int readings, double factor,
        (Duration Shortest, Duration Longest) worthwhile)
    {
        var cold = run.Journey.InFridge;
        List<Reason> because = run.Journey.Fridge is null && cold > Duration.Zero
            ? [new FridgeAssumed(new Celsius(run.Table.Fridge.AssumedCelsius))]
            : [];
        if (cold > Duration.Zero && cold < worthwhile.Shortest)
        {
            because.Add(new ColdIsShort(cold, worthwhile.Shortest));
        }
        else if (cold > worthwhile.Longest)
        {
            because.Add(new ColdIsLong(cold, worthwhile.Longest));
        }

        var outAt = JourneyTemperatures.Minutes(run.Journey.AtRoom) + JourneyTemperatures.Minutes(cold);
        var celsius = run.Temperatures.UntilOut(cold).LastCelsius;
        if (cold > Duration.Zero && gas[outAt] > 0 && Math.Min(1, run.Dissolvable(celsius) / gas[outAt]) is > 0.5 and var dissolved)
        {
            because.Add(new RiseHiddenInTheCold(new Share(dissolved)));
        }

        if (formula.Sugar.Value > SugarLimit)
        {
            because.Add(new SugarSlowsYeast(formula.Sugar, new Share(SugarLimit)));
        }

        because.Add(new AlcoholInDough(EthanolPercent(gas[^1], formula), run.Table.Ethanol.MostPercentByVolume));
        if (readings > 0)
        {
            because.Add(new CourseFollowsReadings(readings, factor));
        }

        return because;
    }
}
