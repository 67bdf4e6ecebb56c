using GameNight.Planning.Dough;
using NodaTime;

namespace GameNight.Planning.Timeline;

/// <summary>
/// A time in which the host's hands are not there: work, sleep, a round of the game. Helpers come to the host's kitchen, so
/// theirs are not there either.
/// </summary>
public sealed record HostAway(Instant From, Instant Until);

/// <summary>The window of the cold ferment, from balls in the fridge to balls out of it.</summary>
public sealed record ColdFerment(Duration Shortest, Duration Wanted, Duration Longest);

/// <summary>Expected durations of the work, for one unit each.</summary>
/// <param name="Mix">Weigh and mix one batch.</param>
/// <param name="Knead">Knead one batch.</param>
/// <param name="BulkRest">The dough rests after kneading, before balling; no hands.</param>
/// <param name="BallEach">Divide and round one ball.</param>
/// <param name="Temper">Balls out of the fridge until the core is warm enough to shape; no hands.</param>
/// <param name="Preheat">Oven on until its air is at the set-point; no hands.</param>
/// <param name="Soak">After the air is hot until stone, steel or iron is ready; no hands.</param>
/// <param name="Shape">Shape one ball; topping it and baking are steps of their own.</param>
/// <param name="Recovery">The surface gets its heat back after a pie; no hands.</param>
/// <param name="Rack">The pie rests on the rack until the steam stops; no hands.</param>
public sealed record StepDurations(
    Duration Shop,
    Duration Mix,
    Duration Knead,
    Duration BulkRest,
    Duration BallEach,
    Duration Temper,
    Duration Sauce,
    Duration GrateCheese,
    Duration PrepareToppings,
    Duration Preheat,
    Duration Soak,
    Duration Shape,
    Duration Top,
    Duration Bake,
    Duration Recovery,
    Duration Rack,
    Duration Serve)
{
    /// <summary>How long one step of a kind takes; null where that depends on the batch or on other steps.</summary>
    public Duration? Of(StepKind kind) => kind switch
    {
        StepKind.Shop => Shop,
        StepKind.Mix => Mix,
        StepKind.Knead => Knead,
        StepKind.BulkRest => BulkRest,
        StepKind.Temper => Temper,
        StepKind.Sauce => Sauce,
        StepKind.GrateCheese => GrateCheese,
        StepKind.PrepareToppings => PrepareToppings,
        StepKind.Preheat => Preheat,
        StepKind.Soak => Soak,
        StepKind.Shape => Shape,
        StepKind.Top => Top,
        StepKind.Bake => Bake,
        StepKind.Rack => Rack,
        StepKind.Serve => Serve,
        StepKind.Ball or StepKind.ColdFerment or StepKind.Preferment or StepKind.WakeYeast or StepKind.SecondMix or StepKind.SecondRise or StepKind.Own or StepKind.PutAway => null,
    };
}

/// <summary>A part of the dough that is mixed ahead.</summary>
/// <param name="Mix">How long mixing it takes, for all batches together.</param>
/// <param name="Before">From the start of mixing it to the start of mixing the dough, or a little longer.</param>
public sealed record PrefermentWork(Duration Mix, Duration Before);

/// <summary>The second dough: mixed once for all its pies, before anything is shaped.</summary>
/// <param name="Rise">From mixed until the first of its pies is shaped, or a little longer; whatever comes later waits its turn.</param>
/// <param name="FirstPie">Number of the first pie that lies on it.</param>
public sealed record SecondDoughWork(Duration Mix, Duration Rise, int FirstPie);

/// <summary>Everything the timeline depends on.</summary>
/// <param name="ServeAt">The first pie is on the table.</param>
/// <param name="Now">Steps cannot start before now. Not part of a plan's fingerprint.</param>
/// <param name="Batches">Dough batches, 1 or more (0 when there are no pies).</param>
/// <param name="Pies">Pies in baking order; the first <paramref name="OwnPies"/> are kept apart: own pies, and those of the second dough.</param>
/// <param name="PiesPerBake">
/// How many pies the oven bakes at once, 1 to 6. Each has its own surface with its own recovery, so they need not begin together.
/// </param>
/// <param name="Hands">The host and helpers, 1 to 8.</param>
/// <param name="MixAt">The host's own choice of when mixing starts, or null.</param>
/// <param name="BegunDough">
/// Steps of a dough that is begun, from shopping to balling: they stand as they are, whatever hours and kitchen are now. Null
/// while the dough is still to be placed.
/// </param>
/// <param name="Own">Steps of the host's own, none in a circle; null for none.</param>
/// <param name="Helpers">What each helper does, one for each pair of hands but the host's; null when all do everything.</param>
/// <param name="ForCooks">Steps that only who does everything does; null for none.</param>
/// <param name="Holding">How long the last pie may stand on the table; null to say nothing of it.</param>
/// <param name="YeastWakes">How long dry yeast foams before it is mixed; null when it goes in as it is.</param>
/// <param name="Bowls">Dough of a batch is in one from mixing to balling, 1 or more; null when there are enough.</param>
/// <param name="HobRings">Rings of the hob, 1 or more: the sauce takes one; null when there are enough.</param>
/// <param name="BallsAhead">Wished for: the first balls are warm so long before they are shaped; null for as long as the oven.</param>
public sealed record TimelineRequest(
    Instant ServeAt,
    Instant Now,
    IReadOnlyList<HostAway> Away,
    int Batches,
    int Balls,
    int Pies,
    int OwnPies,
    int PiesPerBake,
    int Hands,
    KneadingWay Kneading,
    ColdFerment ColdFerment,
    StepDurations Durations,
    Instant? MixAt,
    IReadOnlyList<TimelineStep>? BegunDough = null,
    PrefermentWork? Preferment = null,
    SecondDoughWork? SecondDough = null,
    IReadOnlyList<OwnStep>? Own = null,
    IReadOnlyList<HelperSkill>? Helpers = null,
    IReadOnlyList<StepKind>? ForCooks = null,
    Duration? Holding = null,
    Duration? YeastWakes = null,
    int? Bowls = null,
    int? HobRings = null,
    Duration? BallsAhead = null);
