using GameNight.Planning.Dough;
using GameNight.Planning.Timeline;
using NodaTime;

namespace GameNight.Planning.Tests.Timeline;

/// <summary>A usual game night, for tests to change one thing about. All times of day are UTC.</summary>
internal static class Evening
{
    /// <summary>A Saturday.</summary>
    public static readonly LocalDate Saturday = new(2026, 3, 14);

    public static Instant SaturdayAt(int hour, int minute = 0) => On(0, hour, minute);

    /// <param name="day">Days from that Saturday: -2 is Thursday.</param>
    public static Instant On(int day, int hour, int minute = 0) =>
        Saturday.PlusDays(day).At(new LocalTime(hour, minute)).InUtc().ToInstant();

    public static StepDurations Durations { get; } = new(
        Shop: Duration.FromMinutes(60),
        Mix: Duration.FromMinutes(15),
        Knead: Duration.FromMinutes(20),
        BulkRest: Duration.FromHours(2),
        BallEach: Duration.FromMinutes(2),
        Temper: Duration.FromHours(2),
        Sauce: Duration.FromMinutes(40),
        GrateCheese: Duration.FromMinutes(15),
        PrepareToppings: Duration.FromMinutes(25),
        Preheat: Duration.FromMinutes(25),
        Soak: Duration.FromMinutes(60),
        Shape: Duration.FromMinutes(4),
        Top: Duration.FromMinutes(3),
        Bake: Duration.FromMinutes(7),
        Recovery: Duration.FromMinutes(12),
        Rack: Duration.FromMinutes(3),
        Serve: Duration.FromMinutes(2));

    public static ColdFerment ColdFerment { get; } =
        new(Duration.FromHours(40), Duration.FromHours(48), Duration.FromHours(72));

    /// <summary>Six pies on Saturday at half past seven, one pair of hands, asked a week before.</summary>
    public static TimelineRequest Usual { get; } = new(
        ServeAt: SaturdayAt(19, 30),
        Now: On(-7, 12),
        Away: [.. Sleep(-8, 3), .. Work(-2, -1)],
        Batches: 2,
        Balls: 6,
        Pies: 6,
        OwnPies: 0,
        PiesPerBake: 1,
        Hands: 1,
        Kneading: KneadingWay.ByHand,
        ColdFerment,
        Durations,
        MixAt: null);

    public static TimelineRequest WithPies(this TimelineRequest request, int pies) =>
        request with { Pies = pies, Balls = pies };

    /// <summary>From eleven at night to seven, the nights before the mornings of these days.</summary>
    public static IEnumerable<HostAway> Sleep(int firstDay, int lastDay) =>
        Enumerable.Range(firstDay, lastDay - firstDay + 1).Select(day => new HostAway(On(day - 1, 23), On(day, 7)));

    public static IEnumerable<HostAway> Work(int firstDay, int lastDay) =>
        Enumerable.Range(firstDay, lastDay - firstDay + 1).Select(day => new HostAway(On(day, 8, 30), On(day, 17, 30)));

    public static HostTimeline Plan(this TimelineRequest request, Effort effort) =>
        Backwards.From(request, effort, TestContext.Current.CancellationToken);

    public static TimelineStep Step(this HostTimeline timeline, string id) => timeline.Steps.Single(step => step.Id == id);
}
