namespace GameNight.LocalPostgres;

/// <summary>The few combinations of file permissions this project sets.</summary>
internal static class FileAccessModes
{
    /// <summary>700</summary>
    public const UnixFileMode OwnerOnly = UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute;

    /// <summary>711: others can pass through to a folder whose name they know, and list nothing.</summary>
    public const UnixFileMode OthersPassThrough = OwnerOnly | UnixFileMode.GroupExecute | UnixFileMode.OtherExecute;

    /// <summary>755</summary>
    public const UnixFileMode EverybodyRuns = OthersPassThrough | UnixFileMode.GroupRead | UnixFileMode.OtherRead;

    /// <summary>644</summary>
    public const UnixFileMode EverybodyReads = UnixFileMode.UserRead | UnixFileMode.UserWrite
        | UnixFileMode.GroupRead | UnixFileMode.OtherRead;
}
