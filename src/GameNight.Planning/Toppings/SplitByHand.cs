namespace GameNight.Planning.Toppings;

/// <summary>What the host decided of the split; null where the usual holds.</summary>
/// <param name="Pins">Parts of pies that are settled.</param>
/// <param name="Parts">Into how many parts a pie may be divided at most: 1, 2 or 4.</param>
/// <param name="Aim">Whose gain counts more.</param>
/// <param name="Slices">How long to look for a better split, in slices of solver time; the usual where that is more.</param>
public sealed record SplitByHand(IReadOnlyList<Pin>? Pins = null, int? Parts = null, SplitAim? Aim = null, int? Slices = null)
{
    public bool IsNothing => Pins is not { Count: > 0 } && Parts is null && Aim is null && Slices is null;

    /// <summary>What is settled of one pie is replaced; nothing lets go of it.</summary>
    public SplitByHand Settling(int pie, IReadOnlyList<Pin> pins)
    {
        Pin[] all = [.. (Pins ?? []).Where(pin => pin.Pie != pie), .. pins.Select(pin => pin with { Pie = pie })];
        return this with { Pins = all.Length == 0 ? null : [.. all.OrderBy(pin => pin.Pie)] };
    }
}
