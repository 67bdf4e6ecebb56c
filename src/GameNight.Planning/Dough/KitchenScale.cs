using GameNight.Planning.Quantities;

namespace GameNight.Planning.Dough;

/// <summary>What the scales of a kitchen can tell apart.</summary>
/// <param name="Coarse">Step of the scale for flour and water: usually 1 g.</param>
/// <param name="Fine">Step of the scale for yeast and salt: 0.1 or 0.01 g, or the same as the coarse one.</param>
public sealed record KitchenScale(Grams Coarse, Grams Fine);
