using GameNight.Planning.Appetite;
using GameNight.Planning.Dough;
using GameNight.Planning.Fermentation;
using GameNight.Planning.Live;
using GameNight.Planning.Timeline;
using GameNight.Planning.Toppings;
using NodaTime;

namespace GameNight.Planning;

/// <summary>
/// Turns everything known about a night into everything the host needs. The same night, moment and effort always give the
/// same plan. Immutable and safe to share between threads.
/// </summary>
public sealed class NightPlanner(ReferenceTables tables)
{
    /// <summary>Raised whenever the same snapshot would give another plan.</summary>
    public const string EngineVersion = "12";

    private readonly SnapshotCheck _check = new(tables);

    public ReferenceTables Tables => tables;

    /// <param name="now">
    /// Steps cannot start before it; not part of the fingerprint. An evening around a dough that is begun is planned as of
    /// its shopping, so that what is under way is not said to be too late.
    /// </param>
    /// <param name="progress">Receives the quick plan as soon as it is there.</param>
    /// <exception cref="ArgumentException">The snapshot has problems: ask <see cref="SnapshotCheck"/> first.</exception>
    /// <exception cref="OperationCanceledException"><paramref name="cancellation"/> was signalled.</exception>
    public NightPlan Plan(
        NightSnapshot night, Instant now, Effort effort, IProgress<NightPlan>? progress = null,
        CancellationToken cancellation = default)
    {
        (night, var forecast, var pies) = Opened(night);
        var onSecond = SplitPlanner.PiesOnSecondDough(NightRequests.Split(night, forecast, pies.Count.Value.Value, tables));
        if (night.Begun is { } begun)
        {
            now = Instant.Min(now, begun.Steps.Min(step => step.Start));
        }

        var dough = night.Begun?.Dough ?? DoughPlan.For(
            pies.Count.Value.Value - onSecond, night.Shape, night.Formula, night.Kitchen.BatchCapacity, night.ByHand.Ball,
            Hydration.For(night.Formula, night.Kitchen.Flour, night.Kitchen.Room, tables.Flour), tables.Dough);

        var oven = NightOven.For(night, tables);
        var quick = Finish(night, now, forecast, pies, dough, onSecond, oven, Effort.Quick, cancellation);
        if (effort == Effort.Quick)
        {
            return quick;
        }

        progress?.Report(quick);
        return Finish(night, now, forecast, pies, dough, onSecond, oven, effort, cancellation);
    }

    /// <summary>The split alone, for a look at what another night would do; everything that comes after it is left out.</summary>
    /// <exception cref="ArgumentException">The snapshot has problems.</exception>
    /// <exception cref="OperationCanceledException"><paramref name="cancellation"/> was signalled.</exception>
    public ToppingSplit Split(NightSnapshot night, Effort effort, CancellationToken cancellation = default)
    {
        (night, var forecast, var pies) = Opened(night);
        return SplitPlanner.For(NightRequests.Split(night, forecast, pies.Count.Value.Value, tables), effort, cancellation);
    }

    /// <summary>How a night stands while it is on: what is done, what runs, what comes when.</summary>
    /// <param name="plan">Made from the same night.</param>
    /// <param name="marks">What was tapped and not taken back, in any order.</param>
    /// <returns>Null when the plan has no pie on the table.</returns>
    public LiveEvening? Live(NightSnapshot night, NightPlan plan, IReadOnlyList<LiveMark> marks, Instant now)
    {
        return LiveNight.Of(LiveRequest(night, plan, now), plan.Timeline, marks, now, tables.Steps);
    }

    /// <summary>Another order of what is left of a night that is on, where the kept one breaks a limit or comes late.</summary>
    /// <param name="plan">Made from the same night.</param>
    /// <param name="marks">What was tapped and not taken back, in any order.</param>
    /// <returns>Null when none is needed, or none better was found within the effort.</returns>
    /// <exception cref="OperationCanceledException"><paramref name="cancellation"/> was signalled.</exception>
    public LiveOrder? AnotherOrder(
        NightSnapshot night, NightPlan plan, IReadOnlyList<LiveMark> marks, Instant now, Effort effort, CancellationToken cancellation = default) =>
        LiveNight.AnotherOrder(LiveRequest(night, plan, now), plan.Timeline, marks, now, tables.Steps, effort, cancellation);

    private TimelineRequest LiveRequest(NightSnapshot night, NightPlan plan, Instant now)
    {
        var balls = plan.Oven?.Balls ?? NightBalls.For(night, plan.Dough, tables);
        return NightRequests.Timeline(
            night, now, plan.Dough, plan.Split.Pies.Count, plan.Split, plan.SauceToMake, plan.Oven?.Soak.Value, NightBalls.Tempering(balls), tables);
    }

