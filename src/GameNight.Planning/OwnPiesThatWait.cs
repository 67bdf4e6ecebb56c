using GameNight.Planning.Timeline;
using GameNight.Planning.Toppings;
using NodaTime;

namespace GameNight.Planning;

/// <summary>
/// A notice: this own pie is out of the oven so long before any of its guests is there. Own pies are baked first all the
/// same, while nothing else has touched the surface.
/// </summary>
public sealed record OwnPieWaits(int PieNumber, Duration Waits) : Conflict;

/// <summary>Finds own pies whose guests come later than the pie.</summary>
internal static class OwnPiesThatWait
{
    /// <summary>A pie that waits less is eaten warm.</summary>
    private static readonly Duration Unremarked = Duration.FromMinutes(15);

    public static IEnumerable<OwnPieWaits> Among(NightSnapshot night, ToppingSplit split, HostTimeline timeline) =>
        from pie in split.Pies.Where(pie => pie.IsOwnPie)
        let served = timeline.Steps.FirstOrDefault(step => step.Kind == StepKind.Serve && step.Number == pie.Number)
        let owners = night.Guests.Where(guest => guest.Eaters.Any(eater => pie.OwnPieFor.Contains(eater.Id))).ToList()
        where served is not null && owners.Count > 0
        let there = night.ServeAt + owners.Min(guest => guest.Stay?.ComesAfter ?? Duration.Zero)
        where there - served.End > Unremarked
        select new OwnPieWaits(pie.Number, there - served.End);
}
