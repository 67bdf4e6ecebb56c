using Microsoft.AspNetCore.Identity;

namespace GameNight.Nights.Records;

/// <summary>The measures a person reads.</summary>
public enum MeasureSystem
{
    Metric,
    UsCustomary,
}

/// <summary>Somebody who signs in. The name is what the group calls them.</summary>
public sealed class HostAccount : IdentityUser<Guid>
{
    public const int LongestName = 60;

    public string DisplayName { get; set; } = "";

    /// <summary>The measures this host reads and types; everything is kept in grams, °C and centimetres.</summary>
    public MeasureSystem Measures { get; set; }
}
