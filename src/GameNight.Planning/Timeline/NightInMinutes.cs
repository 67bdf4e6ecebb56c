using GameNight.Planning.Dough;
namespace GameNight.Planning.Timeline;

/// <summary>A request in whole minutes from the serving time: what every part of the timeline computes with.</summary>
internal sealed class NightInMinutes
{
    /// <summary>How far before the longest cold ferment a first step may lie.</summary>
    private const int RoomBefore = 8 * ServingClock.Day;

    private const int RoomAfter = 4 * ServingClock.Day;

    /// <exception cref="ArgumentException">A count is out of its range.</exception>
    public NightInMinutes(TimelineRequest request)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(request.Batches, 1);
        ArgumentOutOfRangeException.ThrowIfLessThan(request.PiesPerBake, 1);
        ArgumentOutOfRangeException.ThrowIfLessThan(request.Hands, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(request.Hands, 100);
        ArgumentOutOfRangeException.ThrowIfNegative(request.OwnPies);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(request.OwnPies, request.Pies);
        ArgumentOutOfRangeException.ThrowIfNegative(request.Balls);
        ArgumentOutOfRangeException.ThrowIfLessThan(request.Bowls ?? 1, 1);
        ArgumentOutOfRangeException.ThrowIfLessThan(request.HobRings ?? 1, 1);

        Clock = new ServingClock(request.ServeAt);
        Pies = request.Pies;
        OwnPies = request.OwnPies;
        PiesPerBake = request.PiesPerBake;
        Crew = Crew.Of(request);
        IsKneadedByHand = request.Kneading == KneadingWay.ByHand;
        MixAt = request.MixAt is { } mixAt ? Clock.Before(mixAt) : null;
        Away = new AwayWindows(request.Away.Select(a => (Clock.Before(a.From), Clock.After(a.Until))));

        Shortest = ServingClock.LengthUp(request.ColdFerment.Shortest);
        Wanted = ServingClock.LengthDown(request.ColdFerment.Wanted);
        Longest = ServingClock.LengthDown(request.ColdFerment.Longest);
        First = -Longest - RoomBefore;
        Last = RoomAfter;
        Now = Math.Max(First, Clock.After(request.Now));

        var lengths = request.Durations;
        Shop = ServingClock.LengthUp(lengths.Shop);
        Preferment = request is { BegunDough: null, Preferment: { } ahead }
            ? (ServingClock.LengthUp(ahead.Mix), ServingClock.LengthUp(ahead.Before),
                ServingClock.LengthUp(ahead.Before * (1 + TimelineLimits.PrefermentLonger)))
            : null;
        SecondDough = request.SecondDough is { } second
            ? (ServingClock.LengthUp(second.Mix), ServingClock.LengthUp(second.Rise), second.FirstPie)
            : null;
        YeastWakes = request is { BegunDough: null, YeastWakes: { } wakes } ? ServingClock.LengthUp(wakes) : null;
        Bowls = request.Bowls ?? int.MaxValue;
        Mix = ServingClock.LengthUp(lengths.Mix);
        Knead = ServingClock.LengthUp(lengths.Knead);
        BulkRest = ServingClock.LengthUp(lengths.BulkRest);
        var batches = request.BegunDough is null ? request.Batches : 0;
        Balling = [.. Enumerable.Range(0, batches).Select(batch => ServingClock.LengthUp(
            lengths.BallEach * BallsOf(batch, request.Balls, batches)))];
        BegunDough = request.BegunDough;
        Balled = BegunDough?.Where(step => step.Kind == StepKind.Ball).Max(step => Clock.After(step.End)) ?? First;
        Temper = ServingClock.LengthUp(lengths.Temper);
        Sauce = ServingClock.LengthUp(lengths.Sauce);
        GrateCheese = ServingClock.LengthUp(lengths.GrateCheese);
        PrepareToppings = ServingClock.LengthUp(lengths.PrepareToppings);
        Preheat = ServingClock.LengthUp(lengths.Preheat);
        Soak = ServingClock.LengthUp(lengths.Soak);
        Shape = ServingClock.LengthUp(lengths.Shape);
        Top = ServingClock.LengthUp(lengths.Top);
        Bake = ServingClock.LengthUp(lengths.Bake);
        Recovery = ServingClock.LengthUp(lengths.Recovery);
        Rack = ServingClock.LengthUp(lengths.Rack);
        Serve = ServingClock.LengthUp(lengths.Serve);
        BallsAhead = ServingClock.LengthDown(request.BallsAhead ?? TimelineLimits.ReadyAhead);
        Holding = request.Holding is { } holding ? ServingClock.LengthDown(holding) : null;
        Own = [.. (request.Own ?? []).Select(OwnIn)];
        Stations = new Stations(request.HobRings, Own.Select(own => own.Step));
    }

