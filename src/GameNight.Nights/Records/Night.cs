using GameNight.Planning.Appetite;
using GameNight.Planning.Fermentation;
using GameNight.Planning.Quantities;
using NodaTime;

namespace GameNight.Nights.Records;

/// <summary>What a host sets for a night. Local time and zone are what the host meant; instants are derived.</summary>
/// <param name="ServeAt">The first pie is on the table, local time.</param>
/// <param name="EndsAt">When the night ends, or null.</param>
/// <param name="Address">Shown to guests who come.</param>
/// <param name="MostCompanions">How many people a guest may bring, 0 to 10.</param>
/// <param name="Courses">What is served beside the pies.</param>
/// <param name="ShortageWeight">A missing pie is as bad as so many left over; null goes by <paramref name="RunOutChance"/>.</param>
/// <param name="Seats">At the table, hosts counted in, 1 to 300; whoever comes beyond them waits. Null for as many as come.</param>
/// <param name="Played">What is played; null when nobody said.</param>
public sealed record NightFacts(
    string Title,
    LocalDateTime ServeAt,
    LocalDateTime? EndsAt,
    string Zone,
    string Address,
    string Bring,
    FormulaId Formula,
    Share RunOutChance,
    int ShortestColdHours,
    int WantedColdHours,
    int LongestColdHours,
    int MostCompanions,
    IReadOnlyList<Course>? Courses = null,
    double? ShortageWeight = null,
    int? Seats = null,
    Played? Played = null)
{
    public const int LongestTitle = 80;
    public const int LongestAddress = 200;
    public const int LongestBring = 200;
    public const int MostCompanionsAllowed = 10;
    public const int MostSeats = 300;
    public const int UsualCompanions = 2;
}

/// <summary>What is played, in the host's words.</summary>
/// <param name="Players">With how many it works; null when that does not matter.</param>
public sealed record Played(string Name, PlayersWanted? Players = null)
{
    public const int LongestName = 80;
}

/// <summary>The serving time was changed at a moment, from one local time and zone to another, or the place was.</summary>
/// <param name="FromPlace">The address there was before; null when the place stayed.</param>
public sealed record NightMove(
    Instant At, LocalDateTime From, string FromZone, LocalDateTime To, string ToZone, string? FromPlace = null)
{
    public bool IsElsewhen => From != To || FromZone != ToZone;
}

/// <summary>One gathering.</summary>
public sealed class Night
{
    public Night(GroupId groupId, NightId id, NightFacts facts)
    {
        GroupId = groupId;
        Id = id;
        Facts = facts;
        ServeAt = facts.ServeAt;
    }

    public GroupId GroupId { get; private set; }
    public NightId Id { get; private set; }
    public NightFacts Facts { get; private set; }

    /// <summary>A copy of the serving time to sort by.</summary>
    public LocalDateTime ServeAt { get; private set; }

    public NightOverrides Overrides { get; private set; } = NightOverrides.None;

    /// <summary>Called off then; null for a night that takes place.</summary>
    public Instant? CancelledAt { get; private set; }

    /// <summary>
    /// Every time the serving time or the place changed, oldest first. A night that takes place after all is kept as a move to
    /// the same time and place: answers given before ask to be confirmed.
    /// </summary>
    public IReadOnlyList<NightMove> Moves { get; private set; } = [];

    /// <summary>What was measured and seen of its dough, in the order of time.</summary>
    public IReadOnlyList<DoughReading> Readings { get; private set; } = [];

    /// <summary>Concurrency token: two hosts who edit the same night are told of each other.</summary>
    public uint Version { get; private set; }

    public void Set(NightFacts facts)
    {
        Facts = facts;
        ServeAt = facts.ServeAt;
    }

    public void Cancel(Instant at) => CancelledAt ??= at;

    public void Reinstate() => CancelledAt = null;

    public void Moved(NightMove move) => Moves = [.. Moves, move];

    public void Read(DoughReading reading) => Readings = [.. Readings.Append(reading).OrderBy(one => one.At)];

    public void Unread(DoughReading reading) => Readings = [.. Readings.Where(one => one != reading)];

    public void Overrule(NightOverrides overrides) => Overrides = overrides;
}
