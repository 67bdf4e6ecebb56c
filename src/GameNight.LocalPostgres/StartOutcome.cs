namespace GameNight.LocalPostgres;

/// <summary>What came of starting the private Postgres.</summary>
public abstract record StartOutcome
{
    private protected StartOutcome()
    {
    }
}

/// <summary>The server answers and both roles can connect.</summary>
public sealed record Started(PrivatePostgres Server) : StartOutcome;

/// <summary>Something the person at the machine has to settle first, in one plain sentence.</summary>
public sealed record Refused(string Sentence) : StartOutcome;
