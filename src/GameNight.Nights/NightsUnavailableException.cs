using Npgsql;

namespace GameNight.Nights;

/// <summary>The database cannot be reached right now. Nothing was kept; the same call may be made again.</summary>
public sealed class NightsUnavailableException(Exception fault)
    : Exception("The database cannot be reached right now. Nothing was saved; try again in a moment.", fault)
{
    /// <summary>SQL states of a server that is stopping, starting or was told to end the connection.</summary>
    private const string OperatorIntervention = "57P";

    /// <summary>True for faults of connection, time and shutdown; false for bugs and for broken rules.</summary>
    internal static bool IsMeantBy(Exception? fault) => fault switch
    {
        null => false,
        NightsUnavailableException => true,
        NpgsqlException { IsTransient: true } => true,
        PostgresException { SqlState: var state } when state.StartsWith(OperatorIntervention, StringComparison.Ordinal) => true,
        NpgsqlException and not PostgresException => true,
        TimeoutException => true,
        _ => IsMeantBy(fault.InnerException),
    };
}
