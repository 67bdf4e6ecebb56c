using System.Globalization;
using NodaTime;

namespace GameNight.MovableClock;

/// <summary>Runs as the system's clock does, so much ahead of it as a file says: a test moves the app's clock by writing there.</summary>
/// <param name="file">Holds a number of seconds; a clock without its file is not ahead.</param>
public sealed class FileClock(string file) : IClock
{
    /// <summary>Names the file to an app in a process of its own.</summary>
    public const string Variable = "TEST_CLOCK_FILE";

    public Instant GetCurrentInstant() => SystemClock.Instance.GetCurrentInstant() + Ahead;

    private Duration Ahead => File.Exists(file) && double.TryParse(File.ReadAllText(file), CultureInfo.InvariantCulture, out var seconds)
        ? Duration.FromSeconds(seconds)
        : Duration.Zero;
}
