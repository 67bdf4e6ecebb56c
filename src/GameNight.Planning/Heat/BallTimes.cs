using GameNight.Planning.Quantities;
using NodaTime;

namespace GameNight.Planning.Heat;

/// <summary>How long balls take to warm up for shaping and to cool down in the fridge, with the band of the model.</summary>
public static class BallTimes
{
    /// <summary>What has not happened until then is said never to happen.</summary>
    private static readonly Duration Horizon = Duration.FromHours(48);

    /// <summary>What the middle of a ball must have to be shaped: a cool room never brings it to the usual temperature.</summary>
    public static Celsius WarmEnough(Celsius room, MaterialsTable table) =>
        new(Math.Min(table.BallTimes.CoreCelsius, room.Value - table.BallTimes.BelowRoomKelvin));

    /// <summary>
    /// Until the core is warm enough to shape. Zero when it is from the start; null when the room does not make it so within
    /// two days.
    /// </summary>
    /// <param name="place">Box or counter; the room's temperature is around it either way.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside the range of <see cref="BallHeat"/>.</exception>
    public static Estimate<Duration>? UntilTempered(
        Grams ball, Celsius dough, Celsius room, DoughPlace place, ThermalProperties properties, MaterialsTable table)
    {
        var goal = WarmEnough(room, table);
        if (dough >= goal)
        {
            return new Estimate<Duration>(Duration.Zero, Duration.Zero, Duration.Zero);
        }

        return Band(Until(ball, dough, room, place, goal.Value, properties, table), table);
    }

    /// <summary>Until the core is as cold as the fridge, within a kelvin. Null when it takes longer than two days.</summary>
    /// <param name="balls">
    /// How many cool at once, from 1 on. The fridge carries off only so much: many or large balls take at least the time it
    /// needs for all of their heat. Below that, balls do not slow one another, because the heat they give off is a fraction
    /// of what the fridge can carry off; balls that touch are one larger lump, and the caller says its mass.
    /// </param>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static Estimate<Duration>? UntilCold(
        Grams ball, int balls, Celsius dough, Celsius fridge, DoughPlace place, ThermalProperties properties, MaterialsTable table)
    {
        if (balls < 1)
        {
            throw new ArgumentOutOfRangeException(nameof(balls), balls, "At least one ball cools.");
        }

        var goal = fridge.Value + table.BallTimes.FridgeKelvin;
        if (dough.Value <= goal)
        {
            return new Estimate<Duration>(Duration.Zero, Duration.Zero, Duration.Zero);
        }

        var alone = Until(ball, dough, fridge, place, goal, properties, table);
        var fridgeNeeds = Duration.FromSeconds(
            balls * ball.Value / 1000 * properties.HeatCapacityJPerKgK * (dough.Value - fridge.Value) / table.FridgeSpare.Watts);
        return Band(alone is { } time ? Duration.Max(time, fridgeNeeds) : null, table);
    }

    private static Duration? Until(
        Grams ball, Celsius dough, Celsius around, DoughPlace place, double goalCelsius, ThermalProperties properties,
        MaterialsTable table) => BallHeat
        .Over(dough.Value, [new HeatPhase(Horizon, ball, around.Value, table.Of(place).WPerM2K)], properties)
        .UntilCore(goalCelsius);

    private static Estimate<Duration>? Band(Duration? expected, MaterialsTable table) => expected is { } time
        ? new Estimate<Duration>(time, time * (1 - table.BallTimes.Band), time * (1 + table.BallTimes.Band))
        : null;
}
