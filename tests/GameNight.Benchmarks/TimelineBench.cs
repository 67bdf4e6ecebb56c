using System.Diagnostics;
using GameNight.Planning;
using GameNight.Planning.Dough;
using GameNight.Planning.Live;
using GameNight.Planning.Timeline;
using GameNight.TestKit;
using NodaTime;

/// <summary>
/// The timeline at growing sizes, the explanation of a night that cannot work, and the rest of a night timed anew. The night of
/// twelve pies beside the plain way to write it down: pies in any order, unavailable hours as work of their own.
/// </summary>
internal static class TimelineBench
{
    private const int Runs = 5;

    /// <summary>Deterministic solver time for the plain way; ours gets its usual effort.</summary>
    private const double PlainLimit = 30;

    private static readonly Instant ServeAt = Instant.FromUtc(2026, 12, 12, 19, 0);

    public static void Run()
    {
        Console.WriteLine();
        Console.WriteLine($"{"timeline",-44} {"ms",26} {"steps",6} {"quality",-10}");
        Row("12 pies, one pair of hands", Night(12, 1, 1));
        Row("25 pies, a helper", Night(25, 2, 2));
        Row("80 pies, two helpers, four places", Night(80, 3, 4));
        Row("25 pies in an hour, alone: why not", Night(25, 1, 1) with { Away = [new HostAway(ServeAt + Duration.FromHours(1), ServeAt + Duration.FromDays(2))] });
        Plain();
        LiveAgain();
        AnotherOrder(12, 2, 2);
        AnotherOrder(25, 2, 2);
        AnotherOrder(80, 3, 4);
    }

    private static void Row(string name, TimelineRequest request)
    {
        var (timeline, milliseconds) = Timed(() => Backwards.From(request, Effort.Usual, CancellationToken.None));
        Console.WriteLine($"{name,-44} {Text(milliseconds),26} {timeline.Steps.Count,6} {(timeline.FirstPieAt is null ? timeline.Conflicts[0].GetType().Name : timeline.Quality),-10}");
    }

    private static void Plain()
    {
        var request = Night(12, 1, 1);
        var (_, ours) = Timed(() => Backwards.From(request, Effort.Usual, CancellationToken.None));
        var night = new NightInMinutes(request);
        var steps = QuickPlacement.Of(night).Steps;
        var watch = Stopwatch.StartNew();
        var found = FreeOrder(night, steps).Run(null, PlainLimit, CancellationToken.None);
        Console.WriteLine(
            $"{"12 pies in any order, hours as work",-44} {watch.Elapsed.TotalMilliseconds,26:0.0} {steps.Steps.Count,6} "
            + $"{(found.IsProved ? "Proved" : $"gap {found.GapPercent} %"),-10} {watch.Elapsed.TotalMilliseconds / ours[Runs / 2]:0} times ours");
    }

    /// <summary>Order between pies and their places is the solver's; a surface is taken for bake and recovery together.</summary>
    private static ScheduleModel FreeOrder(NightInMinutes night, NightSteps steps)
    {
        var ordered = steps.Pies.SelectMany(pie => new[] { pie.Shape, pie.Top, pie.Bake, pie.Serve }).ToHashSet();
        var pieOf = steps.Pies.Index().SelectMany(pie => new[] { pie.Item.Shape, pie.Item.Top, pie.Item.Bake, pie.Item.Serve }.Select(step => (step, pie.Index))).ToDictionary();
        var lags = steps.Lags.Where(lag => !(ordered.Contains(lag.From) && ordered.Contains(lag.To) && pieOf[lag.From] != pieOf[lag.To])).ToList();
        var (earliest, latest) = steps.Bounds(night.Now);
        var lengths = steps.Steps.Select(step => step.Minutes).ToList();
        var ranges = steps.Steps.Select((_, i) => new[] { (earliest[i], latest[i]) }.AsEnumerable()).ToList();
        var hands = steps.Steps.Index().Where(step => step.Item.Presence == Presence.Hands).Select(step => (step.Index, 1)).ToList();
        foreach (var (from, until) in night.Away.Windows)
        {
            hands.Add((lengths.Count, night.Hands));
            lengths.Add(until - from);
            ranges.Add([(from, from)]);
        }

        var places = new List<(int, int)>();
        foreach (var pie in steps.Pies)
        {
            lags.Add(new Lag(pie.Bake, lengths.Count, 0));
            lags.Add(new Lag(lengths.Count, pie.Bake, 0));
            places.Add((lengths.Count, 1));
            lengths.Add(night.Bake + night.Recovery);
            ranges.Add([(night.First, night.Last)]);
        }

        var end = lengths.Count;
        lags.AddRange(steps.Pies.Select(pie => new Lag(pie.Serve, end, 0)));
        lengths.Add(0);
        ranges.Add([(night.First, night.Last)]);
        var model = new ScheduleModel(lengths, ranges, lags, [new SharedResource(night.Hands, hands), new SharedResource(night.PiesPerBake, places)]);
        model.MinimizeStart(end);
        return model;
    }

