using GameNight.Planning.Guests;
using GameNight.Planning.Timeline;
using NodaTime;

namespace GameNight.Planning;

/// <summary>A guest who is there for a part of the night, beside the pies that come out while they are.</summary>
/// <param name="ComesAt">Null for who is there from the beginning.</param>
/// <param name="LeavesAt">Null for who stays to the end.</param>
/// <param name="Slices">They and their companions are expected to eat, if they come.</param>
/// <param name="PiesBefore">On the table before they come: their slices of those are kept, or eaten by others.</param>
/// <param name="PiesWhileThere">On the table while they are there.</param>
/// <param name="PiesAfter">On the table only when they have left.</param>
public sealed record PartOfTheNight(
    string GuestId, AnswerState Answer, Instant? ComesAt, Instant? LeavesAt, double Slices, int PiesBefore, int PiesWhileThere, int PiesAfter)
{
    /// <summary>Everybody who eats here and comes after the first pie or leaves before the end; who comes first, first.</summary>
    /// <param name="plan">Made from the same night; without a timeline no pie is counted.</param>
    public static IReadOnlyList<PartOfTheNight> Of(NightSnapshot night, NightPlan plan)
    {
        var served = plan.Timeline.Steps.Where(step => step.Kind == StepKind.Serve).Select(step => step.End).ToList();
        var expected = plan.Slices.Eaters.ToDictionary(eater => eater.EaterId);
        return [.. night.Guests
            .Where(guest => guest.Answer != AnswerState.NotComing && guest.Eaters.Any(eater => eater.EatsHere)
                && (guest.Stay?.ComesAfter > Duration.Zero || guest.Stay?.LeavesAfter is not null))
            .Select(guest =>
            {
                var comes = guest.Stay?.ComesAfter is { } after && after > Duration.Zero ? night.ServeAt + after : (Instant?)null;
                var leaves = guest.Stay?.LeavesAfter is { } until ? night.ServeAt + until : (Instant?)null;
                var (before, afterwards) = (served.Count(at => at < comes), served.Count(at => at > leaves));
                return new PartOfTheNight(
                    guest.Id, guest.Answer, comes, leaves,
                    guest.Eaters.Sum(eater => expected.GetValueOrDefault(eater.Id) is { Chance.Value: > 0 } one ? one.ExpectedSlices / one.Chance.Value : 0),
                    before, served.Count - before - afterwards, afterwards);
            })
            .OrderBy(part => part.ComesAt ?? part.LeavesAt).ThenBy(part => part.GuestId, StringComparer.Ordinal)];
    }
}
