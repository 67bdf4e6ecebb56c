using NodaTime;

namespace GameNight.Planning.Timeline;

/// <summary>
/// How long a thing may wait before it suffers. Common practice, no source: numbers a host would nod at, kept in one
/// place. The windows that a host sets (cold ferment, durations) are in the request.
/// </summary>
public static class TimelineLimits
{
    /// <summary>A topped pie sticks to the peel within minutes.</summary>
    public static readonly Duration ToppedBeforeOven = Duration.FromMinutes(5);

    /// <summary>A shaped base dries and springs back.</summary>
    public static readonly Duration ShapedBeforeTopped = Duration.FromMinutes(10);

    /// <summary>After the rack has done its work the pie only gets cold.</summary>
    public static readonly Duration RackedBeforeServed = Duration.FromMinutes(5);

    /// <summary>Between mixing and kneading: the flour takes up water, then a skin forms.</summary>
    public static readonly Duration MixedBeforeKneaded = Duration.FromMinutes(30);

    /// <summary>Foam of woken yeast falls together again.</summary>
    public static readonly Duration WokenBeforeMixed = Duration.FromMinutes(10);

    /// <summary>Beyond the bulk rest: at room temperature the dough runs ahead of the plan.</summary>
    public static readonly Duration RestedBeforeBalled = Duration.FromMinutes(60);

    /// <summary>A preferment may stand this much longer than it is asked to, as a share: it passes its best slowly.</summary>
    public const double PrefermentLonger = 0.25;

    /// <summary>Shopping close to the first mixing: answers stay open longer and what is fresh stays fresh.</summary>
    public static readonly Duration ShoppedBeforeMixed = Duration.FromHours(24);

    /// <summary>Sauce, grated cheese and cut toppings, chilled, before the first pie is topped.</summary>
    public static readonly Duration PreparedBeforeTopped = Duration.FromHours(24);

    /// <summary>Wished for, not demanded: a breather between the last preparation and the first ball.</summary>
    public static readonly Duration BreatherBeforeShaping = Duration.FromMinutes(30);

    /// <summary>Wished for: the oven is ready this long before it is needed, and first balls at least so long, should something slip.</summary>
    public static readonly Duration ReadyAhead = Duration.FromMinutes(10);

    /// <summary>However long the first balls take to warm, they are not planned warm longer ahead than this.</summary>
    public static readonly Duration BallsReadyAhead = Duration.FromMinutes(30);

    /// <summary>The hot oven stands empty this long at most before the first pie.</summary>
    public static readonly Duration HotBeforeFirstPie = Duration.FromMinutes(30);

    /// <summary>The hot oven stands empty this long at most between two pies, for a round of the game.</summary>
    public static readonly Duration HotBetweenPies = Duration.FromHours(2);

    /// <summary>More than this after the first pie and the host is told that the last one is late.</summary>
    public static readonly Duration LastPieUnremarked = Duration.FromMinutes(90);

    /// <summary>A tempered ball waits this long to be shaped; then it grows slack and the next wave leaves the fridge.</summary>
    public static readonly Duration TemperedBeforeShaped = Duration.FromHours(2);

    /// <summary>A second dough that has risen waits this long for the first pie of the evening to be shaped.</summary>
    public static readonly Duration RisenBeforeShaped = Duration.FromMinutes(45);

    /// <summary>An own step that comes after something is begun by then: what is wanted the day after is not of this night.</summary>
    public static readonly Duration OwnStepAfter = Duration.FromHours(24);

    /// <summary>However cold fridge and room are: who needs longer warms the balls otherwise.</summary>
    public static readonly Duration LongestTemper = Duration.FromHours(6);
}
