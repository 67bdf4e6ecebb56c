using NodaTime;

namespace GameNight.Planning.Timeline;

/// <summary>Turns starts in minutes into the steps of the timeline, with those that only follow from others.</summary>
internal static class TimelineSteps
{
    public static IReadOnlyList<TimelineStep> From(NightSteps steps, int[] starts)
    {
        var canWait = CanWait(steps, starts);
        var night = steps.Night;
        var by = By(steps, starts);
        var timeline = new List<TimelineStep>();
        for (var i = 0; i < steps.Steps.Count; i++)
        {
            var step = steps.Steps[i];
            Add(step.Kind, step.Number, starts[i], step.Minutes, step.Presence == Presence.Hands, canWait[i], by[i]);
        }

        if (night.BegunDough is { } begun)
        {
            timeline.AddRange(begun);
            foreach (var ball in begun.Where(step => step.Kind == StepKind.Ball))
            {
                timeline.Add(new TimelineStep(
                    IdOf(StepKind.ColdFerment, ball.Number), StepKind.ColdFerment, ball.Number, ball.End,
                    night.Clock.At(starts[steps.Waves[0]]), false, Duration.Zero));
            }
        }

        foreach (var (index, batch) in steps.Batches.Index())
        {
            Following(StepKind.BulkRest, index + 1, batch.Knead, night.BulkRest);
            var balled = starts[batch.Ball] + steps.Steps[batch.Ball].Minutes;
            Following(StepKind.ColdFerment, index + 1, batch.Ball, starts[steps.Waves[0]] - balled);
        }

        if (steps.SecondMix is { } secondMix && night.SecondDough is { Rise: > 0 and var rise })
        {
            Following(StepKind.SecondRise, 0, secondMix, rise);
        }

        Following(StepKind.Soak, 0, steps.Preheat, night.Soak);
        foreach (var (index, pie) in steps.Pies.Index())
        {
            Following(StepKind.Rack, index + 1, pie.Bake, night.Rack);
        }

        if (night.Holding is { } holding)
        {
            Following(StepKind.PutAway, 0, steps.Pies[^1].Serve, holding);
        }

        return [.. timeline.OrderBy(step => step.Start).ThenBy(step => step.Kind).ThenBy(step => step.Number)];

        void Following(StepKind kind, int number, int after, int minutes) =>
            Add(kind, number, starts[after] + steps.Steps[after].Minutes, minutes, false, canWait[after]);

        void Add(StepKind kind, int number, int start, int minutes, bool needsHands, int wait, int? by = null) =>
            timeline.Add(new TimelineStep(
                IdOf(kind, number),
                kind,
                number,
                night.Clock.At(start),
                night.Clock.At(start + minutes),
                needsHands,
                Duration.FromMinutes(wait),
                by));
    }

    public static string IdOf(StepKind kind, int number)
    {
        var word = kind switch
        {
            StepKind.Shop => "shop",
            StepKind.Preferment => "preferment",
            StepKind.WakeYeast => "wake-yeast",
            StepKind.Mix => "mix",
            StepKind.Knead => "knead",
            StepKind.BulkRest => "bulk-rest",
            StepKind.Ball => "ball",
            StepKind.ColdFerment => "cold-ferment",
            StepKind.Temper => "temper",
            StepKind.Sauce => "sauce",
            StepKind.GrateCheese => "grate-cheese",
            StepKind.PrepareToppings => "prepare-toppings",
            StepKind.SecondMix => "second-mix",
            StepKind.SecondRise => "second-rise",
            StepKind.Preheat => "preheat",
            StepKind.Soak => "soak",
            StepKind.Shape => "shape",
            StepKind.Top => "top",
            StepKind.Bake => "bake",
            StepKind.Rack => "rack",
            StepKind.Serve => "serve",
            StepKind.Own => "own",
            StepKind.PutAway => "put-away",
        };
        return number == 0
            ? word
            : string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{word}-{number}");
    }

    /// <summary>Whose hands each step takes; null for the host's and for none.</summary>
    private static int?[] By(NightSteps steps, int[] starts)
    {
        List<int> work = [.. Enumerable.Range(0, starts.Length).Where(i => steps.Steps[i].Presence == Presence.Hands)];
        var people = steps.Night.Crew.Assign([.. work.Select(i => (steps.Steps[i].Kind, steps.Steps[i].Number, starts[i], starts[i] + steps.Steps[i].Minutes))], evening: starts[steps.Waves[0]]);
        var by = new int?[starts.Length];
        foreach (var (i, person) in work.Zip(people))
        {
            by[i] = person == 0 ? null : person;
        }

        return by;
    }

    /// <summary>
    /// From the latest schedule that still puts every pie on the table when planned and lets nothing begin earlier. What
    /// comes after a step moves along where its lags ask for it. Free times are looked at, hands are not.
    /// </summary>
    private static int[] CanWait(NightSteps steps, int[] starts)
    {
        var earliest = starts.ToArray();
        var (_, latest) = steps.Bounds(steps.Night.First);
        foreach (var pie in steps.Pies)
        {
            latest[pie.Serve] = starts[pie.Serve];
        }

        if (!steps.Network().Narrow(earliest, latest, steps, out var stuck))
        {
            throw new InvalidOperationException($"The schedule breaks a lag of {steps.Steps[stuck]}.");
        }

        return [.. latest.Zip(starts, (late, start) => late - start)];
    }
}
