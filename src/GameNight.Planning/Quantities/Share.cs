using System.Globalization;

namespace GameNight.Planning.Quantities;

/// <summary>
/// A part of a whole as a fraction: a probability (0 to 1), or a baker's percentage divided by 100, which may exceed 1
/// (water at 105 % of flour). From 0 to 10; <c>default</c> is zero.
/// </summary>
public readonly record struct Share : IComparable<Share>
{
    public const double Highest = 10;

    /// <exception cref="ArgumentOutOfRangeException">The value is NaN or outside 0 to 10.</exception>
    public Share(double fraction)
    {
        if (!(fraction is >= 0 and <= Highest))
        {
            throw new ArgumentOutOfRangeException(
                nameof(fraction), fraction, "A share is a fraction from 0 to 10 (1 is the whole).");
        }

        Value = fraction;
    }

    /// <summary>The bare fraction: 0.62 for 62 %.</summary>
    public double Value { get; }

    public double Percent => Value * 100;

    public static bool operator <(Share left, Share right) => left.Value < right.Value;
    public static bool operator >(Share left, Share right) => left.Value > right.Value;
    public static bool operator <=(Share left, Share right) => left.Value <= right.Value;
    public static bool operator >=(Share left, Share right) => left.Value >= right.Value;

    public int CompareTo(Share other) => Value.CompareTo(other.Value);
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Percent:0.##} %");
}
