using System.Globalization;
using System.Numerics;

namespace GameNight.Planning.Quantities;

/// <summary>A mass in grams. Never negative and always finite; <c>default</c> is zero.</summary>
public readonly record struct Grams : IComparable<Grams>, IAdditionOperators<Grams, Grams, Grams>
{
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="grams"/> is negative, infinite or NaN.</exception>
    public Grams(double grams)
    {
        if (!double.IsFinite(grams) || grams < 0)
        {
            throw new ArgumentOutOfRangeException(nameof(grams), grams, "A mass is finite and not negative.");
        }

        Value = grams;
    }

    /// <summary>The bare number of grams: for display, storage and solver models only.</summary>
    public double Value { get; }

    public static Grams operator +(Grams left, Grams right) => new(left.Value + right.Value);
    public static Grams operator *(Grams mass, double factor) => new(mass.Value * factor);
    public static Grams operator *(Grams mass, Share share) => new(mass.Value * share.Value);

    /// <summary>How many times <paramref name="part"/> fits into <paramref name="whole"/>.</summary>
    public static double operator /(Grams whole, Grams part) => whole.Value / part.Value;
    public static Grams operator /(Grams mass, double divisor) => new(mass.Value / divisor);

    public static bool operator <(Grams left, Grams right) => left.Value < right.Value;
    public static bool operator >(Grams left, Grams right) => left.Value > right.Value;
    public static bool operator <=(Grams left, Grams right) => left.Value <= right.Value;
    public static bool operator >=(Grams left, Grams right) => left.Value >= right.Value;

    public int CompareTo(Grams other) => Value.CompareTo(other.Value);
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Value:0.#} g");
}
