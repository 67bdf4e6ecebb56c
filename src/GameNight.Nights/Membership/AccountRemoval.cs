namespace GameNight.Nights.Membership;

/// <summary>How the removal of an account went.</summary>
public abstract record AccountRemoval
{
    private AccountRemoval()
    {
    }

    /// <summary>The account is gone, now or before.</summary>
    public sealed record Removed : AccountRemoval;

    /// <summary>Nobody else could keep these groups: they are handed over or deleted first.</summary>
    public sealed record OnlyOwner(IReadOnlyList<GroupLine> Groups) : AccountRemoval;
}
