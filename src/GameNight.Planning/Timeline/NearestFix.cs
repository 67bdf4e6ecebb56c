using NodaTime;

namespace GameNight.Planning.Timeline;

/// <summary>Says why a night cannot work as asked, and what nearest to it would.</summary>
internal static class NearestFix
{
    private static readonly Duration ServingTimeStep = Duration.FromMinutes(15);

    /// <summary>Later serving times are tried up to here; whoever needs longer has to pick another date.</summary>
    private const int MostDaysLater = 5;

    private const int MostBlockedNamed = 3;

    /// <summary>Hours further from the serving time are not of the evening.</summary>
    private static readonly Duration OfTheDay = Duration.FromHours(12);

    private const int MostFreed = 12;
    private const int MostHands = 8;
    private const int MostAtOnce = 6;

    public static IReadOnlyList<Conflict> For(TimelineRequest request, CancellationToken cancellation)
    {
        var night = new NightInMinutes(request);
        var quick = QuickPlacement.Of(night);
        var steps = quick.Steps;
        var network = steps.Network();
        if (network.FindCycle() is { } cycle)
        {
            var kinds = cycle.Events.Select(i => steps.Steps[i].Kind).Distinct();
            return [new RulesClash([.. kinds], Duration.FromMinutes(cycle.TooLongBy))];
        }

        var serveAt = LaterServingTime(request, cancellation);
        var (hands, free) = (MoreHands(night, cancellation), FreedOne(request, cancellation));
        List<Conflict> conflicts =
        [
            .. WhyNot(night, quick, network, serveAt).Select(conflict => conflict switch
            {
                NoFreeHands away => away with { HandsThen = hands, FreeThen = free },
                TooLateForColdFerment late => late with { ColdPossible = ShorterCold(request, late.HoursPossible, cancellation) },
                _ => conflict,
            }),
        ];
        if (conflicts[0] is NoFreeHands && quick.Pies.Stuck is { Number: > 1 })
        {
            var paced = QuickPies.Place(night, AwayWindows.None, night.First, ahead: 0);
            if (paced.Stuck is null && ForLastPie(night, paced.Pies[^1].Serve + night.Serve) is { } late)
            {
                conflicts.Add(late);
            }
        }

        return conflicts;
    }

    /// <summary>
    /// A notice when the last pie comes long after the first: how many pies at once, and failing that how many hands, would
    /// bring it in time. Null when there is nothing to remark or nothing to be done.
    /// </summary>
    public static LastPieIsLate? ForLastPie(NightInMinutes night, int lastPie)
    {
        var limit = ServingClock.LengthDown(TimelineLimits.LastPieUnremarked);
        if (lastPie <= limit)
        {
            return null;
        }

        for (var hands = night.Hands; hands <= Math.Max(MostHands, night.Hands); hands++)
        {
            for (var atOnce = night.PiesPerBake; atOnce <= Math.Max(MostAtOnce, night.PiesPerBake); atOnce++)
            {
                if (IsInTime(night, hands, atOnce, limit))
                {
                    return new LastPieIsLate(Duration.FromMinutes(lastPie), atOnce, hands);
                }
            }
        }

        return new LastPieIsLate(Duration.FromMinutes(lastPie), null, null);
    }

    private static bool IsInTime(NightInMinutes night, int hands, int atOnce, int limit)
    {
        var pies = QuickPies.Place(night.With(hands, atOnce), AwayWindows.None, night.First, ahead: 0);
        return pies.Stuck is null && pies.Pies[^1].Serve + night.Serve <= limit;
    }

    private static List<Conflict> WhyNot(
        NightInMinutes night, QuickPlacement quick, TemporalNetwork network, Instant? serveAt)
    {
        var steps = quick.Steps;
        var (earliest, latest) = steps.Bounds(night.First);
        var (pureEarliest, pureLatest) = steps.Bounds(night.First);
        if (!network.Narrow(pureEarliest, pureLatest, AnyTime.Instance, out var never))
        {
            return [NoHands(night, steps, never, pureEarliest[never], pureLatest[never], serveAt)];
        }

        // Steps whose own windows are taken up say more than the end of a chain of consequences.
        var blocked = Enumerable.Range(0, steps.Steps.Count)
            .Where(i => steps.NextFree(i, pureEarliest[i]) > pureLatest[i])
            .OrderBy(i => pureLatest[i] - pureEarliest[i])
            .DistinctBy(i => steps.Steps[i].Kind)
            .Take(MostBlockedNamed)
            .OrderBy(i => pureEarliest[i])
            .Select(i => NoHands(night, steps, i, pureEarliest[i], pureLatest[i], serveAt))
            .ToList<Conflict>();
        if (blocked.Count > 0)
        {
            return blocked;
        }

        if (!network.Narrow(earliest, latest, steps, out var stuck))
        {
            return [NoHands(night, steps, stuck, earliest[stuck], latest[stuck], serveAt)];
        }

        // The latest times are a schedule but for hands; it works from now on if none of them has passed.
        var passed = Enumerable.Range(0, latest.Length).Where(i => latest[i] < night.Now).Cast<int?>().FirstOrDefault();
        var withTimeBefore = QuickPlacement.LatestMix(night);
        var isTooLate = steps.Shop is { } shop
            && (latest[shop] < night.Now || (quick.Stuck is { Kind: StepKind.Mix } && withTimeBefore is not null));
        if (isTooLate && serveAt is { } later)
        {
            return [new TooLateForColdFerment(
                night.Clock.At(withTimeBefore ?? latest[steps.Batches[0].Mix]),
                later,
                Duration.FromMinutes(Possible(night, steps, latest)))];
        }

        var culprit = passed ?? IndexOf(steps, quick.Stuck);
        return [NoHands(night, steps, culprit, Math.Max(night.Now, earliest[culprit]), latest[culprit], serveAt)];
    }

