namespace GameNight.LocalPostgres;

/// <summary>Postgres failed in a way nobody expected; the message carries its last words.</summary>
public sealed class PostgresFailedException : Exception
{
    public PostgresFailedException()
    {
    }

    public PostgresFailedException(string message)
        : base(message)
    {
    }

    public PostgresFailedException(string message, Exception innerException)
        : base(message, innerException)
    {
    }
}
