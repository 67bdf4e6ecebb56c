namespace GameNight.Planning.Timeline;

/// <summary>Places shopping and the batches forward from a mixing time, and looks through mixing times for the best.</summary>
internal sealed class QuickDough(
    NightSteps steps, int shopping, IReadOnlyList<CostTerm> terms, int[] starts, HandsCalendar hands, QuickOwnSteps own, int now)
{
    /// <summary>Mixing times are first tried this far apart; only if none works, each minute.</summary>
    private const int Coarse = 15;

    /// <summary>
    /// Balled as soon as rested is what one wants; with many batches that leaves no hands to knead the last of them, so the
    /// first are allowed to wait this many minutes.
    /// </summary>
    private static readonly int[] WaitsOfMany = [0, 20, 40, 60];

    private static readonly int[] NoWait = [0];

    private readonly NightInMinutes _night = steps.Night;
    private readonly int _firstOut = starts[steps.Waves[0]];
    private readonly int _lastOut = starts[steps.Waves[^1]];
    private readonly int _firstPreparation = steps.Preparations.Concat(steps.SecondMix is { } mix ? [mix] : []).Min(work => starts[work]);

    private int[] BallingWaits => steps.Batches.Count > 2 ? WaitsOfMany : NoWait;

    private int EarliestMix => Math.Max(
        now + _night.Shop + Math.Max(_night.Preferment?.AtLeast ?? 0, _night.YeastWakes ?? 0),
        _lastOut - _night.Longest - _night.Balling[0] - MostBeforeBalls);

    private int LatestMix => _firstOut - _night.Shortest - _night.Balling[0] - _night.BulkRest - _night.Knead - _night.Mix;

    private int MostBeforeBalls => _night.Mix + _night.Knead + _night.BulkRest
        + ServingClock.LengthDown(TimelineLimits.MixedBeforeKneaded)
        + ServingClock.LengthDown(TimelineLimits.RestedBeforeBalled);

    /// <summary>Leaves the dough of the most convenient mixing time in the starts.</summary>
    public bool PlaceBest()
    {
        int? best = null;
        var bestCost = default(NightCost);
        foreach (var mixAt in Candidates())
        {
            if (!TryAt(mixAt))
            {
                continue;
            }

            var cost = NightCost.Of(steps, terms, starts);
            if (best is null || cost < bestCost)
            {
                best = mixAt;
                bestCost = cost;
            }
        }

        best ??= EveryMinute(latestFirst: true).Cast<int?>().FirstOrDefault(mixAt => TryAt(mixAt!.Value));
        return best is { } chosen && TryAt(chosen);
    }

    /// <summary>Leaves a dough that works in the starts, looking only at the likely mixing times.</summary>
    public bool PlaceAny() => Candidates().Any(TryAt);

    /// <summary>The latest minute at which mixing can begin, or null.</summary>
    public int? Latest() => EveryMinute(latestFirst: true).Cast<int?>().FirstOrDefault(mixAt => TryAt(mixAt!.Value));

    /// <summary>The earliest minute at which mixing can begin, or null.</summary>
    public int? Earliest() => EveryMinute(latestFirst: false).Cast<int?>().FirstOrDefault(mixAt => TryAt(mixAt!.Value));

    private IEnumerable<int> Candidates()
    {
        if (_night.MixAt is { } chosen)
        {
            return chosen >= EarliestMix && chosen <= LatestMix ? [chosen] : [];
        }

        var afterAway = _night.Away.Windows
            .SelectMany(window => new[] { window.Until, window.Until + _night.Shop })
            .Append(EarliestMix)
            .Where(mixAt => mixAt >= EarliestMix && mixAt <= LatestMix);
        var span = Math.Max(-1, LatestMix - EarliestMix);
        var regular = Enumerable.Range(0, (span / Coarse) + 1).Select(k => LatestMix - (k * Coarse));
        return span < 0 ? [] : regular.Concat(afterAway).Distinct().OrderDescending();
    }

    private IEnumerable<int> EveryMinute(bool latestFirst)
    {
        if (_night.MixAt is not null)
        {
            return Candidates();
        }

        var count = Math.Max(0, LatestMix - EarliestMix + 1);
        return latestFirst
            ? Enumerable.Range(0, count).Select(k => LatestMix - k)
            : Enumerable.Range(0, count).Select(k => EarliestMix + k);
    }

    private bool TryAt(int mixAt) => BallingWaits.Any(wait => TryAt(mixAt, wait));

    private bool TryAt(int mixAt, int ballingWait)
    {
        var taken = new List<TakenHands>();
        var works = PlaceBatches(mixAt, ballingWait, taken) && PlacePreferment(mixAt, taken) && PlaceShopping(taken)
            && (!own.AnyWithDough || own.PlaceWithDough(taken) is null);
        taken.ForEach(hands.GiveBack);

        return works;
    }

    private bool WakeYeast(int b, int mix)
    {
        if (steps.Batches[b].Wake is not { } wake || _night.YeastWakes is not { } minutes)
        {
            return true;
        }

        starts[wake] = _night.Away.PreviousFree(mix - minutes, 1);
        return starts[wake] >= Math.Max(now, mix - minutes - ServingClock.LengthDown(TimelineLimits.WokenBeforeMixed));
    }

    private bool PlacePreferment(int mixAt, List<TakenHands> taken)
    {
        if (steps.Preferment is not { } preferment || _night.Preferment is not { } ahead)
        {
            return true;
        }

        if (hands.Latest(StepKind.Preferment, 0, Math.Max(now, mixAt - ahead.AtMost), mixAt - ahead.AtLeast, ahead.Mix) is not { } start)
        {
            return false;
        }

        taken.Add(hands.Take(StepKind.Preferment, 0, start, ahead.Mix));
        starts[preferment] = start;
        return true;
    }

    private bool PlaceShopping(List<TakenHands> taken)
    {
        var first = starts[steps.FirstOfDough];
        var latest = Math.Min(first, _firstPreparation) - _night.Shop;
        var earliest = first - ServingClock.LengthDown(TimelineLimits.ShoppedBeforeMixed) - _night.Shop;
        if (hands.Latest(StepKind.Shop, 0, Math.Max(earliest, now), latest, _night.Shop) is not { } shop)
        {
            return false;
        }

        taken.Add(hands.Take(StepKind.Shop, 0, shop, _night.Shop));
        starts[shopping] = shop;
        return true;
    }

    private bool PlaceBatches(int mixAt, int ballingWait, List<TakenHands> taken)
    {
        var latest = mixAt;
        for (var b = 0; b < steps.Batches.Count; b++)
        {
            if (b >= _night.Bowls)
            {
                var emptied = steps.Batches[b - _night.Bowls].Ball;
                mixAt = Math.Max(mixAt, starts[emptied] + steps.Steps[emptied].Minutes);
            }

            var mix = mixAt;
            while (mix <= latest && !TryBatch(b, mix, ballingWait, taken))
            {
                mix++;
            }

            if (mix > latest)
            {
                return false;
            }

            mixAt = _night.IsKneadedByHand ? mix : starts[steps.Batches[b].Knead] + _night.Knead;
            latest = Math.Min(LatestMix, mixAt + ServingClock.Day);
        }

        return true;
    }

    private bool TryBatch(int b, int mix, int ballingWait, List<TakenHands> taken)
    {
        if (!hands.Fits(StepKind.Mix, b + 1, mix, _night.Mix) || !WakeYeast(b, mix))
        {
            return false;
        }

        var before = taken.Count;
        Take(StepKind.Mix, mix, _night.Mix);
        var mixed = mix + _night.Mix;
        if (PlaceKnead(mixed) is { } knead)
        {
            var rested = knead + _night.Knead + _night.BulkRest;
            var notBefore = _lastOut - _night.Longest - _night.Balling[b];
            var notAfter = _firstOut - _night.Shortest - _night.Balling[b];
            var from = Math.Max(rested, notBefore);
            var until = Math.Min(rested + ServingClock.LengthDown(TimelineLimits.RestedBeforeBalled), notAfter);
            var ball = ballingWait == 0
                ? hands.Earliest(StepKind.Ball, b + 1, from, until, _night.Balling[b])
                : hands.Latest(StepKind.Ball, b + 1, from, Math.Min(from + ballingWait, until), _night.Balling[b]);
            if (ball is { } balled)
            {
                Take(StepKind.Ball, balled, _night.Balling[b]);
                (starts[steps.Batches[b].Mix], starts[steps.Batches[b].Knead], starts[steps.Batches[b].Ball]) =
                    (mix, knead, balled);
                return true;
            }
        }

        foreach (var part in taken.Skip(before))
        {
            hands.GiveBack(part);
        }

        taken.RemoveRange(before, taken.Count - before);
        return false;

        void Take(StepKind kind, int start, int minutes) => taken.Add(hands.Take(kind, b + 1, start, minutes));

        int? PlaceKnead(int from)
        {
            var until = from + ServingClock.LengthDown(TimelineLimits.MixedBeforeKneaded);
            if (!_night.IsKneadedByHand)
            {
                var start = _night.Away.NextFree(from, 1);
                return start <= until ? start : null;
            }

            var byHand = hands.Earliest(StepKind.Knead, b + 1, from, until, _night.Knead);
            if (byHand is { } found)
            {
                Take(StepKind.Knead, found, _night.Knead);
            }

            return byHand;
        }
    }
}
