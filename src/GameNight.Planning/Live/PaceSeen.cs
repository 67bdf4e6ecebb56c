using GameNight.Planning.Dough;
using GameNight.Planning.Timeline;
using NodaTime;

namespace GameNight.Planning.Live;

/// <summary>How long work took on one night against the table.</summary>
/// <param name="Ratio">Minutes it took for each minute of the table; above 0.</param>
public sealed record SeenWork(StepName Step, double Ratio);

/// <summary>What past nights say of one step.</summary>
/// <param name="TableMinutes">For one of it.</param>
/// <param name="Nights">On so many nights it could be told, 1 or more.</param>
/// <param name="SeenMinutes">What it took on them, the geometric mean of nights.</param>
/// <param name="Minutes">What to plan with: between table and what was seen.</param>
/// <param name="Band">Four times in five it takes between minutes divided by this and minutes times this: the table's, for one night.</param>
public sealed record LearnedPace(StepName Step, double TableMinutes, int Nights, double SeenMinutes, double Minutes, double Band);

/// <summary>
/// How long work takes in a kitchen, by the taps of its nights. Nobody taps when a step begins: where a step follows directly on
/// another of the same hands, and both were told done, what lies between is its length.
/// </summary>
public static class PaceSeen
{
    /// <summary>Two steps that are planned no further apart follow directly.</summary>
    private static readonly Duration Directly = Duration.FromMinutes(1);

    /// <summary>Told in one go, or forgotten until much later: no measure of the work. Our own choice.</summary>
    private const double LeastRatio = 0.25;

    private const double MostRatio = 4;

    /// <param name="marks">What was tapped and not taken back.</param>
    public static IReadOnlyList<SeenWork> Of(NightPlan plan, IReadOnlyList<LiveMark> marks, KneadingWay kneading, StepTable table)
    {
        var told = marks.Where(mark => mark is { Kind: LiveMarkKind.StepDone, Step: not null })
            .GroupBy(mark => mark.Step!).ToDictionary(taps => taps.Key, taps => taps.Min(tap => tap.At));
        List<Instant> otherwise =
        [
            .. marks.Where(mark => mark.Kind is LiveMarkKind.NotBefore or LiveMarkKind.WentWrong or LiveMarkKind.NewOrder or LiveMarkKind.HandsNow)
                .Select(mark => mark.At),
        ];
        return
        [
            .. plan.Timeline.Steps.Where(step => step.NeedsHands && step.End > step.Start).GroupBy(step => step.By ?? 0)
                .SelectMany(hands => Of([.. hands.OrderBy(step => step.Start)])),
        ];

        IEnumerable<SeenWork> Of(IReadOnlyList<TimelineStep> work)
        {
            var (from, open) = ((Instant?)null, new List<TimelineStep>());
            TimelineStep? before = null;
            foreach (var step in work)
            {
                if (before is null || step.Start - before.End > Directly)
                {
                    from = null;
                }

                before = step;
                open.Add(step);
                if (!told.TryGetValue(step.Id, out var at))
                {
                    continue;
                }

                if (from is { } since && !otherwise.Exists(tap => tap >= since && tap <= at) && open.TrueForAll(IsKnown))
                {
                    var ratio = (at - since).TotalMinutes / open.Sum(one => table.MinutesOf(NameOf(one)) * CountOf(one));
                    if (ratio is >= LeastRatio and <= MostRatio)
                    {
                        foreach (var name in open.Select(NameOf).Distinct())
                        {
                            yield return new SeenWork(name, ratio);
                        }
                    }
                }

                from = at;
                open.Clear();
            }
        }

        StepName NameOf(TimelineStep step) => OnTime.NameOf(step.Kind, kneading == KneadingWay.ByHand);

        bool IsKnown(TimelineStep step) => StepPace.Known.Contains(NameOf(step));

        int CountOf(TimelineStep step) => step.Kind == StepKind.Ball ? plan.Dough.Batches.Single(batch => batch.Number == step.Number).Balls : 1;
    }

    /// <summary>
    /// The table is worth one night: its band is taken to hold as much for what differs between kitchens as for what differs between
    /// nights of one, so the logarithm of the ratio is n ÷ (n + 1) of the mean of n nights (normal prior of mean 0).
    /// </summary>
    public static IReadOnlyList<LearnedPace> Learn(IEnumerable<IReadOnlyList<SeenWork>> nights, StepTable table) =>
    [
        .. nights.SelectMany(night => night.GroupBy(seen => seen.Step)
                .Select(seen => (Step: seen.Key, Log: seen.Average(one => Math.Log(one.Ratio)))))
            .GroupBy(seen => seen.Step).OrderBy(step => step.Key)
            .Select(step =>
            {
                var (count, mean, minutes) = (step.Count(), step.Average(night => night.Log), table.MinutesOf(step.Key));
                return new LearnedPace(
                    step.Key, minutes, count, minutes * Math.Exp(mean),
                    Math.Clamp(minutes * Math.Exp(mean * count / (count + 1)), StepPace.Least, StepPace.Most), table.BandOf(step.Key));
            }),
    ];
}
