using GameNight.Planning.Dough;
using NodaTime;

namespace GameNight.Planning.Timeline;

/// <summary>
/// Checks a timeline against its request with ordinary code that shares nothing with placement or solver: neither is
/// trusted on its word.
/// </summary>
public static partial class TimelineCheck
{
    /// <exception cref="InvalidOperationException">The timeline breaks a rule.</exception>
    public static void Require(TimelineRequest request, HostTimeline timeline)
    {
        var breaches = Breaches(request, timeline);
        if (breaches.Count > 0)
        {
            throw new InvalidOperationException("The timeline breaks its rules: " + string.Join("; ", breaches));
        }
    }

    /// <summary>What is wrong, for developers; empty when everything holds or no pie is placed.</summary>
    public static IReadOnlyList<string> Breaches(TimelineRequest request, HostTimeline timeline)
    {
        if (timeline.FirstPieAt is null)
        {
            return [];
        }

        var checking = new Checking(request, timeline);
        checking.Everything();
        return checking.Found;
    }

    private sealed partial class Checking(TimelineRequest request, HostTimeline timeline)
    {
        /// <summary>Steps are placed to the minute: a limit with seconds may be met a minute early or late, no more.</summary>
        private static readonly Duration Rounding = Duration.FromMinutes(1);

        private readonly List<string> _found = [];
        private readonly ILookup<StepKind, TimelineStep> _byKind = timeline.Steps.ToLookup(step => step.Kind);

        /// <summary>What was placed: the steps of a begun dough are as they were, and hours and lengths of now do not bind them.</summary>
        private readonly IReadOnlyList<TimelineStep> _placed =
            [.. timeline.Steps.Where(step => request.BegunDough?.Contains(step) != true)];

        public IReadOnlyList<string> Found => _found;

        public void Everything()
        {
            Counts();
            if (_found.Count > 0)
            {
                return;
            }

            Lengths();
            if (request.BegunDough is { } begun)
            {
                BegunDough(begun);
            }
            else
            {
                Dough();
            }

            Preparations();
            SecondDough();
            Oven();
            foreach (var number in Enumerable.Range(1, request.Pies))
            {
                Pie(number);
            }

            Own();
            Stations();
            Hands();
            People();
            Away();
            Summary();
        }

        private void Counts()
        {
            StepKind[] once = [StepKind.Shop, StepKind.Sauce, StepKind.GrateCheese, StepKind.PrepareToppings, StepKind.Preheat, StepKind.Soak];
            StepKind[] perBatch = [StepKind.Mix, StepKind.Knead, StepKind.BulkRest, StepKind.Ball, StepKind.ColdFerment];
            StepKind[] perPie = [StepKind.Shape, StepKind.Top, StepKind.Bake, StepKind.Rack, StepKind.Serve];
            CountOf(once, [0]);
            if (request.BegunDough is null)
            {
                CountOf([StepKind.Preferment], request.Preferment is null ? [] : [0]);
            }

            CountOf([StepKind.PutAway], request.Holding is null ? [] : [0]);
            CountOf([StepKind.SecondMix], request.SecondDough is null ? [] : [0]);
            CountOf([StepKind.SecondRise], request.SecondDough is { Rise: var rise } && rise > Duration.Zero ? [0] : []);
            if (request.BegunDough is null)
            {
                CountOf([StepKind.WakeYeast], request.YeastWakes is null ? [] : Enumerable.Range(1, request.Batches));
            }

            CountOf(perBatch, Enumerable.Range(1, request.Batches));
            CountOf(perPie, Enumerable.Range(1, request.Pies));
            Hold(_byKind[StepKind.Temper].Any(), "no balls leave the fridge");
            Hold(timeline.Steps.Select(step => step.Id).Distinct().Count() == timeline.Steps.Count, "ids are not unique");
        }

        private void CountOf(IEnumerable<StepKind> kinds, IEnumerable<int> numbers)
        {
            foreach (var kind in kinds)
            {
                Hold(_byKind[kind].Select(step => step.Number).Order().SequenceEqual(numbers), $"wrong number of {kind}");
            }
        }

        private void Lengths()
        {
            foreach (var step in _placed)
            {
                var length = step.End - step.Start;
                Hold(length >= Duration.Zero && step.CanWait >= Duration.Zero, $"{step.Id} has a negative length or slack");
                Hold(
                    step.Start >= request.Now || (request.BegunDough is not null && step.Kind == StepKind.ColdFerment),
                    $"{step.Id} begins before now");
                if (request.Durations.Of(step.Kind) is { } expected)
                {
                    Hold(length >= expected && length < expected + Rounding, $"{step.Id} has the wrong length");
                }
            }

            if (request.BegunDough is not null)
            {
                return;
            }

            var balling = request.Durations.BallEach * request.Balls;
            var balled = _byKind[StepKind.Ball].Aggregate(Duration.Zero, (sum, step) => sum + (step.End - step.Start));
            Hold(balled >= balling && balled < balling + (Rounding * request.Batches), "balling has the wrong length");
        }

