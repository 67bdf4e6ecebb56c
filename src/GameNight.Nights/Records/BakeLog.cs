using GameNight.Planning.Quantities;
using NodaTime;

namespace GameNight.Nights.Records;

/// <summary>How a pie came out and whether people liked it.</summary>
/// <param name="Number">The pie's number in the plan, from 1.</param>
/// <param name="SlicesLeft">What nobody ate of it; null when not counted.</param>
/// <param name="Won">The host saw that it was liked best.</param>
public sealed record PieOutcome(int Number, double? SlicesLeft, string Remark, bool Won = false);

/// <summary>Who of a guest and their companions came in the end.</summary>
/// <param name="Heads">How many ate, the guest included; 0 when nobody came.</param>
public sealed record CameFacts(Guid GuestId, int Heads);

/// <summary>What the host writes down after a night, in a minute.</summary>
/// <param name="Baked">Pies that left the oven; null when not noted.</param>
/// <param name="SlicesLeft">Slices nobody ate, over all pies; null when not noted.</param>
/// <param name="ToChange">What to do otherwise next time.</param>
public sealed record BakeLogFacts(
    IReadOnlyList<CameFacts> Came, PieCount? Baked, double? SlicesLeft, IReadOnlyList<PieOutcome> Pies, string ToChange)
{
    public const int LongestText = 500;
    public const int LongestRemark = 120;
}

/// <summary>The host's record of a night that took place.</summary>
public sealed class BakeLog
{
    public BakeLog(GroupId groupId, NightId nightId, BakeLogFacts facts, Instant savedAt)
    {
        GroupId = groupId;
        NightId = nightId;
        Facts = facts;
        SavedAt = savedAt;
    }

    public GroupId GroupId { get; private set; }
    public NightId NightId { get; private set; }
    public BakeLogFacts Facts { get; private set; }
    public Instant SavedAt { get; private set; }
    public uint Version { get; private set; }

    public void Set(BakeLogFacts facts, Instant savedAt)
    {
        Facts = facts;
        SavedAt = savedAt;
    }
}
