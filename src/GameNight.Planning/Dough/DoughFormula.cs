using GameNight.Planning.Quantities;

namespace GameNight.Planning.Dough;

/// <summary>
/// A dough in baker's percentages: each ingredient as a share of the flour mass, flour itself being 1. Yeast is not part of
/// the formula: its dose follows from the hours and temperatures of the night.
/// </summary>
/// <param name="HeldBackFlour">Share of the flour kept apart and worked in by feel, 0 to 0.5.</param>
/// <param name="Loss">Share of the dough that stays in the bowl and on the bench, 0 to 0.1.</param>
public sealed record DoughFormula(
    Share Water,
    Share Salt,
    Share Oil,
    Share Sugar,
    bool SugarIsHoney,
    YeastForm Yeast,
    Share HeldBackFlour,
    Share Loss)
{
    /// <summary>Mass of the whole dough per mass of flour, without yeast.</summary>
    public double TotalPerFlour => 1 + Water.Value + Salt.Value + Oil.Value + Sugar.Value;
}
