namespace GameNight.Planning.Fermentation;

/// <summary>Mean temperature of the dough at equal steps, both ends included.</summary>
public sealed record TemperatureSeries(double[] Celsius, double StepHours)
{
    public double Hours => StepHours * (Celsius.Length - 1);

    public double LastCelsius => Celsius[^1];
}
