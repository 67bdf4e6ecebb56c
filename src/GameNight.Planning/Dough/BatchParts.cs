using GameNight.Planning.Quantities;

namespace GameNight.Planning.Dough;

/// <summary>One thing to weigh that goes by a name of the host's own.</summary>
public sealed record NamedMass(string Name, Grams Mass);

/// <summary>What of a batch goes into its preferment or soaker, ahead of the dough.</summary>
public sealed record BatchPortion(string Name, Grams Flour, Grams Water, Grams Yeast)
{
    public Grams Total => Flour + Water + Yeast;
}
