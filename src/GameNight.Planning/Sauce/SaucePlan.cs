using GameNight.Planning.Foods;
using GameNight.Planning.Quantities;
using NodaTime;

namespace GameNight.Planning.Sauce;

public sealed record TinCount(Grams Size, int Count);

/// <summary>What to weigh of a part, all pots together.</summary>
/// <param name="Teaspoons">Level US teaspoons of it; null where nobody spoons it.</param>
/// <param name="Pieces">Cloves or bulbs of it; null where it has no pieces.</param>
public sealed record SauceShare(Food Food, Grams Grams, double? Teaspoons, double? Pieces);

/// <summary>What is left over, and how long it keeps (from memory: the food authority leads).</summary>
/// <param name="FridgeUntil">Null until it is known when the sauce is made.</param>
public sealed record SauceSurplus(
    Grams Mass, int FridgeDays, int FreezerDays, Instant? FridgeUntil = null, Instant? FreezerUntil = null);

/// <summary>All sauce of the night from whole tins: what to weigh, what simmers off, and the salt for what is left.</summary>
/// <param name="Needed">What the pies take.</param>
/// <param name="Weigh">Tomato first; salt is not among it.</param>
/// <param name="Pots">The sauce is made in so many pots, one after the other, each filled alike.</param>
/// <param name="Evaporated">From all pots.</param>
/// <param name="Salt">To add at the end, all pots together.</param>
/// <param name="Finished">Salt included: what was weighed in, less what evaporated.</param>
/// <param name="Water">Share of the finished sauce that is water.</param>
/// <param name="Simmer">Of each pot, expected; the band is that of the evaporation rate.</param>
/// <param name="Time">From opening the tins until the last pot is seasoned.</param>
/// <param name="AlcoholPerPie">What is left of the wine's alcohol on a pie.</param>
public sealed record SaucePlan(
    Grams Needed,
    IReadOnlyList<TinCount> Tins,
    IReadOnlyList<SauceShare> Weigh,
    int Pots,
    Grams Evaporated,
    Grams Salt,
    Grams Finished,
    Share Water,
    Estimate<Duration> Simmer,
    Duration Time,
    Grams AlcoholPerPie,
    SauceSurplus Surplus,
    IReadOnlyList<SauceCue> Cues,
    IReadOnlyList<Reason> Because,
    IReadOnlyList<Conflict> Conflicts)
{
    /// <param name="needed">Finished sauce that the pies take, above 0.</param>
    /// <param name="perPie">Finished sauce on one pie.</param>
    /// <param name="tins">Sizes that can be bought; each is used as whole tins.</param>
    /// <exception cref="ArgumentOutOfRangeException">A range of the table does not hold; the message gives it with its reason.</exception>
    public static SaucePlan For(
        SauceFormula formula, Grams needed, Grams perPie, IReadOnlyList<Grams> tins, SauceTable table, FoodTable foods)
    {
        SauceLimits.Demand(formula, tins, table);
        if (!(needed > default(Grams)))
        {
            throw new ArgumentOutOfRangeException(nameof(needed), needed, "Sauce is planned for more than 0 g.");
        }

        var (count, pot) = WholeTins.Covering(tins, tomato => new SimmeredSauce(formula, tomato, table, foods), needed);
        var retained = table.Retention.After(pot.Simmer);
        var alcoholPerPie = pot.AlcoholWeighedIn * retained.Value * (perPie / pot.Finished);
        return new SaucePlan(
            needed,
            count,
            [.. pot.Parts.Select(part => Share(part, foods.Of(part.Food)))],
            pot.Pots,
            pot.Evaporated,
            pot.Salt,
            pot.Finished,
            pot.WaterShare,
            SimmerBand(pot.Simmer, table.Pot),
            Duration.FromMinutes(table.Work.PrepareMinutes)
                + (Duration.FromMinutes(table.Work.SoftenMinutes) + pot.Simmer) * pot.Pots,
            alcoholPerPie,
            new SauceSurplus(
                new Grams(Math.Max(0, pot.Finished.Value - needed.Value)),
                table.Of(formula.Keeps).FridgeDays,
                table.Of(formula.Keeps).FreezerDays),
            [.. CuesOf(formula, pot)],
            [.. ReasonsOf(formula, pot, retained, alcoholPerPie)],
            [.. ConflictsOf(formula, pot)]);
    }

    /// <summary>The same sauce with the dates of what is left over.</summary>
    public SaucePlan MadeAt(Instant ready) => this with
    {
        Surplus = Surplus with
        {
            FridgeUntil = ready + Duration.FromDays(Surplus.FridgeDays),
            FreezerUntil = ready + Duration.FromDays(Surplus.FreezerDays),
        },
    };

    private static SauceShare Share(FoodPart part, FoodRow row) => new(
        part.Food, part.Grams, part.Grams.Value / row.GramsPerTeaspoon, part.Grams.Value / row.GramsPerPiece);

    /// <summary>A stove that boils off more gets there sooner: the band of the rate turned over.</summary>
    private static Estimate<Duration> SimmerBand(Duration simmer, PotRow row) => new(
        simmer,
        simmer * Math.Min(1, row.EvaporationGramsPerMinutePerCm2 / row.High),
        simmer * Math.Max(1, row.EvaporationGramsPerMinutePerCm2 / row.Low));

    private static IEnumerable<SauceCue> CuesOf(SauceFormula formula, SimmeredSauce pot)
    {
        yield return SauceCue.TinsOverUnripe;
        if (formula.Parts.Any(part => part.Food == Food.Garlic && part.Grams > default(Grams)))
        {
            yield return SauceCue.GarlicGently;
        }

        if (pot.Evaporated > default(Grams))
        {
            yield return SauceCue.WeighThePot;
        }

        if (pot.Salt > default(Grams))
        {
            yield return SauceCue.SaltLast;
        }
    }

    private static IEnumerable<Reason> ReasonsOf(SauceFormula formula, SimmeredSauce pot, Share retained, Grams alcoholPerPie)
    {
        yield return new SimmeredOff(formula.Pot.EvaporationGramsPerMinute, pot.Evaporated, pot.Pots);
        yield return new SaltInTheTins(pot.SaltWeighedIn, formula.TinSalt is not null);
        if (pot.AlcoholWeighedIn > default(Grams))
        {
            yield return new AlcoholLeft(retained, alcoholPerPie);
        }
    }

    private static IEnumerable<Conflict> ConflictsOf(SauceFormula formula, SimmeredSauce pot)
    {
        if (pot.Simmer < formula.Simmer)
        {
            yield return new SimmersTooThick(formula.Simmer, pot.Simmer);
        }

        if (pot.RawPerPot > formula.Pot.Holds)
        {
            yield return new PotTooSmall(pot.RawPerPot, formula.Pot.Holds, pot.Pots);
        }

        if (pot.Salt == default && formula.Salt > default(Share))
        {
            yield return new SaltierThanAsked(formula.Salt, pot.SaltShare);
        }
    }
}
