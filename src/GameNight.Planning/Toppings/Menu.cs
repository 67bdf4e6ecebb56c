using GameNight.Planning.Dough;
using GameNight.Planning.Guests;

namespace GameNight.Planning.Toppings;

/// <summary>What the kitchen offers on the night, and the dough and peel flour that go under every sector.</summary>
/// <param name="Items">At least one base and one cheese ("none" is an item without mass); toppings may be none.</param>
/// <param name="MostToppings">How many toppings one sector may carry, 0 to 5.</param>
/// <param name="Apart">Pairs of toppings that never go on one sector together.</param>
/// <param name="Dough">What the dough itself holds, peel flour and box oil included.</param>
/// <param name="Named">Sets of toppings that have a name in this house: always on the list that a split picks from.</param>
/// <param name="SecondDough">For whoever must not have the main one; null where there is none.</param>
public sealed record Menu(
    IReadOnlyList<MenuItem> Items, int MostToppings, Composition Dough, IReadOnlyList<ToppingPair>? Apart = null,
    IReadOnlyList<ToppingSet>? Named = null, SecondDough? SecondDough = null)
{
    public IEnumerable<MenuItem> Of(MenuRole role) => Items.Where(item => item.Role == role);
}

/// <summary>A dough of its own bowl, board and pan.</summary>
/// <param name="Composition">What it holds, with whatever of its own it lies on: the main dough's peel flour and box oil are not under it.</param>
public sealed record SecondDough(Composition Composition, SecondDoughRecipe Recipe);

/// <summary>Two toppings by id, in either order.</summary>
public sealed record ToppingPair(string FirstId, string SecondId);

/// <summary>Toppings by id that go on one part together, each once; their order says nothing.</summary>
public sealed record ToppingSet(IReadOnlyList<string> ToppingIds);
