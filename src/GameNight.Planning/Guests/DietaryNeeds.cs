namespace GameNight.Planning.Guests;

/// <summary>
/// What an eater must not have: hard rules, never wishes. <see cref="Avoids"/> keeps an allergen out of the eater's slices;
/// <see cref="MustNotTouch"/> also keeps it off the whole pie, which becomes an own pie.
/// </summary>
public sealed record DietaryNeeds(
    IReadOnlyList<Diet> Diets,
    IReadOnlyList<Allergen> Avoids,
    IReadOnlyList<Allergen> MustNotTouch)
{
    public static DietaryNeeds None { get; } = new([], [], []);

    /// <summary>What either says; what must not touch need not be avoided beside it.</summary>
    public static DietaryNeeds Both(DietaryNeeds one, DietaryNeeds other)
    {
        Allergen[] untouched = [.. one.MustNotTouch.Union(other.MustNotTouch)];
        return new DietaryNeeds([.. one.Diets.Union(other.Diets)], [.. one.Avoids.Union(other.Avoids).Except(untouched)], untouched);
    }

    public bool NeedsOwnPie => MustNotTouch.Count > 0;
    public bool IsNone => Diets.Count == 0 && Avoids.Count == 0 && MustNotTouch.Count == 0;
}
