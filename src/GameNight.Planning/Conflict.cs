namespace GameNight.Planning;

/// <summary>
/// A wish that cannot be met, as data, together with the nearest thing that would work. Part of a plan, never an
/// exception. The family is closed to this assembly.
/// </summary>
public abstract record Conflict
{
    private protected Conflict()
    {
    }
}