        private void BegunDough(IReadOnlyList<TimelineStep> begun)
        {
            Hold(begun.All(timeline.Steps.Contains), "a step of the begun dough is not as it was");
            var firstOut = _byKind[StepKind.Temper].Min(step => step.Start);
            foreach (var ball in _byKind[StepKind.Ball])
            {
                var cold = One(StepKind.ColdFerment, ball.Number);
                Hold(
                    cold.Start == ball.End && cold.End == firstOut && firstOut >= ball.End,
                    $"cold ferment {ball.Number} is not from balled to first out");
            }
        }

        private void Dough()
        {
            var shop = One(StepKind.Shop);
            var first = FirstOfDough();
            Between(shop.End, first.Start, Duration.Zero, TimelineLimits.ShoppedBeforeMixed, "shopping to mixing");
            if (request.Preferment is { } ahead)
            {
                Hold(first.End - first.Start >= ahead.Mix, "the preferment is mixed in too short a time");
                Between(
                    first.Start, One(StepKind.Mix, 1).Start, ahead.Before, ahead.Before * (1 + TimelineLimits.PrefermentLonger) + Rounding,
                    "preferment to dough");
            }

            var firstOut = _byKind[StepKind.Temper].Min(step => step.Start);
            var lastOut = _byKind[StepKind.Temper].Max(step => step.Start);
            TimelineStep? before = null;
            foreach (var number in Enumerable.Range(1, request.Batches))
            {
                var (mix, knead) = (One(StepKind.Mix, number), One(StepKind.Knead, number));
                var (rest, ball) = (One(StepKind.BulkRest, number), One(StepKind.Ball, number));
                var cold = One(StepKind.ColdFerment, number);
                Between(mix.End, knead.Start, Duration.Zero, TimelineLimits.MixedBeforeKneaded, $"mix to knead {number}");
                Hold(rest.Start == knead.End, $"batch {number} does not rest after kneading");
                Between(rest.End, ball.Start, Duration.Zero, TimelineLimits.RestedBeforeBalled, $"rest to ball {number}");
                Hold(cold.Start == ball.End && cold.End == firstOut, $"cold ferment {number} is not from balled to first out");
                Hold(firstOut - ball.End >= request.ColdFerment.Shortest, $"batch {number} ferments too short");
                Hold(lastOut - ball.End <= request.ColdFerment.Longest, $"batch {number} ferments too long");
                if (request.YeastWakes is { } wakes)
                {
                    var wake = One(StepKind.WakeYeast, number);
                    Hold(wake.End - wake.Start >= wakes && wake.End - wake.Start < wakes + Rounding, $"{wake.Id} has the wrong length");
                    Between(wake.End, mix.Start, Duration.Zero, TimelineLimits.WokenBeforeMixed, $"woken to mix {number}");
                }

                var bowls = Enumerable.Range(1, request.Batches).Count(other => One(StepKind.Mix, other).Start <= mix.Start && mix.Start < One(StepKind.Ball, other).End);
                Hold(!(bowls > request.Bowls), $"batch {number} finds no bowl");
                if (before is not null && request.Kneading == KneadingWay.Mixer)
                {
                    Hold(mix.Start >= before.End, $"batch {number} needs the mixer bowl too soon");
                }

                before = knead;
            }
        }

        private void Preparations()
        {
            var (shape, top) = (One(StepKind.Shape, 1), One(StepKind.Top, 1));
            foreach (var kind in (StepKind[])[StepKind.Sauce, StepKind.GrateCheese, StepKind.PrepareToppings])
            {
                var step = One(kind);
                Hold(request.BegunDough is not null || step.Start >= One(StepKind.Shop).End, $"{kind} before shopping");
                Hold(step.End <= shape.Start, $"{kind} not ready before the first ball is shaped");
                Hold(top.Start - step.End <= TimelineLimits.PreparedBeforeTopped, $"{kind} waits too long");
            }
        }

        private void SecondDough()
        {
            if (request.SecondDough is not { } second)
            {
                return;
            }

            var (mix, first) = (One(StepKind.SecondMix), One(StepKind.Shape, second.FirstPie));
            Hold(mix.End - mix.Start >= second.Mix, "the second dough is mixed in too short a time");
            Hold(request.BegunDough is not null || mix.Start >= One(StepKind.Shop).End, "the second dough before shopping");
            Between(
                mix.End, One(StepKind.Shape, 1).Start, Duration.Zero, second.Rise + TimelineLimits.RisenBeforeShaped + Rounding,
                "second dough to first ball");
            Hold(first.Start - mix.End >= second.Rise, "the second dough has not risen when its first pie is shaped");
            if (second.Rise > Duration.Zero)
            {
                var rise = One(StepKind.SecondRise);
                Hold(rise.Start == mix.End && rise.End >= mix.End + second.Rise, "the second dough does not rise as its pack says");
            }
        }

