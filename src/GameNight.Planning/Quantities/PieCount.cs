using System.Globalization;

namespace GameNight.Planning.Quantities;

/// <summary>A number of whole pies, from 0 to 200. <c>default</c> is none.</summary>
public readonly record struct PieCount : IComparable<PieCount>
{
    public const int Highest = 200;

    /// <exception cref="ArgumentOutOfRangeException">The count is negative or above 200.</exception>
    public PieCount(int pies)
    {
        if (pies is < 0 or > Highest)
        {
            throw new ArgumentOutOfRangeException(nameof(pies), pies, "A night has 0 to 200 pies.");
        }

        Value = pies;
    }

    /// <summary>The bare number of pies.</summary>
    public int Value { get; }

    public static bool operator <(PieCount left, PieCount right) => left.Value < right.Value;
    public static bool operator >(PieCount left, PieCount right) => left.Value > right.Value;
    public static bool operator <=(PieCount left, PieCount right) => left.Value <= right.Value;
    public static bool operator >=(PieCount left, PieCount right) => left.Value >= right.Value;

    public int CompareTo(PieCount other) => Value.CompareTo(other.Value);
    public override string ToString() => Value.ToString(CultureInfo.InvariantCulture);
}
