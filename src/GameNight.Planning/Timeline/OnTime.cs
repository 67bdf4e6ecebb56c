using GameNight.Planning.Quantities;
using NodaTime;

namespace GameNight.Planning.Timeline;

/// <summary>
/// Plays a timeline so many times with steps that take longer or shorter by their bands, each time timed anew as live mode
/// does: nothing begins before its planned time, order and lags are kept.
/// </summary>
/// <remarks>
/// Lengths are log-normal and independent, with the band of their step holding four times in five. Only work from the day's
/// first wave of balls on is drawn: what went before has days to catch up. A fixed seed makes a plan the same every time.
/// </remarks>
internal static class OnTime
{
    public static readonly Duration Tolerance = Duration.FromMinutes(5);
    public static readonly Duration LastTolerance = Duration.FromMinutes(15);

    private const int Evenings = 400;
    private const int Seed = 20_11;
    private const int MostDecisive = 5;
    private const double SeldomDecisive = 0.1;

    /// <returns>Null without a pie on the table.</returns>
    public static OnTimeChance? Of(TimelineRequest request, HostTimeline timeline, StepTable table)
    {
        if (timeline.FirstPieAt is null)
        {
            return null;
        }

        var night = new NightInMinutes(OwnSteps.Of(request, timeline));
        if (PlacedSteps.Of(night, timeline) is not var (steps, planned))
        {
            return null;
        }

        var random = new Random(Seed);
        var (first, last) = (steps.Pies[0].Serve, steps.Pies[^1].Serve);
        var from = planned[steps.Waves[0]];
        var (firstLate, lastLate) = (new int[Evenings], new int[Evenings]);
        var decides = new int[planned.Length];
        var still = new StepProgress[planned.Length];
        var notBefore = new int[planned.Length];
        Array.Fill(notBefore, int.MinValue);
        for (var evening = 0; evening < Evenings; evening++)
        {
            int[] longer = [.. steps.Steps.Select((step, i) => planned[i] < from || step.Minutes == 0 ? 0 : Drawn(step, table, night, random) - step.Minutes)];
            var played = new Retiming(steps, planned, still, notBefore, longer, night.Hands, night.First);
            firstLate[evening] = End(played, first) - End(planned, steps, first);
            lastLate[evening] = End(played, last) - End(planned, steps, last);
            // The last link is serving itself: that it decides says nothing.
            foreach (var i in played.ChainTo(first).Skip(1))
            {
                decides[i]++;
            }
        }

        return new OnTimeChance(
            ShareOf(firstLate, Tolerance),
            ShareOf(lastLate, LastTolerance),
            NineInTen(firstLate),
            NineInTen(lastLate),
            [
                .. decides.Index().Where(one => one.Item >= SeldomDecisive * Evenings)
                    .OrderByDescending(one => one.Item).ThenBy(one => planned[one.Index]).Take(MostDecisive)
                    .Select(one => new DecisiveStep(
                        TimelineSteps.IdOf(steps.Steps[one.Index].Kind, steps.Steps[one.Index].Number), new Share((double)one.Item / Evenings))),
            ]);
    }

    private static int Drawn(StepToPlace step, StepTable table, NightInMinutes night, Random random)
    {
        var spread = Math.Log(table.BandOf(NameOf(step.Kind, night.IsKneadedByHand))) / BandWidth.Deviations;
        return (int)Math.Round(step.Minutes * Math.Exp(spread * Normal(random)));
    }

    /// <summary>Box and Muller, 1958.</summary>
    private static double Normal(Random random) =>
        Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());

    internal static StepName NameOf(StepKind kind, bool isKneadedByHand) => kind switch
    {
        StepKind.Shop => StepName.Shop,
        StepKind.Preferment => StepName.Preferment,
        StepKind.Mix => StepName.Mix,
        StepKind.Knead => isKneadedByHand ? StepName.KneadByHand : StepName.KneadMixer,
        StepKind.BulkRest => StepName.BulkRest,
        StepKind.Ball => StepName.BallEach,
        StepKind.Temper => StepName.Temper,
        StepKind.Sauce => StepName.Sauce,
        StepKind.GrateCheese => StepName.GrateCheese,
        StepKind.PrepareToppings => StepName.PrepareToppings,
        StepKind.SecondMix => StepName.SecondMix,
        StepKind.Preheat => StepName.Preheat,
        StepKind.Shape => StepName.Shape,
        StepKind.Top => StepName.Top,
        StepKind.Bake => StepName.Bake,
        StepKind.Serve => StepName.Serve,
        StepKind.Own => StepName.Own,
        StepKind.Soak or StepKind.Rack or StepKind.ColdFerment or StepKind.SecondRise or StepKind.PutAway or StepKind.WakeYeast => StepName.Rack,
    };

    private static int End(Retiming played, int i) => played.Starts[i] + played.Lengths[i];

    private static int End(int[] starts, NightSteps steps, int i) => starts[i] + steps.Steps[i].Minutes;

    private static Share ShareOf(int[] late, Duration within) =>
        new((double)late.Count(minutes => minutes <= within.TotalMinutes) / late.Length);

    private static Duration NineInTen(int[] late) =>
        Duration.FromMinutes(Math.Max(0, late.Order().ElementAt((int)Math.Ceiling(0.9 * late.Length) - 1)));
}
