namespace GameNight.LocalPostgres;

/// <summary>What came of looking for server programs.</summary>
internal abstract record ServerProgramsOutcome;

internal sealed record ServerProgramsFound(ServerPrograms Programs) : ServerProgramsOutcome;

internal sealed record ServerProgramsMissing(string Sentence) : ServerProgramsOutcome;
