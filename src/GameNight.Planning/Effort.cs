namespace GameNight.Planning;

/// <summary>
/// How hard the solvers may try, in slices of deterministic solver time (never seconds), so that a plan can be computed
/// again bit for bit. From 0 (quick answers only) to 200.
/// </summary>
public readonly record struct Effort
{
    /// <summary>Deterministic solver time of one slice, in the solver's own unit (roughly a second on a slow core).</summary>
    public const double SliceDeterministicTime = 0.25;

    public const int MostSlices = 200;

    /// <exception cref="ArgumentOutOfRangeException"><paramref name="slices"/> is negative or above 200.</exception>
    public Effort(int slices)
    {
        if (slices is < 0 or > MostSlices)
        {
            throw new ArgumentOutOfRangeException(nameof(slices), slices, "Effort is 0 to 200 slices of solver time.");
        }

        Slices = slices;
    }

    public int Slices { get; }

    /// <summary>No solver at all: the first, feasible answer.</summary>
    public static Effort Quick { get; } = new(0);

    /// <summary>What a night gets unless the host asks for more.</summary>
    public static Effort Usual { get; } = new(8);
}
