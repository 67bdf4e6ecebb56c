using Microsoft.AspNetCore.Identity;

namespace GameNight.Nights.Records;

/// <summary>Somebody who signs in. The name is what the group calls them.</summary>
public sealed class HostAccount : IdentityUser<Guid>
{
    public const int LongestName = 60;

    public string DisplayName { get; set; } = "";
}
