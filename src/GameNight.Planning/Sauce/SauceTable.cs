using GameNight.Planning.Foods;
using GameNight.Planning.Quantities;
using GameNight.Planning.Reference;
using NodaTime;

namespace GameNight.Planning.Sauce;

public sealed record PartRow(Food Food, double Grams);

/// <summary>A starting formula. Salt is a share of the finished sauce.</summary>
public sealed record SauceRow(
    string Id,
    TomatoTin Tin,
    double TomatoGrams,
    IReadOnlyList<PartRow> Parts,
    double Salt,
    double SimmerMinutes,
    SauceKeeps Keeps,
    string Source);

public sealed record TinRow(double Grams, double DrainedGrams, string Source);

public sealed record PotRow(
    double DiameterCentimetres,
    double HoldsGrams,
    double EvaporationGramsPerMinutePerCm2,
    double Low,
    double High,
    int MostPots,
    string Source);

public sealed record ThickestRow(double WaterShare, string Source);

public sealed record SauceWorkRow(double PrepareMinutes, double SoftenMinutes, string Source);

public sealed record KeepingRow(SauceKeeps Keeps, int FridgeDays, int FreezerDays, string Source);

public sealed record SauceCueRow(SauceCue Cue, string Source);

public sealed record SauceRanges(
    ValidRange TomatoGrams,
    ValidRange Salt,
    ValidRange TinSalt,
    ValidRange SimmerMinutes,
    ValidRange PotDiameterCentimetres,
    ValidRange PotHoldsGrams,
    ValidRange EvaporationGramsPerMinutePerCm2,
    ValidRange TinGrams);

/// <summary>The most of a food in a sauce, in grams per gram of tomato.</summary>
public sealed record PartRangeRow(Food Food, double MostPerTomato, string Source);

/// <summary>Starting formulas, tins, pot, keeping, alcohol and valid ranges.</summary>
public sealed record SauceTable(
    string Note,
    IReadOnlyList<SauceRow> Formulas,
    IReadOnlyList<TinRow> Tins,
    PotRow Pot,
    ThickestRow Thickest,
    SauceWorkRow Work,
    IReadOnlyList<KeepingRow> Keeping,
    IReadOnlyList<AlcoholRow> Alcohol,
    IReadOnlyList<SauceCueRow> Cues,
    SauceRanges Ranges,
    IReadOnlyList<PartRangeRow> Parts)
{
    internal const string File = "sauces.json";

    private readonly IReadOnlyDictionary<SauceKeeps, KeepingRow> _keeping =
        ReferenceText.OneRowEach(File, Keeping, row => row.Keeps);

    private readonly IReadOnlyDictionary<SauceCue, SauceCueRow> _cues = ReferenceText.OneRowEach(File, Cues, row => row.Cue);

    public AlcoholRetention Retention { get; } = new(File, Alcohol);

    public IReadOnlyList<Grams> TinSizes => [.. Tins.Select(tin => new Grams(tin.Grams))];

    public KeepingRow Of(SauceKeeps keeps) => _keeping[keeps];

    public SauceCueRow Of(SauceCue cue) => _cues[cue];

    /// <summary>A starting formula in the table's pot.</summary>
    public SauceFormula Formula(SauceRow row) => new(
        row.Tin,
        new Grams(row.TomatoGrams),
        [.. row.Parts.Select(part => new FoodPart(part.Food, new Grams(part.Grams)))],
        new Share(row.Salt),
        Duration.FromMinutes(row.SimmerMinutes),
        new SaucePot(new Centimetres(Pot.DiameterCentimetres), new Grams(Pot.HoldsGrams), Pot.EvaporationGramsPerMinutePerCm2),
        row.Keeps);
}
