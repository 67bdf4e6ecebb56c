using GameNight.Planning.Quantities;
using NodaTime;

namespace GameNight.Planning.Fermentation;

/// <summary>
/// Mean temperatures of a dough on its journey, minute by minute: in its bowl at room temperature, as balls in the cold, as
/// balls on the counter. A measured temperature stands from its minute on.
/// </summary>
internal sealed class JourneyTemperatures(DoughJourney journey, Celsius fridge, BallRow row)
{
    private const double StepHours = 1.0 / 60;

    private TemperatureSeries? _whole;

    /// <summary>From mixing until the dough is shaped.</summary>
    public TemperatureSeries Whole() => _whole ??= Joined();

    /// <summary>From mixing until the dough leaves the fridge after so long, or the bowl when it is never in the fridge.</summary>
    public TemperatureSeries UntilOut(Duration inFridge)
    {
        var room = Minutes(journey.AtRoom);
        var cold = Minutes(inFridge);
        var celsius = new double[room + cold + 1];
        celsius[0] = journey.Mixed.Value;
        Walk(celsius, 0, room, 0, journey.Room, journey.Batch);
        Walk(celsius, room, room + cold, 0, fridge, journey.Ball);
        return new TemperatureSeries(celsius, StepHours);
    }

    /// <summary>The ball on the counter, from the temperature it comes out with.</summary>
    /// <param name="outAt">Minute at which it comes out.</param>
    public TemperatureSeries Tempering(double fromCelsius, int outAt)
    {
        var celsius = new double[Minutes(journey.Tempering) + 1];
        celsius[0] = fromCelsius;
        Walk(celsius, 0, celsius.Length - 1, outAt, journey.Room, journey.Ball);
        return new TemperatureSeries(celsius, StepHours);
    }

    public static int Minutes(Duration length) => (int)Math.Round(length.TotalMinutes);

    private TemperatureSeries Joined()
    {
        var cold = UntilOut(journey.InFridge);
        var tempering = Tempering(cold.LastCelsius, Minutes(journey.AtRoom) + Minutes(journey.InFridge));
        return new TemperatureSeries([.. cold.Celsius, .. tempering.Celsius.AsSpan(1)], StepHours);
    }

    private void Walk(double[] celsius, int from, int to, int offset, Celsius place, Grams lump)
    {
        var tau = TemperatureProfile.LumpTimeConstant(
            lump.Value / 1000, row.DensityKgPerM3, row.HeatCapacityJPerKgK, row.BoxedCoefficientWPerM2K).TotalMinutes;
        var keeps = Math.Exp(-1 / tau);
        for (var minute = from; minute <= to; minute++)
        {
            if (minute > from)
            {
                celsius[minute] = place.Value + (celsius[minute - 1] - place.Value) * keeps;
            }

            foreach (var measured in journey.Measured ?? [])
            {
                if (Minutes(measured.SinceMixing) == minute + offset)
                {
                    celsius[minute] = measured.Dough.Value;
                }
            }
        }
    }
}
