namespace GameNight.Planning.Guests;

/// <summary>
/// What an eater must not have: hard rules, never wishes. <see cref="Avoids"/> keeps an allergen out of the eater's slices;
/// <see cref="MustNotTouch"/> also keeps it off the whole pie, which becomes an own pie.
/// </summary>
/// <param name="KeptOff">Menu items by id that are kept off the eater's slices, whatever their label says; null for none.</param>
public sealed record DietaryNeeds(
    IReadOnlyList<Diet> Diets,
    IReadOnlyList<Allergen> Avoids,
    IReadOnlyList<Allergen> MustNotTouch,
    IReadOnlyList<string>? KeptOff = null)
{
    public static DietaryNeeds None { get; } = new([], [], []);

    /// <summary>What either says; what must not touch need not be avoided beside it.</summary>
    public static DietaryNeeds Both(DietaryNeeds one, DietaryNeeds other)
    {
        Allergen[] untouched = [.. one.MustNotTouch.Union(other.MustNotTouch)];
        return new DietaryNeeds([.. one.Diets.Union(other.Diets)], [.. one.Avoids.Union(other.Avoids).Except(untouched)], untouched);
    }

    public bool NeedsOwnPie => MustNotTouch.Count > 0;
    public bool IsNone => Diets.Count == 0 && Avoids.Count == 0 && MustNotTouch.Count == 0 && KeptOff is not { Count: > 0 };

    /// <summary>Both hold.</summary>
    public DietaryNeeds With(DietaryNeeds other) => other.IsNone ? this : new(
        [.. Diets.Union(other.Diets).Order()],
        [.. Avoids.Union(other.Avoids).Order()],
        [.. MustNotTouch.Union(other.MustNotTouch).Order()],
        (KeptOff ?? []).Union(other.KeptOff ?? []).Order(StringComparer.Ordinal).ToList() is { Count: > 0 } items ? items : null);

    /// <summary>The same text for the same must-nots, however they are listed.</summary>
    public string Key => string.Join(
        '|', Sorted(Diets), Sorted(Avoids), Sorted(MustNotTouch), string.Join(',', (KeptOff ?? []).Distinct().Order(StringComparer.Ordinal)));

    private static string Sorted<T>(IEnumerable<T> values)
        where T : struct, Enum => string.Join(',', values.Distinct().Order().Select(value => value.ToString()));
}
