using GameNight.Planning.Quantities;

namespace GameNight.Planning.Dough;

/// <summary>
/// The water was moved for flour that lies in a room of this humidity. <paramref name="Uncapped"/> is what the moisture
/// alone would have asked for.
/// </summary>
public sealed record HydrationForHumidity(
    Share RoomHumidity, Estimate<Share> FlourMoisture, Share Before, Share After, Share Uncapped) : Reason;

/// <summary>The same for a moisture that was measured or stands on the label.</summary>
public sealed record HydrationForMoisture(Share FlourMoisture, Share Before, Share After, Share Uncapped) : Reason;

/// <summary>The flour is kept sealed: the room's humidity does not reach it, and the water stays.</summary>
public sealed record FlourKeptSealed(Share RoomHumidity) : Reason;

/// <summary>This share of the flour stayed out last time, so that there is more water per flour.</summary>
public sealed record HydrationForKneader(Share StayedOut, Share Before, Share After) : Reason;

/// <summary>What the flours of the blend are together, beside all water that the dough gets per flour.</summary>
public sealed record FlourBlended(Share Absorption, Share Protein, Share Hydration) : Reason;

/// <summary>
/// Water per flour, as it is weighed: the formula's, moved for the moisture of the flour by two points at most, and by what
/// the kneader found. It follows the host's humidity or moisture only; altitude moves nothing.
/// </summary>
/// <param name="Water">Water per flour with the band in which the right one lies.</param>
public sealed record Hydration(Estimate<Share> Water, IReadOnlyList<Reason> Because)
{
    private const double Point = 0.01;

    /// <param name="flour">What is known of the flour; null moves nothing.</param>
    public static Hydration For(DoughFormula formula, KitchenFlour? flour, Celsius room, FlourTable table)
    {
        List<Reason> because = [];
        var water = ForMoisture(formula, flour, room, table, because);
        if (formula.Kneader is { StayedOut.Value: > 0 } kneader)
        {
            var effective = (formula with { Water = water }).EffectiveHydration;
            var after = new Share(water.Value + kneader.After(effective).Value - effective.Value);
            because.Add(new HydrationForKneader(kneader.StayedOut, water, after));
            water = after;
        }

        if (formula.Blend is { } blend)
        {
            because.Add(new FlourBlended(blend.Absorption, blend.Protein, (formula with { Water = water }).EffectiveHydration));
        }

        var band = Point * (flour?.Moisture is null ? table.Humidity.BandPoints : table.Humidity.MeasuredBandPoints);
        return new Hydration(
            new Estimate<Share>(water, new Share(Math.Max(0, water.Value - band)), new Share(water.Value + band)), because);
    }

    /// <summary>
    /// Moisture of flour that has followed the room: the mean of the two laws, with their disagreement and the distance of
    /// flour to kernels in the band.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">The room is outside the laws' range.</exception>
    public static Estimate<Share> MoistureInRoom(WheatKind wheat, Celsius room, Share humidity, FlourTable table)
    {
        var (one, other) = (table.Of(wheat).ByHenderson(room, humidity).Value, table.Of(wheat).ByChungPfost(room, humidity).Value);
        return new Estimate<Share>(
            new Share((one + other) / 2),
            new Share(Math.Max(0, Math.Min(one, other) - Point * table.Band.PointsBelow)),
            new Share(Math.Max(one, other) + Point * table.Band.PointsAbove));
    }

    private static Share ForMoisture(
        DoughFormula formula, KitchenFlour? flour, Celsius room, FlourTable table, List<Reason> because)
    {
        switch (flour)
        {
            case { Moisture: { } measured }:
                var (ofMeasured, uncappedOfMeasured) = Moved(formula, measured, table.Humidity);
                because.Add(new HydrationForMoisture(measured, formula.Water, ofMeasured, uncappedOfMeasured));
                return ofMeasured;

            case { Kept: FlourKept.Paper, RoomHumidity: { } humidity }:
                var moisture = MoistureInRoom(flour.Wheat, room, humidity, table);
                var damped = FlourMoisture.Basis + table.Humidity.Damping * (moisture.Expected.Value - FlourMoisture.Basis);
                var (ofRoom, uncappedOfRoom) = Moved(formula, new Share(damped), table.Humidity);
                because.Add(new HydrationForHumidity(humidity, moisture, formula.Water, ofRoom, uncappedOfRoom));
                return ofRoom;

            case { Kept: FlourKept.Sealed, RoomHumidity: { } humidity }:
                because.Add(new FlourKeptSealed(humidity));
                return formula.Water;

            default:
                return formula.Water;
        }
    }

    private static (Share Capped, Share Uncapped) Moved(DoughFormula formula, Share moisture, HumidityRow row)
    {
        var all = formula.EffectiveHydration;
        var more = FlourMoisture.AbsorptionAsIs(all, moisture).Value - all.Value;
        var cap = Point * row.CapPoints;
        return (By(Math.Clamp(more, -cap, cap)), By(more));

        Share By(double change) => new(Math.Max(0, formula.Water.Value + change));
    }
}
