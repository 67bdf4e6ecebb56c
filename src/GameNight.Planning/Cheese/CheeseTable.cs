using GameNight.Planning.Foods;
using GameNight.Planning.Quantities;
using GameNight.Planning.Reference;
using GameNight.Planning.Toppings;

namespace GameNight.Planning.Cheese;

/// <summary>A starting blend: shares of what lies on the pie.</summary>
public sealed record BlendRow(string Id, double LowMoisture, double Hard, double Fresh, double Drained, string Source)
{
    public CheeseBlend Blend => new(new Share(LowMoisture), new Share(Hard), new Share(Fresh), new Share(Drained));
}

/// <param name="Lost">Share of what is bought that stays in the grater and on the board.</param>
public sealed record CheeseRow(CheeseKind Kind, Food Food, double Lost, string Source);

public sealed record CheeseCueRow(CheeseCue Cue, string Source);

/// <summary>Share of water of an item that nobody said it of.</summary>
public sealed record AssumedWaterRow(MenuRole Role, double Share, double Low, double High, string Source);

/// <param name="Share">Of the water in a topping.</param>
public sealed record CookedFirstRow(double Share, string Source);

/// <summary>How much water the middle of a pie bears, and what is taken of items that nobody described.</summary>
public sealed record WaterLoadTable(
    double BoundGramsPerCm2, string Source, IReadOnlyList<AssumedWaterRow> Assumed, CookedFirstRow CookedFirstLoses)
{
    private readonly IReadOnlyDictionary<MenuRole, AssumedWaterRow> _assumed =
        ReferenceText.OneRowEach(CheeseTable.File, Assumed, row => row.Role);

    public AssumedWaterRow Of(MenuRole role) => _assumed[role];
}

/// <summary>Starting blends, what is lost on the way to the pie, and the water load.</summary>
public sealed record CheeseTable(
    string Note,
    IReadOnlyList<BlendRow> Blends,
    IReadOnlyList<CheeseRow> Kinds,
    ValidRange Drained,
    IReadOnlyList<CheeseCueRow> Cues,
    WaterLoadTable WaterLoad)
{
    internal const string File = "cheese.json";

    private readonly IReadOnlyDictionary<CheeseKind, CheeseRow> _kinds = ReferenceText.OneRowEach(File, Kinds, row => row.Kind);
    private readonly IReadOnlyDictionary<CheeseCue, CheeseCueRow> _cues = ReferenceText.OneRowEach(File, Cues, row => row.Cue);

    public CheeseRow Of(CheeseKind kind) => _kinds[kind];

    public CheeseCueRow Of(CheeseCue cue) => _cues[cue];
}
