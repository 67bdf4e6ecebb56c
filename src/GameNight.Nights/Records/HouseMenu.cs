using GameNight.Planning.Toppings;

namespace GameNight.Nights.Records;

/// <summary>How toppings go together in this house; what is null is as usual.</summary>
/// <param name="MostToppings">On one part of a pie, 0 to 5.</param>
/// <param name="Apart">Never on one part together.</param>
/// <param name="Named">Sets of toppings that have a name here, by name.</param>
/// <param name="Peel">Flour on the peel; null when nobody said.</param>
/// <param name="Oil">Oil that balls lie in; null when nobody said.</param>
/// <param name="SecondDough">For whoever must not have the main one; null where there is none.</param>
public sealed record HouseMenu(
    int? MostToppings = null, IReadOnlyList<ToppingPair>? Apart = null, IReadOnlyList<NamedToppings>? Named = null,
    PeelFlour? Peel = null, BoxOil? Oil = null, HouseSecondDough? SecondDough = null)
{
    public const int UsualMostToppings = 3;

    public static HouseMenu Usual { get; } = new();

    public bool IsUsual => this == Usual;

    /// <summary>Once, in whatever order the two are named.</summary>
    public HouseMenu KeepingApart(string first, string second) =>
        this with { Apart = [.. Without(first, second), new ToppingPair(first, second)] };

    public HouseMenu LettingMeet(string first, string second) => this with { Apart = OrNull([.. Without(first, second)]) };

    /// <summary>A name that is taken gets the new toppings.</summary>
    public HouseMenu Naming(NamedToppings named) => this with
    {
        Named = [.. (Named ?? []).Where(other => !IsCalled(other, named.Name)).Append(named).OrderBy(one => one.Name, StringComparer.OrdinalIgnoreCase)],
    };

    public HouseMenu Forgetting(string name) => this with { Named = OrNull([.. (Named ?? []).Where(other => !IsCalled(other, name))]) };

    public HouseMenu With(int mostToppings) => this with { MostToppings = mostToppings == UsualMostToppings ? null : mostToppings };

    private IEnumerable<ToppingPair> Without(string first, string second) => (Apart ?? []).Where(pair =>
        !(pair.FirstId == first && pair.SecondId == second) && !(pair.FirstId == second && pair.SecondId == first));

    private static bool IsCalled(NamedToppings one, string name) => string.Equals(one.Name, name.Trim(), StringComparison.OrdinalIgnoreCase);

    private static IReadOnlyList<T>? OrNull<T>(IReadOnlyList<T> list) => list.Count == 0 ? null : list;
}

/// <summary>A set of toppings with the name it has in this house. The name never leaves for a plan.</summary>
/// <param name="Name">1 to 40 characters, no two alike.</param>
/// <param name="ToppingIds">1 to 5 of the menu, each once.</param>
public sealed record NamedToppings(string Name, IReadOnlyList<string> ToppingIds)
{
    public const int LongestName = 40;

    public bool Is(Combination combination) => combination.ToppingIds.ToHashSet().SetEquals(ToppingIds);
}

/// <summary>A dough beside the main one, as its host calls and describes it. The name never leaves for a plan.</summary>
/// <param name="Name">1 to 40 characters.</param>
public sealed record HouseSecondDough(string Name, SecondDough Dough)
{
    public const int LongestName = 40;
}
