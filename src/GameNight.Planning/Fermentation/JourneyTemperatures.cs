using GameNight.Planning.Dough;
using GameNight.Planning.Heat;
using GameNight.Planning.Quantities;
using NodaTime;

namespace GameNight.Planning.Fermentation;

/// <summary>
/// Mean temperatures of a dough on its journey, minute by minute: as a batch in its bowl at room temperature, as balls in the
/// cold, as balls on the counter, in a box with a lid all the time. A measured temperature stands from its minute on.
/// </summary>
internal sealed class JourneyTemperatures(DoughJourney journey, Celsius fridge, DoughFormula formula, MaterialsTable table)
{
    private const double StepHours = 1.0 / 60;

    /// <summary>A ball that has been so long in one place has its temperature to a thousandth.</summary>
    private const int SettledMinutes = 48 * 60;

    private readonly ThermalProperties _dough = FoodComposition.Of(formula, table).At(journey.Room.Value, table);

    private TemperatureSeries? _whole;

    /// <summary>From mixing until the dough is shaped.</summary>
    public TemperatureSeries Whole() => _whole ??= Joined();

    /// <summary>From mixing until the dough leaves the fridge after so long, or the bowl when it is never in the fridge.</summary>
    public TemperatureSeries UntilOut(Duration inFridge)
    {
        var (room, cold) = (Minutes(journey.AtRoom), Minutes(inFridge));
        var celsius = new double[room + cold + 1];
        celsius[0] = journey.Mixed.Value;
        Follow(celsius, 0, room, 0, journey.Room, journey.Batch);
        Follow(celsius, room, room + cold, 0, fridge, journey.Ball);
        return new TemperatureSeries(celsius, StepHours);
    }

    /// <summary>The ball on the counter, from the temperature it comes out with.</summary>
    /// <param name="outAt">Minute at which it comes out.</param>
    public TemperatureSeries Tempering(double fromCelsius, int outAt)
    {
        var celsius = new double[Minutes(journey.Tempering) + 1];
        celsius[0] = fromCelsius;
        Follow(celsius, 0, celsius.Length - 1, outAt, journey.Room, journey.Ball);
        return new TemperatureSeries(celsius, StepHours);
    }

    public static int Minutes(Duration length) => (int)Math.Round(length.TotalMinutes);

    private TemperatureSeries Joined()
    {
        var cold = UntilOut(journey.InFridge);
        var tempering = Tempering(cold.LastCelsius, Minutes(journey.AtRoom) + Minutes(journey.InFridge));
        return new TemperatureSeries([.. cold.Celsius, .. tempering.Celsius.AsSpan(1)], StepHours);
    }

    /// <summary>Fills in the minutes of one place; what was measured there begins anew.</summary>
    /// <param name="offset">Minutes from mixing to the first value.</param>
    private void Follow(double[] celsius, int from, int to, int offset, Celsius place, Grams lump)
    {
        var measured = (journey.Measured ?? [])
            .Select(one => (Minute: Minutes(one.SinceMixing) - offset, one.Dough))
            .Where(one => one.Minute >= from && one.Minute < to)
            .OrderBy(one => one.Minute)
            .ToList();
        var start = from;
        foreach (var (minute, dough) in measured)
        {
            Rest(celsius, start, minute, place, lump);
            (start, celsius[minute]) = (minute, dough.Value);
        }

        Rest(celsius, start, to, place, lump);
    }

    private void Rest(double[] celsius, int from, int to, Celsius place, Grams lump)
    {
        if (to <= from)
        {
            return;
        }

        var followed = Math.Min(to - from, SettledMinutes);
        var mean = BallHeat.Over(
            celsius[from],
            [new HeatPhase(Duration.FromMinutes(followed), lump, place.Value, table.Of(DoughPlace.LiddedBox).WPerM2K)],
            _dough).MeanCelsius;
        mean.AsSpan()[1..].CopyTo(celsius.AsSpan(from + 1));
        celsius.AsSpan(from + followed + 1, to - from - followed).Fill(celsius[from + followed]);
    }
}
