using GameNight.Planning.Quantities;
using NodaTime;

namespace GameNight.Planning.Heat;

/// <summary>Which of the two leads the plan.</summary>
public enum SoakLead
{
    RuleOfThumb,
    Model,
}

/// <summary>The soak is what the model says of this surface at this set-point.</summary>
/// <param name="Readings">How many the model learned from; 0 before any.</param>
public sealed record SoakFromModel(SurfaceKind Surface, double ThicknessMillimetres, Celsius SetPoint, int Readings) : Reason;

/// <summary>The soak is the rule of thumb, whatever the surface.</summary>
/// <param name="IsForWantOfModel">The model never sees the surface ready, so it cannot lead.</param>
public sealed record SoakFromRule(Duration AfterAirIsHot, bool IsForWantOfModel) : Reason;

/// <summary>How long after the air a baking surface is ready: the model and the rule of thumb side by side.</summary>
/// <param name="AfterAirIsHot">
/// By the model, until the top is within 5 K of the set-point. Null when it is not within six hours, as with readings that
/// say that hardly any heat arrives.
/// </param>
/// <param name="RuleOfThumb">At least this long.</param>
public sealed record SurfaceReadiness(
    BakingSurface Surface, Celsius SetPoint, Estimate<Duration>? AfterAirIsHot, Duration RuleOfThumb, int Readings)
{
    private static readonly Duration Horizon = Duration.FromHours(6);

    /// <param name="learned">From readings of this surface in this oven, or null; then the oven's own multiplier counts.</param>
    /// <exception cref="ArgumentOutOfRangeException">Surface or oven is outside its range, which the message names.</exception>
    public static SurfaceReadiness For(BakingSurface surface, Oven oven, MaterialsTable table, LearnedHeat? learned = null)
    {
        var heat = learned?.Multiplier ?? LearnedHeat.Unlearned(oven.HeatMultiplier, table);
        var (expected, fast, slow) = (After(heat.Expected), After(heat.High), After(heat.Low));
        return new SurfaceReadiness(
            surface,
            oven.SetPoint,
            expected is { } time && fast is { } low ? new Estimate<Duration>(time, low, slow ?? Horizon) : null,
            Duration.FromMinutes(table.Ready.RuleOfThumbMinutes),
            learned?.Readings ?? 0);

        Duration? After(double multiplier)
        {
            var run = new OvenRun(surface, oven with { HeatMultiplier = multiplier }, table, oven.Room.Value);
            var ready = oven.SetPoint.Value - table.Ready.WithinKelvin;
            return run.UntilTop(ready, oven.Preheat + Horizon) is { } sinceSwitchOn
                ? Duration.Max(Duration.Zero, sinceSwitchOn - oven.Preheat)
                : null;
        }
    }

    /// <summary>The soak to plan with.</summary>
    /// <param name="byHand">The host's own, or null.</param>
    public Explained<Duration> Soak(SoakLead lead, Duration? byHand = null) => (lead, AfterAirIsHot) switch
    {
        (SoakLead.Model, { } model) => Explained.Decide(
            byHand, model.Expected, new SoakFromModel(Surface.Kind, Surface.ThicknessMillimetres, SetPoint, Readings)),
        _ => Explained.Decide(
            byHand, RuleOfThumb, new SoakFromRule(RuleOfThumb, IsForWantOfModel: lead == SoakLead.Model)),
    };

    /// <summary>
    /// The heat that a pie takes is known to so much: its water, and what of it comes through the surface. From
    /// memory.
    /// </summary>
    private const double HeatOfAPieBand = 0.4;

    /// <summary>
    /// How long a surface at its set-point takes to be ready again after one pie, with the band of what comes through it.
    /// Null when that is more than six hours.
    /// </summary>
    /// <param name="bakes">Whose length, pie and area count; its starts do not.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static Estimate<Duration>? Recovery(BakingSurface surface, Oven oven, Bakes bakes, MaterialsTable table)
    {
        bakes.Demand();
        var through = bakes.Pie.ThroughSurfaceJoules.Expected;
        return Back(through) is { } expected && Back(through * (1 - HeatOfAPieBand)) is { } low
            ? new Estimate<Duration>(expected, low, Back(through * (1 + HeatOfAPieBand)) ?? Horizon)
            : null;

        Duration? Back(double joules)
        {
            var pie = bakes.Pie with { ThroughSurfaceJoules = new Estimate<double>(joules, joules, joules) };
            var contact = (bakes with { Pie = pie }).Contact(oven.SetPoint.Value);
            var run = new OvenRun(surface, oven with { Preheat = Duration.Zero }, table, oven.SetPoint.Value);
            while (run.Seconds < bakes.Length.TotalSeconds)
            {
                run.Step(contact);
            }

            return run.UntilTop(oven.SetPoint.Value - table.Ready.WithinKelvin, Horizon);
        }
    }
}
