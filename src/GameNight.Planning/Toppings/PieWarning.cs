using GameNight.Planning.Dough;
using GameNight.Planning.Guests;
using GameNight.Planning.Quantities;

namespace GameNight.Planning.Toppings;

/// <summary>What must not touch what while a pie is topped, baked and cut.</summary>
public abstract record PieWarning;

/// <summary>An own pie: baked first, on its own board, with its own cutter.</summary>
/// <param name="MustNotTouch">What must not touch any part of it.</param>
public sealed record KeptApart(IReadOnlyList<string> EaterIds, IReadOnlyList<Allergen> MustNotTouch) : PieWarning;

/// <summary>A pie of the second dough: mixed first, with its own bowl and board, and laid on what is its own.</summary>
/// <param name="PaperUpTo">What the maker of its baking paper allows; null where it lies on none.</param>
public sealed record OnAnotherDough(SecondDoughOn On, Celsius? PaperUpTo) : PieWarning;

/// <summary>One part goes to people who must not have what is, or may be, on another part of the pie.</summary>
/// <param name="ItemIds">Of the menu, that are kept off their slices as such.</param>
public sealed record PartKeptClear(
    string Letter, string OtherLetter, IReadOnlyList<Allergen> Allergens, IReadOnlyList<Diet> Diets, IReadOnlyList<string> ItemIds) : PieWarning;

/// <summary>Something on this pie must not touch these own pies, nor their board and cutter.</summary>
public sealed record KeptFromOwnPies(IReadOnlyList<int> PieNumbers, IReadOnlyList<Allergen> Allergens) : PieWarning;
