using GameNight.Planning.Quantities;
using NodaTime;

namespace GameNight.Planning.Heat;

/// <summary>When the baking surface is ready, what pies do to it, and how long balls need on both sides of the fridge.</summary>
/// <param name="Place">What is baked on, without its readings.</param>
/// <param name="IsAssumed">Nobody said what it is.</param>
/// <param name="Readiness">By the model and by the rule of thumb.</param>
/// <param name="Soak">What the timeline takes: the model's when it leads, else the kitchen's own.</param>
/// <param name="Recovery">By the model, after one pie; null when that takes more than six hours.</param>
/// <param name="KitchenRecovery">What the timeline takes.</param>
/// <param name="FastestFirst">
/// Surfaces in the order in which they brown a base at the same temperature. An order only: no temperature of a pie follows.
/// </param>
/// <param name="Learned">From readings, once there are two.</param>
/// <param name="Evening">Null without bakes.</param>
public sealed record OvenPlan(
    BakingPlace Place,
    bool IsAssumed,
    SurfaceReadiness Readiness,
    Explained<Duration> Soak,
    Estimate<Duration>? Recovery,
    Duration KitchenRecovery,
    IReadOnlyList<SurfaceKind> FastestFirst,
    BallRests Balls,
    LearnedHeat? Learned = null,
    SurfaceEvening? Evening = null);

/// <summary>How long balls take to be warm enough to shape, and to be as cold as the fridge. Null: not within two days.</summary>
/// <param name="Ball">Mass of one.</param>
/// <param name="Fridge">Measured, or as assumed of homes.</param>
public sealed record BallRests(
    Grams Ball,
    int Balls,
    Celsius Room,
    Celsius Fridge,
    Celsius Mixed,
    Estimate<Duration>? TemperBoxed,
    Estimate<Duration>? TemperOpen,
    Estimate<Duration>? ColdBoxed,
    Estimate<Duration>? ColdOpen);

/// <summary>The surface from switching on until after the last pie: one place, where several bake at once.</summary>
/// <param name="Course">Every five minutes, and where a pie goes in and comes out.</param>
public sealed record SurfaceEvening(Instant SwitchOn, IReadOnlyList<SurfaceMoment> Course, IReadOnlyList<PieOnSurface> Pies);

/// <param name="Top">Of the surface, where the pies lie.</param>
/// <param name="Iron">The plate above; null without one.</param>
public sealed record SurfaceMoment(Duration AfterSwitchOn, Celsius Air, Celsius Top, Celsius? Iron = null);

/// <summary>What one pie did to the surface under it.</summary>
/// <param name="Number">Of the pie in baking order.</param>
/// <param name="Back">After the bake, until the surface is ready again; null when the next pie or the end comes before.</param>
public sealed record PieOnSurface(int Number, Instant Start, Instant End, Celsius AtStart, Celsius AtEnd, Duration? Back = null);
