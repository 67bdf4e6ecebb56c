using GameNight.Planning.Quantities;
using NodaTime;

namespace GameNight.Planning.Dough;

/// <summary>Any further ingredient of a dough in baker's percent. Its name is the host's own; the models do not read it.</summary>
/// <param name="OfFlour">Its mass per mass of flour.</param>
/// <param name="Water">How much of it is water, 0 to 1: milk 0.88, egg 0.75 (food tables, from memory).</param>
public sealed record ExtraIngredient(string Name, Share OfFlour, Share Water);

/// <summary>One flour of a blend.</summary>
/// <param name="OfFlour">Share of all flour; those of a blend add up to 1.</param>
/// <param name="Absorption">Water it takes per flour of 14 % moisture, as a mill states it.</param>
/// <param name="Protein">As stated on the label, 0 to 1.</param>
public sealed record FlourPart(string Name, Share OfFlour, Share Absorption, Share Protein);

/// <summary>A part of the dough that ferments ahead. Its flour and water are part of the formula's, not added to them.</summary>
/// <param name="OfFlour">Share of all flour that is in it.</param>
/// <param name="WaterPerFlour">Its water per its own flour: 1 for a batter, about 0.45 for a stiff one.</param>
/// <param name="Before">How long before the dough it is mixed.</param>
/// <param name="OfYeast">Share of all yeast that is in it, 0 to 1.</param>
public sealed record Preferment(string Name, Share OfFlour, Share WaterPerFlour, Duration Before, Share OfYeast);

/// <summary>Meal, grain or seeds that are soaked ahead, counted as flour; their water is part of the formula's.</summary>
/// <param name="OfFlour">Share of all flour that is in it.</param>
/// <param name="WaterPerFlour">Water per what is soaked.</param>
public sealed record Soaker(string Name, Share OfFlour, Share WaterPerFlour);

/// <summary>What several flours are together: means weighted by their shares.</summary>
/// <param name="Absorption">Water per flour of 14 % moisture.</param>
public sealed record FlourBlend(Share Absorption, Share Protein)
{
    /// <exception cref="ArgumentOutOfRangeException">No part has any flour.</exception>
    public static FlourBlend Of(IReadOnlyList<FlourPart> parts)
    {
        var all = parts.Sum(part => part.OfFlour.Value);
        if (!(all > 0))
        {
            throw new ArgumentOutOfRangeException(nameof(parts), all, "The parts of a blend add up to 1 (more than 0).");
        }

        return new FlourBlend(Mean(part => part.Absorption), Mean(part => part.Protein));

        Share Mean(Func<FlourPart, Share> of) => new(parts.Sum(part => part.OfFlour.Value * of(part).Value) / all);
    }
}