    /// <summary>A helper leaves after the second pie; the effort is that of the night itself.</summary>
    private static void AnotherOrder(int pies, int hands, int places)
    {
        var request = Night(pies, hands, places);
        var timeline = Backwards.From(request, Effort.Usual, CancellationToken.None);
        var now = timeline.Steps.Single(step => step.Id == "top-2").End;
        LiveMark[] marks =
        [
            .. timeline.Steps.Where(step => step.End <= now && step.Kind is not (StepKind.Rack or StepKind.Soak or StepKind.BulkRest or StepKind.ColdFerment))
                .Select(step => new LiveMark(step.Id, step.End, step.Kind is StepKind.Temper or StepKind.Preheat ? LiveMarkKind.StepBegun : LiveMarkKind.StepDone, step.Id)),
            new LiveMark("gone", now, LiveMarkKind.HandsNow, Hands: hands - 1),
        ];
        var (order, milliseconds) = Timed(() => LiveNight.AnotherOrder(
            request, timeline, marks, now + Duration.FromMinutes(5), SharedFolder.Tables.Steps, new Effort(4), CancellationToken.None));
        Console.WriteLine(
            $"{$"{pies} pies, a helper leaves: another order",-44} {Text(milliseconds),26} {timeline.Steps.Count,6} {order?.Sooner.TotalMinutes ?? 0:0} min sooner");
    }

    private static void LiveAgain()
    {
        var request = Night(12, 1, 1);
        var timeline = Backwards.From(request, Effort.Usual, CancellationToken.None);
        var third = timeline.Steps.Single(step => step.Id == "bake-3");
        LiveMark[] marks =
        [
            .. timeline.Steps.Where(step => step.End <= third.Start && step.Kind is not (StepKind.Rack or StepKind.Soak or StepKind.BulkRest or StepKind.ColdFerment or StepKind.SecondRise or StepKind.PutAway))
                .Select(step => new LiveMark(step.Id, step.End, step.Kind is StepKind.Temper or StepKind.Preheat ? LiveMarkKind.StepBegun : LiveMarkKind.StepDone, step.Id)),
            new LiveMark("late", third.Start, LiveMarkKind.NotBefore, Until: third.Start + Duration.FromMinutes(15)),
        ];
        var (_, milliseconds) = Timed(() => LiveNight.Of(request, timeline, marks, third.Start + Duration.FromMinutes(20), SharedFolder.Tables.Steps));
        Console.WriteLine($"{"12 pies, in the middle: the rest timed anew",-44} {Text(milliseconds),26} {timeline.Steps.Count,6}");
    }

    private static (T Value, List<double> Milliseconds) Timed<T>(Func<T> work)
    {
        var value = work();
        var milliseconds = new List<double>();
        for (var run = 0; run < Runs; run++)
        {
            var watch = Stopwatch.StartNew();
            value = work();
            milliseconds.Add(watch.Elapsed.TotalMilliseconds);
        }

        milliseconds.Sort();
        return (value, milliseconds);
    }

    private static string Text(List<double> milliseconds) => $"{milliseconds[Runs / 2]:0.0} ({milliseconds[0]:0.0} to {milliseconds[^1]:0.0})";

    private static TimelineRequest Night(int pies, int hands, int places) => new(
        ServeAt,
        ServeAt - Duration.FromDays(7),
        [.. Enumerable.Range(-6, 8).Select(day => new HostAway(ServeAt + Duration.FromDays(day) + Duration.FromHours(12), ServeAt + Duration.FromDays(day) + Duration.FromHours(pies > 40 ? 13 : 20)))],
        Batches: Math.Max(1, pies / 6),
        Balls: pies,
        pies,
        OwnPies: 0,
        places,
        hands,
        KneadingWay.ByHand,
        new ColdFerment(Duration.FromHours(40), Duration.FromHours(48), Duration.FromHours(72)),
        new StepDurations(
            Minutes(60), Minutes(15), Minutes(20), Minutes(120), Minutes(2), Minutes(120), Minutes(40), Minutes(15), Minutes(25), Minutes(25), Minutes(60),
            Minutes(4), Minutes(3), Minutes(7), Minutes(12), Minutes(3), Minutes(2)),
        MixAt: null);

    private static Duration Minutes(int minutes) => Duration.FromMinutes(minutes);
}
