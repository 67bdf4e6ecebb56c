using NodaTime;

namespace GameNight.Planning.Timeline;

/// <summary>
/// Whole minutes counted from the serving time (negative before it). Counting from there, not from the clock, makes the
/// answer the same on any day, and puts the first pie on the table exactly at the serving time.
/// </summary>
internal readonly record struct ServingClock(Instant ServeAt)
{
    public const int Day = 24 * 60;

    /// <summary>Nothing further away than this matters to a night; it also keeps sums of minutes far from overflow.</summary>
    public const int Farthest = 60 * Day;

    public Instant At(int minute) => ServeAt + Duration.FromMinutes(minute);

    /// <summary>The last whole minute not after <paramref name="moment"/>.</summary>
    public int Before(Instant moment) => Whole(Math.Floor((moment - ServeAt).TotalMinutes));

    /// <summary>The first whole minute not before <paramref name="moment"/>.</summary>
    public int After(Instant moment) => Whole(Math.Ceiling((moment - ServeAt).TotalMinutes));

    /// <summary>The length in whole minutes, rounded up: work is not done before it is done.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The length is negative.</exception>
    public static int LengthUp(Duration length)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(length, Duration.Zero);
        return Whole(Math.Ceiling(length.TotalMinutes));
    }

    /// <summary>The length in whole minutes, rounded down: for what is a limit.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The length is negative.</exception>
    public static int LengthDown(Duration length)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(length, Duration.Zero);
        return Whole(Math.Floor(length.TotalMinutes));
    }

    private static int Whole(double minutes) => (int)Math.Clamp(minutes, -Farthest, Farthest);
}