        private void Oven()
        {
            Hold(One(StepKind.Soak).Start == One(StepKind.Preheat).End, "the soak does not follow the preheat");
            var bakes = _byKind[StepKind.Bake].OrderBy(step => step.Number).ToList();
            Between(
                One(StepKind.Soak).End, bakes[0].Start, Duration.Zero, TimelineLimits.HotBeforeFirstPie, "soak to first bake");
            foreach (var bake in bakes)
            {
                // A place is taken while it bakes and while its surface recovers.
                var taken = bakes.Count(other =>
                    other.Start <= bake.Start && bake.Start < other.End + request.Durations.Recovery);
                Hold(taken <= request.PiesPerBake, $"{bake.Id} finds no place in the oven");
            }

            foreach (var (before, next) in bakes.Zip(bakes.Skip(1)))
            {
                Hold(next.Start >= before.Start, $"{next.Id} overtakes");
                Hold(next.Start - before.End <= TimelineLimits.HotBetweenPies, $"the oven idles before {next.Id}");
            }
        }

        private void Pie(int number)
        {
            var (shape, top, bake) = (One(StepKind.Shape, number), One(StepKind.Top, number), One(StepKind.Bake, number));
            var (rack, serve) = (One(StepKind.Rack, number), One(StepKind.Serve, number));
            Hold(
                _byKind[StepKind.Temper].Any(wave =>
                    wave.Start + request.Durations.Temper <= shape.Start
                    && shape.Start <= wave.Start + request.Durations.Temper + TimelineLimits.TemperedBeforeShaped + Rounding),
                $"no tempered ball for pie {number}");
            Between(shape.End, top.Start, Duration.Zero, TimelineLimits.ShapedBeforeTopped, $"shape to top {number}");
            Between(top.End, bake.Start, Duration.Zero, TimelineLimits.ToppedBeforeOven, $"top to bake {number}");
            Hold(rack.Start == bake.End, $"pie {number} does not go onto the rack");
            Between(rack.End, serve.Start, Duration.Zero, TimelineLimits.RackedBeforeServed, $"rack to serve {number}");
            if (number > request.OwnPies && request.OwnPies > 0)
            {
                Hold(top.Start >= One(StepKind.Bake, request.OwnPies).End, $"pie {number} is topped beside an own pie");
            }
        }

        private void Away()
        {
            foreach (var away in request.Away.Where(away => away.From < away.Until))
            {
                foreach (var step in _placed.Where(step => step.Start < away.Until && step.End >= away.From))
                {
                    var isDuring = step.End > away.From && (step.NeedsHands || step.Kind == StepKind.Bake);
                    var isBegun = step.Start >= away.From && (step.Kind is StepKind.Temper or StepKind.Preheat or StepKind.Own or StepKind.WakeYeast);
                    Hold(!isDuring && !isBegun, $"{step.Id} while the host is away");
                }
            }
        }

        private void Summary()
        {
            var serves = _byKind[StepKind.Serve].OrderBy(step => step.Number).ToList();
            Hold(timeline.FirstPieAt == request.ServeAt && serves[0].End == request.ServeAt, "the first pie is not on time");
            Hold(
                request.Holding is not { } holding || (One(StepKind.PutAway) is var away
                    && away.Start == timeline.LastPieAt && away.End - away.Start <= holding && away.End - away.Start > holding - Rounding),
                "what is left does not stand as long as it may");
            Hold(timeline.LastPieAt == serves.Max(step => step.End), "the last pie is not where it is said to be");
            Hold(timeline.AnswerBy == HostTimeline.AnswersClose(One(StepKind.Shop).Start, request), "answers are not due when shopping begins");
            Hold(
                timeline.DoughCommitment == FirstOfDough().Start,
                "the dough is not committed when mixing begins");
            Hold(
                timeline.ColdFermentLength == _byKind[StepKind.ColdFerment].Min(step => step.End - step.Start),
                "the cold ferment is not as long as said");
            if (request is { BegunDough: null, MixAt: { } mixAt } && !timeline.Conflicts.OfType<ChosenMixTimeDoesNotFit>().Any())
            {
                var off = mixAt - One(StepKind.Mix, 1).Start;
                Hold(off >= Duration.Zero && off < Rounding, "mixing is not when the host chose");
            }
        }

        private TimelineStep FirstOfDough() =>
            _byKind[StepKind.Preferment].FirstOrDefault() ?? _byKind[StepKind.WakeYeast].MinBy(step => step.Start) ?? One(StepKind.Mix, 1);

        private TimelineStep One(StepKind kind, int number = 0) => _byKind[kind].Single(step => step.Number == number);

        private void Between(Instant from, Instant until, Duration atLeast, Duration atMost, string what) =>
            Hold(until - from >= atLeast && until - from <= atMost, $"{what} takes {until - from}");

        private void Hold(bool isHeld, string otherwise)
        {
            if (!isHeld)
            {
                _found.Add(otherwise);
            }
        }
    }
}
