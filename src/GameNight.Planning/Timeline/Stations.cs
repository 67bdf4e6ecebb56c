namespace GameNight.Planning.Timeline;

/// <summary>Of hob and oven: how many places each has, and which steps take one from their start to their end.</summary>
/// <remarks>
/// The pies' own use of the oven is no part of this: what needs it at another heat comes wholly before or after them, by lags.
/// </remarks>
internal sealed class Stations
{
    private readonly Dictionary<int, Station> _ofOwn;
    private readonly int? _hobRings;

    public Stations(int? hobRings, IEnumerable<OwnStep> own)
    {
        _hobRings = hobRings;
        _ofOwn = own.Where(step => step.Takes is not null).ToDictionary(step => step.Number, step => step.Takes!.Value);
    }

    /// <summary>Where it could matter: at least two steps could want the same place.</summary>
    public IEnumerable<(Station Station, int Places)> Scarce
    {
        get
        {
            // The sauce is on the hob too.
            if (_hobRings is { } rings && _ofOwn.Values.Count(one => one == Station.Hob) + 1 > rings)
            {
                yield return (Station.Hob, rings);
            }

            if (_ofOwn.Values.Count(one => one == Station.OvenAtOtherHeat) > 1)
            {
                yield return (Station.OvenAtOtherHeat, 1);
            }
        }
    }

    /// <summary>Null when the step takes neither.</summary>
    public Station? Of(StepKind kind, int number) => kind switch
    {
        StepKind.Sauce => Station.Hob,
        StepKind.Own when _ofOwn.TryGetValue(number, out var station) => station,
        _ => null,
    };
}
