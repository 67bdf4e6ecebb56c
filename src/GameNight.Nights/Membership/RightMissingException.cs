using GameNight.Nights.Records;

namespace GameNight.Nights.Membership;

/// <summary>
/// A host did what their rights do not allow: the right was taken while the page was open, or the page is not ours. Pages
/// offer only what is allowed, so no result stands for it.
/// </summary>
public sealed class RightMissingException(HostRole needed)
    : Exception($"This needs the right '{needed}' in the group.")
{
    public HostRole Needed { get; } = needed;
}
