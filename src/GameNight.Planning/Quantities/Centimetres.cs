using System.Globalization;

namespace GameNight.Planning.Quantities;

/// <summary>A length in centimetres. Never negative and always finite; <c>default</c> is zero.</summary>
public readonly record struct Centimetres : IComparable<Centimetres>
{
    /// <exception cref="ArgumentOutOfRangeException">The value is negative, infinite or NaN.</exception>
    public Centimetres(double centimetres)
    {
        if (!double.IsFinite(centimetres) || centimetres < 0)
        {
            throw new ArgumentOutOfRangeException(
                nameof(centimetres), centimetres, "A length is finite and not negative.");
        }

        Value = centimetres;
    }

    /// <summary>The bare number of centimetres.</summary>
    public double Value { get; }

    public static bool operator <(Centimetres left, Centimetres right) => left.Value < right.Value;
    public static bool operator >(Centimetres left, Centimetres right) => left.Value > right.Value;
    public static bool operator <=(Centimetres left, Centimetres right) => left.Value <= right.Value;
    public static bool operator >=(Centimetres left, Centimetres right) => left.Value >= right.Value;

    public int CompareTo(Centimetres other) => Value.CompareTo(other.Value);
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Value:0.#} cm");
}
