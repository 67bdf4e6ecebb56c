using GameNight.Planning.Dough;
using GameNight.Planning.Heat;
using GameNight.Planning.Quantities;
using NodaTime;

namespace GameNight.Planning.Fermentation;

/// <summary>What the dose depends on: where the dough is, how long, and how warm.</summary>
/// <param name="Fridge">Measured, or null: then what homes have is assumed.</param>
/// <param name="AltitudeMetres">0 to 5000.</param>
/// <param name="Calibration">How this kitchen gasses against the model, or null for as the model says.</param>
/// <param name="Measured">Temperatures of the dough that stand from their minute on.</param>
public sealed record DoughJourney(
    Celsius Mixed,
    Duration AtRoom,
    Duration InFridge,
    Duration Tempering,
    Celsius Room,
    Celsius? Fridge,
    double AltitudeMetres,
    Grams Ball,
    Grams Batch,
    FermentationCalibration? Calibration = null,
    IReadOnlyList<MeasuredDough>? Measured = null)
{
    /// <summary>With more hours than this in the fridge a dough is a cold one.</summary>
    private static readonly Duration ShortOfCold = Duration.FromHours(6);

    /// <summary>Its dose has the band of a cold dough.</summary>
    public bool IsCold => InFridge > ShortOfCold;
}

/// <summary>The dough's temperature as measured, so long after mixing.</summary>
public sealed record MeasuredDough(Duration SinceMixing, Celsius Dough);

/// <summary>Solves the yeast dose that gives the wanted gas at the end of the dough's journey.</summary>
public static class YeastDoseModel
{
    /// <summary>Fresh yeast in % of flour: below this nothing can be weighed or predicted, above it bread tastes of it.</summary>
    private const double LeastPercent = 0.003;
    private const double MostPercent = 4;

    /// <summary>Of the logarithm of the dose, or of its gas: far below what the model is good to.</summary>
    private const double Closeness = 1e-9;

    /// <summary>A dose this close to a limit, as a fraction, is none that lies inside it.</summary>
    private const double AtTheEdge = 1e-6;

    public static YeastDose For(
        DoughJourney journey, DoughFormula formula, Grams flour, Share? byHand, FermentationTable table, DoughTable dough, MaterialsTable materials)
    {
        var fridge = journey.Fridge ?? new Celsius(table.Fridge.AssumedCelsius);
        var fresh = FreshPercent(journey with { Fridge = fridge }, formula, table, materials);
        var band = RipeningModel.BandOf(
            Run(journey, formula, table, materials),
            CalibrationBelief.Prior(journey.Calibration ?? FermentationCalibration.None, table.BandFactor),
            fresh,
            isLookedAt: false);

        var perFresh = dough.Of(formula.Yeast).MassPerFresh;
        var proposed = new Share(fresh / 100 * perFresh);
        var share = Explained.Decide(byHand, proposed, Reasons(journey, fridge, band));
        var total = flour * share.Value;

        var isSensible = fresh is > LeastPercent * (1 + AtTheEdge) and < MostPercent * (1 - AtTheEdge);
        return new YeastDose(
            formula.Yeast,
            share,
            new Estimate<Grams>(total, total * (1 / band), total * band),
            isSensible
                ? []
                : [new NoSensibleDose(new Share(fresh / 100), new Share(LeastPercent / 100), new Share(MostPercent / 100))]);
    }

    /// <summary>
    /// How the gas of a dough with that much yeast compares with what is wanted at the end of its journey: 1 is as wanted.
    /// </summary>
    public static double GasOfWanted(
        DoughJourney journey, DoughFormula formula, Share yeast, FermentationTable table, DoughTable dough, MaterialsTable materials)
    {
        var run = Run(journey, formula, table, materials);
        var fresh = yeast.Percent / dough.Of(formula.Yeast).MassPerFresh;
        return run.Over(run.Temperatures.Whole(), 0).From(fresh).GasMillilitresPer100GramsFlour / run.Target;
    }

    /// <summary>Fresh yeast in % of flour that reaches the gas target, kept within the sensible range.</summary>
    internal static double FreshPercent(
        DoughJourney journey, DoughFormula formula, FermentationTable table, MaterialsTable materials)
    {
        var run = Run(journey, formula, table, materials);
        return Solve(run.Over(run.Temperatures.Whole(), 0), run.Target);
    }

    /// <summary>
    /// The dose whose gas is the target. Gas grows strictly with the dose and nearly as its power, so a secant of the logarithms
    /// that keeps its bracket (the Illinois rule) ends after a few passes.
    /// </summary>
    internal static double Solve(FermentationModel model, double targetMillilitres)
    {
        var (low, high) = (Math.Log(LeastPercent), Math.Log(MostPercent));
        var (below, above) = (Excess(low), Excess(high));
        if (below >= 0 || above <= 0)
        {
            return below >= 0 ? LeastPercent : MostPercent;
        }

        var keptLow = 0;
        while (high - low > Closeness)
        {
            var middle = (low * above - high * below) / (above - below);
            var excess = Excess(middle);
            if (Math.Abs(excess) < Closeness)
            {
                return Math.Exp(middle);
            }

            if (excess < 0)
            {
                (low, below, keptLow) = (middle, excess, Math.Min(keptLow, 0) - 1);
                above = keptLow < -1 ? above / 2 : above;
            }
            else
            {
                (high, above, keptLow) = (middle, excess, Math.Max(keptLow, 0) + 1);
                below = keptLow > 1 ? below / 2 : below;
            }
        }

        return Math.Exp((low + high) / 2);

        double Excess(double logarithm) => Math.Log(model.From(Math.Exp(logarithm)).GasMillilitresPer100GramsFlour / targetMillilitres);
    }

    /// <summary>Salt slows all gassing, against the salt that the table's gas was measured with.</summary>
    internal static double SaltFactor(Share salt, SaltRow row) => Math.Clamp(
        1 - row.Factor * (salt.Percent - row.ReferencePercent), row.Lowest, row.Highest);

    private static DoughRun Run(
        DoughJourney journey, DoughFormula formula, FermentationTable table, MaterialsTable materials) =>
        new(journey, formula, journey.Calibration ?? FermentationCalibration.None, table, materials);

    private static List<Reason> Reasons(DoughJourney journey, Celsius fridge, double band)
    {
        List<Reason> because =
        [
            new DoseForHours(journey.AtRoom, journey.InFridge, journey.Tempering, journey.Room, fridge),
        ];
        if (journey.Fridge is null)
        {
            because.Add(new FridgeAssumed(fridge));
        }

        if (journey.AltitudeMetres > 0)
        {
            because.Add(new DoseForAltitude(journey.AltitudeMetres, new Altitude(journey.AltitudeMetres).PressureFactor));
        }

        if (journey.IsCold)
        {
            because.Add(new ColdDoseIsUncertain(band));
        }

        return because;
    }
}