    /// <summary>From the earliest start of mixing, shopping before it, to the shaping of the first pie.</summary>
    private static int Possible(NightInMinutes night, NightSteps steps, int[] latest)
    {
        var shopped = night.Away.NextFree(night.Now, night.Shop) + night.Shop;
        var mix = night.Away.NextFree(shopped, Math.Max(1, night.Mix));
        return Math.Max(0, latest[steps.Pies[0].Shape] - mix);
    }

    private static int IndexOf(NightSteps steps, Stuck? stuck) => stuck is { } step
        ? steps.Steps.Index().First(s => s.Item.Kind == step.Kind && s.Item.Number == step.Number).Index
        : steps.Batches is [var first, ..] ? first.Mix : steps.Preheat;

    private static NoFreeHands NoHands(
        NightInMinutes night, NightSteps steps, int i, int earliest, int latest, Instant? serveAt)
    {
        var step = steps.Steps[i];
        var (from, until) = (Math.Min(earliest, latest), Math.Max(earliest, latest));
        var before = night.Away.PreviousFree(from - 1, step.FreeMinutes);
        var after = night.Away.NextFree(Math.Max(until + 1, night.Now), step.FreeMinutes);
        int? nearest = before >= night.Now && from - before <= after - until ? before
            : after <= night.Last ? after
            : before >= night.Now ? before
            : null;
        return new NoFreeHands(
            step.Kind,
            step.Number,
            night.Clock.At(from),
            night.Clock.At(until + step.FreeMinutes),
            nearest is { } free ? night.Clock.At(free) : null,
            serveAt);
    }

    /// <summary>The first later serving time that works, in steps of a quarter of an hour.</summary>
    private static Instant? LaterServingTime(TimelineRequest request, CancellationToken cancellation)
    {
        var last = request.ServeAt + Duration.FromDays(MostDaysLater);
        for (var serveAt = request.ServeAt + ServingTimeStep; serveAt <= last; serveAt += ServingTimeStep)
        {
            cancellation.ThrowIfCancellationRequested();
            if (QuickPlacement.WorksFor(new NightInMinutes(request with { ServeAt = serveAt })))
            {
                return serveAt;
            }
        }

        return null;
    }

    private static int? MoreHands(NightInMinutes night, CancellationToken cancellation)
    {
        for (var hands = night.Hands + 1; hands <= MostHands; hands++)
        {
            cancellation.ThrowIfCancellationRequested();
            if (QuickPlacement.WorksFor(night.With(hands, night.PiesPerBake)))
            {
                return hands;
            }
        }

        return null;
    }

    /// <summary>Hours of the day itself without which the night would work, each by itself.</summary>
    private static List<HostAway>? FreedOne(TimelineRequest request, CancellationToken cancellation)
    {
        var free = new List<HostAway>();
        foreach (var away in request.Away.Where(away => away.From < request.ServeAt + OfTheDay && away.Until > request.ServeAt - OfTheDay).Take(MostFreed))
        {
            cancellation.ThrowIfCancellationRequested();
            if (QuickPlacement.WorksFor(new NightInMinutes(request with { Away = [.. request.Away.Where(other => other != away)] })))
            {
                free.Add(away);
            }
        }

        return free.Count > 0 ? free : null;
    }

    /// <summary>The most whole hours in the cold for which there is still time.</summary>
    private static Duration? ShorterCold(TimelineRequest request, Duration possible, CancellationToken cancellation)
    {
        var most = Duration.Min(possible, request.ColdFerment.Shortest - Duration.Epsilon);
        for (var hours = (int)Math.Floor(most.TotalHours); hours >= 0; hours--)
        {
            cancellation.ThrowIfCancellationRequested();
            var cold = Duration.FromHours(hours);
            if (QuickPlacement.WorksFor(new NightInMinutes(request with { ColdFerment = request.ColdFerment with { Shortest = cold, Wanted = cold } })))
            {
                return cold;
            }
        }

        return null;
    }

    private sealed class AnyTime : IFreeTimes
    {
        public static readonly AnyTime Instance = new();

        public int NextFree(int i, int minute) => minute;

        public int PreviousFree(int i, int minute) => minute;
    }
}
