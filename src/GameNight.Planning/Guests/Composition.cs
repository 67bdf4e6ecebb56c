namespace GameNight.Planning.Guests;

/// <summary>
/// What the label says. "Contains", "may contain" and "unknown" are three things, and none of them is free of the
/// allergen; a diet that is not listed is not kept.
/// </summary>
public sealed record Composition(
    IReadOnlyList<Allergen> Contains,
    IReadOnlyList<Allergen> MayContain,
    IReadOnlyList<Allergen> Unknown,
    IReadOnlyList<Diet> Suits)
{
    private static readonly Diet[] EveryDiet = Enum.GetValues<Diet>();

    /// <summary>No listed allergen and every diet: for "no sauce" and "no cheese".</summary>
    public static Composition Nothing { get; } = new([], [], [], EveryDiet);

    /// <summary>Both together: whatever either brings or may bring, and only the diets that both keep.</summary>
    public Composition With(Composition other)
    {
        IReadOnlyList<Allergen> contains = [.. Contains.Union(other.Contains).Order()];
        return new Composition(
            contains,
            [.. MayContain.Union(other.MayContain).Except(contains).Order()],
            [.. Unknown.Union(other.Unknown).Except(contains).Order()],
            [.. Suits.Intersect(other.Suits)]);
    }

    /// <summary>True when nothing on the label speaks against this eater: no kept-out allergen is contained, possible or unknown, and every diet is kept.</summary>
    public bool IsPermittedFor(DietaryNeeds needs) =>
        needs.Diets.All(Suits.Contains) && !needs.Avoids.Any(IsOrMayBe) && !needs.MustNotTouch.Any(IsOrMayBe);

    /// <summary>True unless the label is known and does not name the allergen at all.</summary>
    public bool IsOrMayBe(Allergen allergen) =>
        Contains.Contains(allergen) || MayContain.Contains(allergen) || Unknown.Contains(allergen);
}
