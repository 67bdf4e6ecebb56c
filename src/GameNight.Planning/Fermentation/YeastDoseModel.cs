using GameNight.Planning.Dough;
using GameNight.Planning.Quantities;
using NodaTime;

namespace GameNight.Planning.Fermentation;

/// <summary>What the dose depends on: where the dough is, how long, and how warm.</summary>
/// <param name="Fridge">Measured, or null: then what homes have is assumed.</param>
/// <param name="AltitudeMetres">0 to 5000.</param>
public sealed record DoughJourney(
    Celsius Mixed,
    Duration AtRoom,
    Duration InFridge,
    Duration Tempering,
    Celsius Room,
    Celsius? Fridge,
    double AltitudeMetres,
    Grams Ball,
    Grams Batch);

/// <summary>Solves the yeast dose that gives the wanted gas at the end of the dough's journey.</summary>
public static class YeastDoseModel
{
    /// <summary>Fresh yeast in % of flour: below this nothing can be weighed or predicted, above it bread tastes of it.</summary>
    private const double LeastPercent = 0.003;
    private const double MostPercent = 4;

    /// <summary>A journey with more hours than this in the fridge has the band of a cold dough.</summary>
    private const double ColdHours = 6;

    private const int Bisections = 50;

    /// <summary>Bisection that ends this close to a limit, as a fraction, has found none inside it.</summary>
    private const double AtTheEdge = 1e-6;

    public static YeastDose For(
        DoughJourney journey, DoughFormula formula, Grams flour, Share? byHand, FermentationTable table, DoughTable dough)
    {
        var fridge = journey.Fridge ?? new Celsius(table.Fridge.AssumedCelsius);
        var fresh = FreshPercent(journey, fridge, formula, table);
        var (lowFactor, highFactor) = Band(journey, fresh, formula, table);

        var perFresh = dough.Of(formula.Yeast).MassPerFresh;
        var proposed = new Share(fresh / 100 * perFresh);
        var share = Explained.Decide(byHand, proposed, Reasons(journey, fridge, table));
        var total = flour * share.Value;

        var isSensible = fresh is > LeastPercent * (1 + AtTheEdge) and < MostPercent * (1 - AtTheEdge);
        return new YeastDose(
            formula.Yeast,
            share,
            new Estimate<Grams>(total, total * (1 / lowFactor), total * highFactor),
            isSensible
                ? []
                : [new NoSensibleDose(new Share(fresh / 100), new Share(LeastPercent / 100), new Share(MostPercent / 100))]);
    }

    /// <summary>
    /// How the gas of a dough with that much yeast compares with what is wanted at the end of its journey: 1 is as wanted.
    /// </summary>
    public static double GasOfWanted(
        DoughJourney journey, DoughFormula formula, Share yeast, FermentationTable table, DoughTable dough)
    {
        var fridge = journey.Fridge ?? new Celsius(table.Fridge.AssumedCelsius);
        var fresh = yeast.Percent / dough.Of(formula.Yeast).MassPerFresh;
        var made = new FermentationModel(Profile(journey, fridge, table), table).From(fresh);
        return made.GasMillilitresPer100GramsFlour / Target(journey, formula, table);
    }

    /// <summary>Fresh yeast in % of flour that reaches the gas target, kept within the sensible range.</summary>
    internal static double FreshPercent(
        DoughJourney journey, Celsius fridge, DoughFormula formula, FermentationTable table)
    {
        var model = new FermentationModel(Profile(journey, fridge, table), table);
        return Solve(model, Target(journey, formula, table));
    }

    private static double Target(DoughJourney journey, DoughFormula formula, FermentationTable table) =>
        table.Target.MillilitresPer100GramsFlour
        * PressureFactor(journey.AltitudeMetres)
        / SaltFactor(formula.Salt, table.SaltPerPoint);

    /// <summary>Bisection on the logarithm: gas grows strictly with the dose.</summary>
    internal static double Solve(FermentationModel model, double targetMillilitres)
    {
        var (low, high) = (Math.Log(LeastPercent), Math.Log(MostPercent));
        for (var i = 0; i < Bisections; i++)
        {
            var middle = (low + high) / 2;
            if (model.From(Math.Exp(middle)).GasMillilitresPer100GramsFlour < targetMillilitres)
            {
                low = middle;
            }
            else
            {
                high = middle;
            }
        }

        return Math.Exp((low + high) / 2);
    }

    /// <summary>Air pressure over that at sea level (ISO 2533, troposphere).</summary>
    internal static double PressureFactor(double altitudeMetres) =>
        Math.Pow(1 - 2.25577e-5 * altitudeMetres, 5.25588);

    private static TemperatureProfile Profile(DoughJourney journey, Celsius fridge, FermentationTable table)
    {
        var inBox = TimeConstant(journey.Ball, table.Ball);
        return new TemperatureProfile(journey.Mixed.Value,
        [
            new DoughPhase(journey.AtRoom, journey.Room.Value, TimeConstant(journey.Batch, table.Ball)),
            new DoughPhase(journey.InFridge, fridge.Value, inBox),
            new DoughPhase(journey.Tempering, journey.Room.Value, inBox),
        ]);
    }

    private static Duration TimeConstant(Grams mass, BallRow ball) => TemperatureProfile.LumpTimeConstant(
        mass.Value / 1000, ball.DensityKgPerM3, ball.HeatCapacityJPerKgK, ball.BoxedCoefficientWPerM2K);

    private static double SaltFactor(Share salt, SaltRow row) => Math.Clamp(
        1 - row.Factor * (salt.Percent - row.ReferencePercent), row.Lowest, row.Highest);

    private static (double Low, double High) Band(
        DoughJourney journey, double fresh, DoughFormula formula, FermentationTable table)
    {
        var factor = BandFactor(journey, table);
        if (journey.Fridge is not null || journey.InFridge == Duration.Zero)
        {
            return (factor, factor);
        }

        var warm = FreshPercent(journey, new Celsius(table.Fridge.WarmCelsius), formula, table);
        var cold = FreshPercent(journey, new Celsius(table.Fridge.ColdCelsius), formula, table);
        return (factor * fresh / warm, factor * cold / fresh);
    }

    private static double BandFactor(DoughJourney journey, FermentationTable table) =>
        journey.InFridge.TotalHours > ColdHours ? table.BandFactor.Cold : table.BandFactor.Room;

    private static List<Reason> Reasons(DoughJourney journey, Celsius fridge, FermentationTable table)
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
            because.Add(new DoseForAltitude(journey.AltitudeMetres, PressureFactor(journey.AltitudeMetres)));
        }

        if (journey.InFridge.TotalHours > ColdHours)
        {
            because.Add(new ColdDoseIsUncertain(BandFactor(journey, table)));
        }

        return because;
    }
}