    /// <summary>The night as it is planned with: late choices followed, a begun dough as it is, what is made here on the labels.</summary>
    private (NightSnapshot Night, SlicesForecast Forecast, PiePlan Pies) Opened(NightSnapshot night)
    {
        if (_check.Problems(night) is [var problem, ..])
        {
            throw new ArgumentException($"{problem.Field}: {problem.Fault}", nameof(night));
        }

        var (forecast, pies) = NightForecast.For(night, tables);
        night = BegunDough.Opened(LateChoices.Followed(night));
        return (night with { Menu = NightSauceAndCheese.MenuOf(night, tables) }, forecast, pies);
    }

    /// <summary>A host may ask to look longer; the quick answer stays quick.</summary>
    private static Effort ForSplit(NightSnapshot night, Effort effort) =>
        effort != Effort.Quick && night.ByHand.Split?.Slices is { } slices && slices > effort.Slices ? new Effort(slices) : effort;

    private NightPlan Finish(
        NightSnapshot night, Instant now, SlicesForecast forecast, PiePlan pies, DoughPlan dough, int onSecond, NightOven? oven, Effort effort,
        CancellationToken cancellation)
    {
        var count = pies.Count.Value.Value;
        var second = SecondDoughPlan.For(night.Menu.SecondDough?.Recipe, onSecond, night.Kitchen.Oven, night.Kitchen.Scale);
        var rescue = night is { Begun: not null, Late.Rescue: { } chosen } ? RescuePlan.Of(night, chosen, tables) : null;
        var split = SplitPlanner.For(NightRequests.Split(night, forecast, count, tables), ForSplit(night, effort), cancellation);
        var (sauce, cheese, amounts) = NightRequests.Spreads(night, split);
        var sauceToMake = NightSauceAndCheese.Sauce(night, amounts, tables);
        var cheeseToGrate = NightSauceAndCheese.Cheese(night, amounts, tables);
        var balls = NightBalls.For(night, dough, tables);
        var tempering = NightBalls.Tempering(balls);
        var request = NightRequests.Timeline(night, now, dough, count, split, sauceToMake, oven?.Soak.Value, tempering, tables);
        var timeline = Backwards.From(request, effort, cancellation);
        timeline = effort == Effort.Quick ? timeline : timeline with { OnTime = OnTime.Of(request, timeline, tables.Steps) };
        var journey = NightRequests.Journey(night, timeline, dough, tempering, tables);
        var yeast = night.Begun?.Yeast ?? YeastDoseModel.For(
            journey, night.Formula, dough.Flour, night.ByHand.Yeast, tables.Fermentation, tables.Dough,
            tables.Materials);
        var offHours = NightRequests.OffItsHours(night, timeline, tempering, tables);

        return new NightPlan(
            EngineVersion,
            effort == Effort.Quick ? PlanStage.Quick : PlanStage.Improved,
            forecast,
            pies,
            night.Begun is null ? dough.WithYeast(yeast.ShareOfFlour.Value).Rounded(night.Kitchen.Scale) : dough,
            night.Begun?.Water ?? WaterTemperature.For(NightRequests.Water(night, dough, tables.Dough), tables.Flour.Heat),
            yeast,
            sauce,
            cheese,
            amounts,
            split,
            timeline,
            NightCautions.For(night, count, tables.Safety),
            [.. NotesToSettle.Of(night) is { } notes ? [notes] : Array.Empty<Conflict>(), .. dough.Conflicts, .. night.Kitchen.FridgeBalls < dough.Balls ? [new FridgeTooSmall(dough.Balls, night.Kitchen.FridgeBalls.Value)] : Array.Empty<Conflict>(), .. second?.Conflicts ?? [], .. second is not null && dough.Balls == 0 ? [new EveryPieOnSecondDough(count)] : Array.Empty<Conflict>(), .. split.Conflicts, .. timeline.Conflicts, .. OwnPiesThatWait.Among(night, split, timeline), .. dough.Balls > 0 ? yeast.Conflicts : [],
                .. offHours is null ? Array.Empty<Conflict>() : [offHours], .. rescue?.Yeast.Conflicts ?? [], .. sauceToMake?.Conflicts ?? []],
            effort.Slices,
            NightRequests.Ripening(night, timeline, dough, journey, yeast.ShareOfFlour.Value, tables),
            sauceToMake?.MadeAt(NightRequests.SauceReady(night, timeline)),
            cheeseToGrate,
            NightSauceAndCheese.WaterLoads(night, split, sauceToMake, cheeseToGrate, tables),
            oven?.Plan(dough, balls, amounts, onSecond, timeline),
            rescue,
            second);
    }
}
