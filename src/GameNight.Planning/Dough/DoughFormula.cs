using GameNight.Planning.Guests;
using GameNight.Planning.Quantities;

namespace GameNight.Planning.Dough;

/// <summary>
/// A dough in baker's percentages: each ingredient as a share of the flour mass, flour itself being 1. Yeast is not part of
/// the formula: its dose follows from the hours and temperatures of the night. Preferment and soaker move flour and water in
/// time and change none of the totals.
/// </summary>
/// <param name="Water">What is poured as water; the water in honey and further ingredients is on top of it.</param>
/// <param name="HeldBackFlour">Share of the flour kept apart and worked in by feel, 0 to 0.5.</param>
/// <param name="Loss">Share of the dough that stays in the bowl and on the bench, 0 to 0.1.</param>
/// <param name="Flours">The flours of a blend; null or none for one flour of which nothing is known.</param>
/// <param name="Kneader">What the hands found last time; null until a dough was kneaded.</param>
/// <param name="PartsLabel">What the labels of the parts with names of the host's own say, all together; null while nobody read them.</param>
public sealed record DoughFormula(
    Share Water,
    Share Salt,
    Share Oil,
    Share Sugar,
    bool SugarIsHoney,
    YeastForm Yeast,
    Share HeldBackFlour,
    Share Loss,
    IReadOnlyList<ExtraIngredient>? Extras = null,
    IReadOnlyList<FlourPart>? Flours = null,
    Preferment? Preferment = null,
    Soaker? Soaker = null,
    KneadersCorrection? Kneader = null,
    Composition? PartsLabel = null)
{
    /// <summary>Water in honey (food table: 17.1 g in 100 g, from memory).</summary>
    private const double HoneyWater = 0.17;

    /// <summary>Mass of the whole dough per mass of flour, without yeast.</summary>
    public double TotalPerFlour => 1 + Water.Value + Salt.Value + Oil.Value + Sugar.Value
        + (Extras?.Sum(extra => extra.OfFlour.Value) ?? 0);

    /// <summary>
    /// All water per flour: poured, in further ingredients and in honey. Oil is not water and not counted. This is what the
    /// dough feels like; <see cref="Water"/> is what is weighed.
    /// </summary>
    public Share EffectiveHydration => new(PouredPerFlour + (SugarIsHoney ? Sugar.Value * HoneyWater : 0));

    /// <summary>Water and the water of further ingredients per flour, without honey's: what the valid range is about.</summary>
    public double PouredPerFlour => Water.Value + (Extras?.Sum(extra => extra.OfFlour.Value * extra.Water.Value) ?? 0);

    /// <summary>Share of the flour that is in preferment and soaker.</summary>
    public double FlourAhead => (Preferment?.OfFlour.Value ?? 0) + (Soaker?.OfFlour.Value ?? 0);

    /// <summary>Water per all flour that is in preferment and soaker.</summary>
    public double WaterAhead =>
        (Preferment is { } preferment ? preferment.OfFlour.Value * preferment.WaterPerFlour.Value : 0)
        + (Soaker is { } soaker ? soaker.OfFlour.Value * soaker.WaterPerFlour.Value : 0);

    /// <summary>Parts by the host's own names, whose labels nobody has told the plan.</summary>
    public IReadOnlyList<string> UnlabelledParts => PartsLabel is null ? OwnParts : [];

    /// <summary>Parts by the host's own names: the plan knows what they bring only from the host.</summary>
    public IReadOnlyList<string> OwnParts =>
    [
        .. (Extras ?? []).Select(extra => extra.Name),
        .. (Flours ?? []).Select(flour => flour.Name),
        .. Soaker is { } soaker ? [soaker.Name] : Array.Empty<string>(),
    ];

    public FlourBlend? Blend => Flours is { Count: > 0 } ? FlourBlend.Of(Flours) : null;
}
