using GameNight.Planning.Toppings;

namespace GameNight.Planning;

/// <summary>Ranges of what a host decides of the split. Whether a pin can hold is for the split to say.</summary>
internal static class SplitCheck
{
    private const int MostPins = 4 * SplitPlanner.MostPies;

    public static IEnumerable<SnapshotProblem> Problems(SplitByHand? split)
    {
        if (split?.Parts is { } parts && parts is not (1 or 2 or 4))
        {
            yield return new("byHand.split.parts", SnapshotFault.OutOfRange, parts, 1, 4);
        }

        if (split?.Slices is { } slices and not (>= 1 and <= Effort.MostSlices))
        {
            yield return new("byHand.split.slices", SnapshotFault.OutOfRange, slices, 1, Effort.MostSlices);
        }

        if (split?.Pins is not { } pins)
        {
            yield break;
        }

        if (pins.Count > MostPins)
        {
            yield return new("byHand.split.pins", SnapshotFault.WrongCount, pins.Count, 0, MostPins);
        }

        foreach (var (pin, index) in pins.Select((pin, index) => (pin, index)))
        {
            var path = $"byHand.split.pins[{index}]";
            SnapshotProblem?[] all =
            [
                SnapshotCheck.Range($"{path}.pie", pin.Pie, 1, SplitPlanner.MostPies),
                SnapshotCheck.Range($"{path}.parts", pin.Parts, 1, 4),
                SnapshotCheck.Range($"{path}.toppingIds", pin.ToppingIds.Count, 0, 5),
                pin.ToppingIds.Append(pin.BaseId).Append(pin.CheeseId).Any(id => id.Length is 0 or > SnapshotCheck.LongestId)
                    ? new SnapshotProblem($"{path}.ids", SnapshotFault.BadId, 0, 1, SnapshotCheck.LongestId)
                    : null,
            ];
            foreach (var problem in all.OfType<SnapshotProblem>())
            {
                yield return problem;
            }
        }
    }
}
