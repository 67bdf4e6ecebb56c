namespace GameNight.Web.Startup;

/// <summary>
/// Paths whose second segment is the secret part of a link. They are never kept by browsers, told to other sites, or written
/// to logs and traces.
/// </summary>
internal static class SecretPaths
{
    /// <summary>The answer link of a guest.</summary>
    public const string Answer = "/i";

    /// <summary>The look-back link of a guest.</summary>
    public const string LookBack = "/b";

    /// <summary>The calendar of a guest.</summary>
    public const string Feed = "/f";

    /// <summary>With which a guest stops messages.</summary>
    public const string Unsubscribe = "/u";

    /// <summary>The link with which a host joins a group.</summary>
    public const string JoinAsHost = "/join";

    /// <summary>With which a guest says which evenings work.</summary>
    public const string Dates = "/d";

    private static readonly PathString[] All = [Answer, LookBack, Dates, Feed, Unsubscribe, JoinAsHost];

    public static bool Covers(PathString path) => All.Any(secret => path.StartsWithSegments(secret));

    /// <summary>The path as it may be written down.</summary>
    public static string Masked(PathString path) =>
        All.FirstOrDefault(secret => path.StartsWithSegments(secret)) is { HasValue: true } prefix
            ? $"{prefix}/(link)"
            : path.Value ?? "";
}
