using NodaTime;

namespace GameNight.Nights.Records;

/// <summary>Where messages to a guest go, and whether they want any. For hosts who invite, and for the guest.</summary>
/// <param name="MailAddress">Empty when a guest who wants no messages has none.</param>
/// <param name="ByGuest">The guest gave it; false when a host did, for them.</param>
/// <param name="ConsentedVersion">Which text was agreed to when it was given.</param>
/// <param name="StoppedAt">The guest wants no messages since then; no host can undo that.</param>
public sealed record Contact(string MailAddress, bool ByGuest, Instant Since, int ConsentedVersion, Instant? StoppedAt = null)
{
    /// <summary>Of RFC 5321: what fits between the angle brackets.</summary>
    public const int LongestAddress = 254;

    /// <summary>The text that is agreed to today.</summary>
    public const int ConsentVersion = 1;

    public bool TakesMail => MailAddress.Length > 0 && StoppedAt is null;
}