    public ServingClock Clock { get; }
    public int Pies { get; }
    public int OwnPies { get; }
    public int PiesPerBake { get; private set; }
    public int Hands => Crew.People;

    public Crew Crew { get; private set; }

    /// <summary>Batches still to be placed: none once the dough is begun.</summary>
    public int Batches => Balling.Count;

    /// <summary>The steps of a dough that is begun, or null.</summary>
    public IReadOnlyList<TimelineStep>? BegunDough { get; }

    /// <summary>When the last ball of a begun dough is in the fridge; the first minute looked at when none is begun.</summary>
    public int Balled { get; }
    public bool IsKneadedByHand { get; }
    public int? MixAt { get; }
    public AwayWindows Away { get; }
    public int Now { get; }

    /// <summary>The first minute looked at.</summary>
    public int First { get; }

    /// <summary>The last minute looked at.</summary>
    public int Last { get; }

    public int Shortest { get; }
    public int Wanted { get; }
    public int Longest { get; }

    public int Shop { get; }

    /// <summary>How long a preferment is mixed, and how long at least and at most before the dough that begins; null without one.</summary>
    public (int Mix, int AtLeast, int AtMost)? Preferment { get; }

    /// <summary>How long the second dough is mixed and rises, and the number of the first pie on it; null without one.</summary>
    public (int Mix, int Rise, int FirstPie)? SecondDough { get; }

    /// <summary>How long the yeast of each batch foams before it is mixed; null when it goes in as it is.</summary>
    public int? YeastWakes { get; }

    /// <summary>So many batches are between mixing and balling at once.</summary>
    public int Bowls { get; }

    public int Mix { get; }
    public int Knead { get; }
    public int BulkRest { get; }

    /// <summary>Balling each batch; the first batches have the odd balls.</summary>
    public IReadOnlyList<int> Balling { get; }

    public int Temper { get; }
    public int Sauce { get; }
    public int GrateCheese { get; }
    public int PrepareToppings { get; }
    public int Preheat { get; }
    public int Soak { get; }
    public int Shape { get; }
    public int Top { get; }
    public int Bake { get; }
    public int Recovery { get; }
    public int Rack { get; }
    public int Serve { get; }

    /// <summary>Wished for: the first balls are warm so long before they are shaped.</summary>
    public int BallsAhead { get; }

    /// <summary>How long the last pie may stand; null when nothing is said of it.</summary>
    public int? Holding { get; }

    /// <summary>None in a circle.</summary>
    public IReadOnlyList<OwnInMinutes> Own { get; }

    public Stations Stations { get; }

    /// <summary>The same night with other hands and another oven.</summary>
    public NightInMinutes With(int hands, int piesPerBake)
    {
        var other = (NightInMinutes)MemberwiseClone();
        other.Crew = Crew.With(hands);
        other.PiesPerBake = piesPerBake;
        return other;
    }

    /// <summary>It needs the oven at another heat, and comes when no pie is baked any more: by its tie, or by the clock.</summary>
    public bool HasOvenAfterPies(OwnStep step) => step.Takes == Station.OvenAtOtherHeat && ComesLate(step);

    /// <summary>It needs the oven at another heat, and comes before it is heated up for the pies.</summary>
    public bool HasOvenBeforePies(OwnStep step) => step.Takes == Station.OvenAtOtherHeat && !ComesLate(step);

    private bool ComesLate(OwnStep step) => (step.From is { } from && Clock.After(from) >= 0) || step.After switch
    {
        { Step: StepKind.Preheat or StepKind.Shape or StepKind.Top or StepKind.Bake or StepKind.Serve } => true,
        { Step: StepKind.Own, Number: var number } => Own.Any(own => own.Step.Number == number && ComesLate(own.Step)),
        _ => false,
    };

    /// <summary>What stands with the begun dough is a time like any other.</summary>
    private OwnInMinutes OwnIn(OwnStep step)
    {
        var minutes = ServingClock.LengthUp(step.Length);
        var ended = (BegunDough ?? []).Where(other => step.After is { } tie && OwnSteps.Is(other, tie)).Select(other => Clock.After(other.End));
        return new OwnInMinutes(
            step,
            minutes,
            ended.Append(step.From is { } from ? Clock.After(from) : First).Append(First).Max(),
            Math.Min(Last, step.Until is { } until ? Clock.Before(until) : Last) - minutes);
    }

    private static int BallsOf(int batch, int balls, int batches) =>
        (balls / batches) + (batch < balls % batches ? 1 : 0);
}

/// <param name="Earliest">When it may begin by the clock alone; likewise <paramref name="Latest"/>.</param>
internal readonly record struct OwnInMinutes(OwnStep Step, int Minutes, int Earliest, int Latest)
{
    /// <summary>It is not moved: everything else is placed around it.</summary>
    public bool IsAtOneTime => Earliest == Latest;
}
