namespace GameNight.Planning.Toppings;

/// <summary>What a host does to a pie by hand, as pins. Pure: nothing is kept before it is said so.</summary>
public static class PieEdit
{
    /// <summary>What is on a sector, settled for its pie.</summary>
    public static Pin PinOf(ToppingSplit split, PieOrder pie, Sector sector, int slicesPerPart)
    {
        var combination = split.Combinations.Single(one => one.Letter == sector.Letter);
        return new Pin(pie.Number, sector.Slices / slicesPerPart, combination.BaseId, combination.CheeseId, combination.ToppingIds);
    }

    /// <summary>True when the host settled just this for the pie.</summary>
    public static bool IsSettled(SplitByHand? byHand, Pin onIt) =>
        (byHand?.Pins ?? []).Any(pin => pin.Pie == onIt.Pie && pin.Parts >= onIt.Parts && HasTheSame(pin, onIt));

    /// <summary>
    /// The pins of a pie once a sector carries something else: other sectors that were settled stay so while there is room.
    /// </summary>
    /// <param name="before">What was on the sector.</param>
    /// <param name="after">What is to be on it; of the same pie.</param>
    /// <param name="partsPerPie">How many parts the pie has.</param>
    public static IReadOnlyList<Pin> Changed(SplitByHand? byHand, Pin before, Pin after, int partsPerPie)
    {
        var pins = new List<Pin> { after };
        var room = partsPerPie - after.Parts;
        foreach (var pin in (byHand?.Pins ?? []).Where(pin => pin.Pie == after.Pie && !HasTheSame(pin, before) && !HasTheSame(pin, after)))
        {
            if (pin.Parts <= room)
            {
                pins.Add(pin);
                room -= pin.Parts;
            }
        }

        return pins;
    }

    /// <summary>Two sectors change places, on one pie or between two; both are settled then.</summary>
    public static SplitByHand Swapped(SplitByHand? byHand, Pin one, Pin other, int partsPerPie)
    {
        var split = byHand ?? new SplitByHand();
        if (one.Pie == other.Pie)
        {
            return split.Settling(one.Pie, [one, other]);
        }

        var there = other with { Pie = one.Pie, Parts = Math.Min(one.Parts, other.Parts) };
        var here = one with { Pie = other.Pie, Parts = Math.Min(one.Parts, other.Parts) };
        return split
            .Settling(one.Pie, Changed(split, one, there, partsPerPie))
            .Settling(other.Pie, Changed(split, other, here, partsPerPie));
    }

    /// <summary>
    /// The same when a pie is divided into another number of parts: pins keep how much of the pie they cover, and what cannot
    /// be had in the new parts is let go of.
    /// </summary>
    /// <param name="from">Parts of a pie until now.</param>
    /// <param name="to">Parts of a pie from now on.</param>
    public static SplitByHand Parted(SplitByHand split, int from, int to)
    {
        Pin[] kept = [.. (split.Pins ?? []).Where(pin => pin.Parts * to % from == 0).Select(pin => pin with { Parts = pin.Parts * to / from })];
        return split with { Parts = to == SplitRequest.UsualParts ? null : to, Pins = kept.Length == 0 ? null : kept };
    }

    /// <summary>The pins of a pie without this one.</summary>
    public static IReadOnlyList<Pin> LetGo(SplitByHand? byHand, Pin onIt) =>
        [.. (byHand?.Pins ?? []).Where(pin => pin.Pie == onIt.Pie && !HasTheSame(pin, onIt))];

    private static bool HasTheSame(Pin one, Pin other) =>
        one.BaseId == other.BaseId && one.CheeseId == other.CheeseId && one.ToppingIds.ToHashSet().SetEquals(other.ToppingIds);
}
