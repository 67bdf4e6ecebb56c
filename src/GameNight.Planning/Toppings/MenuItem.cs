using GameNight.Planning.Guests;
using GameNight.Planning.Quantities;

namespace GameNight.Planning.Toppings;

/// <summary>Where an item goes on a sector: every sector has one base, one cheese (or none) and some toppings.</summary>
public enum MenuRole
{
    Base,
    Cheese,
    Topping,
}

/// <summary>Something that goes on a pie. <c>GramsPerCm2</c> is the mass on a square centimetre of topped area, 0 to 1.</summary>
/// <param name="WaterShare">
/// Share of its mass that is water as it goes on the pie (cooked or drained first: what is left), 0 to 1; null where nobody
/// said.
/// </param>
/// <param name="OnHand">All there is of it for the night; null where as much as it takes will be bought.</param>
/// <param name="Pack">How much a pack holds; null where nobody said.</param>
public sealed record MenuItem(
    string Id, MenuRole Role, double GramsPerCm2, Composition Composition, Share? WaterShare = null, Grams? OnHand = null, Grams? Pack = null)
{
    /// <summary>Nothing on the label speaks against it, and the item itself is not kept off their slices.</summary>
    public bool IsPermittedFor(DietaryNeeds needs) => Composition.IsPermittedFor(needs) && needs.KeptOff?.Contains(Id) != true;
}
