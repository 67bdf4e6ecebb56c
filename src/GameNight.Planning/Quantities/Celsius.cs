using System.Globalization;

namespace GameNight.Planning.Quantities;

/// <summary>A temperature in °C, from -40 to 600: colder or hotter is no kitchen. <c>default</c> is 0 °C.</summary>
public readonly record struct Celsius : IComparable<Celsius>
{
    public const double Lowest = -40;
    public const double Highest = 600;

    /// <exception cref="ArgumentOutOfRangeException">The value is NaN or outside -40 to 600 °C.</exception>
    public Celsius(double celsius)
    {
        if (!(celsius is >= Lowest and <= Highest))
        {
            throw new ArgumentOutOfRangeException(
                nameof(celsius), celsius, "A kitchen temperature lies between -40 and 600 °C.");
        }

        Value = celsius;
    }

    /// <summary>The bare number of degrees Celsius.</summary>
    public double Value { get; }

    public static bool operator <(Celsius left, Celsius right) => left.Value < right.Value;
    public static bool operator >(Celsius left, Celsius right) => left.Value > right.Value;
    public static bool operator <=(Celsius left, Celsius right) => left.Value <= right.Value;
    public static bool operator >=(Celsius left, Celsius right) => left.Value >= right.Value;

    public int CompareTo(Celsius other) => Value.CompareTo(other.Value);
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Value:0.#} °C");
}
