namespace GameNight.LocalPostgres;

/// <summary>What came of opening a data folder.</summary>
internal abstract record DataFolderOutcome;

internal sealed record DataFolderOpened(DataFolder Folder) : DataFolderOutcome;

internal sealed record DataFolderRefused(string Sentence) : DataFolderOutcome;
