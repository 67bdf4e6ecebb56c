namespace GameNight.Planning.Quantities;

/// <summary>
/// An expected value with its band: the truth lies between <see cref="Low"/> and <see cref="High"/> four times out of five.
/// </summary>
public sealed record Estimate<T>
    where T : struct, IComparable<T>
{
    /// <exception cref="ArgumentException">The three values are not in the order low, expected, high.</exception>
    public Estimate(T expected, T low, T high)
    {
        if (low.CompareTo(expected) > 0 || expected.CompareTo(high) > 0)
        {
            throw new ArgumentException($"A band runs low, expected, high; got {low}, {expected}, {high}.");
        }

        Expected = expected;
        Low = low;
        High = high;
    }

    public T Expected { get; }
    public T Low { get; }
    public T High { get; }
}
