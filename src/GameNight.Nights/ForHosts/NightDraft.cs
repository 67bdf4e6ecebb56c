using GameNight.Nights.Records;
using GameNight.Planning;
using GameNight.Planning.Appetite;
using NodaTime;

namespace GameNight.Nights.ForHosts;

/// <summary>What is wrong with one field of a night that a host fills in.</summary>
public enum DraftFault
{
    Missing,
    TooLong,
    UnknownZone,
    HasPassed,
    TooFarAhead,
    EndsBeforeServing,
    OutOfRange,
    HoursBackToFront,
    UnknownFormula,

    /// <summary>More people have a seat already.</summary>
    FewerThanSeated,
    PlayersBackToFront,
}

public sealed record DraftProblem(string Field, DraftFault Fault, double Low = 0, double High = 0);

/// <summary>Checks what a host fills in for a night before anything is kept.</summary>
public static class NightDraft
{
    /// <summary>Longest cold ferment that is planned at all, in hours.</summary>
    public const int MostColdHours = 120;

    /// <summary>Nobody plans a dough for later; it also keeps typing slips out.</summary>
    private static readonly Period FurthestAhead = Period.FromYears(2);

    /// <param name="before">
    /// The night as it stands, or null for a new one. One that is over can still be corrected, but not moved into the past.
    /// </param>
    public static IReadOnlyList<DraftProblem> Problems(NightFacts facts, Instant now, NightFacts? before = null)
    {
        var problems = new List<DraftProblem>();
        if (string.IsNullOrWhiteSpace(facts.Title))
        {
            problems.Add(new("title", DraftFault.Missing));
        }

        TooLong("title", facts.Title, NightFacts.LongestTitle);
        TooLong("address", facts.Address, NightFacts.LongestAddress);
        TooLong("bring", facts.Bring, NightFacts.LongestBring);

        if (NightTime.Zone(facts.Zone) is null)
        {
            problems.Add(new("zone", DraftFault.UnknownZone));
        }
        else if (facts.ServeAt > now.InUtc().LocalDateTime + FurthestAhead)
        {
            problems.Add(new("serveAt", DraftFault.TooFarAhead));
        }
        else if ((before is null || before.ServeAt != facts.ServeAt || before.Zone != facts.Zone)
            && NightTime.ToInstant(facts.ServeAt, facts.Zone) <= now)
        {
            problems.Add(new("serveAt", DraftFault.HasPassed));
        }

        if (facts.EndsAt is { } end && end <= facts.ServeAt)
        {
            problems.Add(new("endsAt", DraftFault.EndsBeforeServing));
        }

        Range("runOutChance", facts.RunOutChance.Value, 0.01, 0.5);
        Range("coldHours", facts.ShortestColdHours, 0, MostColdHours);
        Range("coldHours", facts.LongestColdHours, 0, MostColdHours);
        if (facts.ShortestColdHours > facts.WantedColdHours || facts.WantedColdHours > facts.LongestColdHours)
        {
            problems.Add(new("coldHours", DraftFault.HoursBackToFront));
        }

        if (facts.ShortageWeight is { } weight)
        {
            Range("shortageWeight", weight, 1, 99);
        }

        Range("courses", facts.Courses?.Count ?? 0, 0, EveningAppetite.MostCourses);
        foreach (var course in facts.Courses ?? [])
        {
            TooLong("courses", course.Name, SnapshotCheck.LongestId);
            if (string.IsNullOrWhiteSpace(course.Name))
            {
                problems.Add(new("courses", DraftFault.Missing));
            }
        }

        if (facts.Seats is { } seats)
        {
            Range("seats", seats, 1, NightFacts.MostSeats);
        }

        if (facts.Played is { } played)
        {
            TooLong("played", played.Name, Played.LongestName);
            if (string.IsNullOrWhiteSpace(played.Name))
            {
                problems.Add(new("played", DraftFault.Missing));
            }

            Range("players", played.Players?.Fewest ?? 1, 1, PlayersWanted.MostPlayers);
            Range("players", played.Players?.Most ?? 1, 1, PlayersWanted.MostPlayers);
            if (played.Players is { } players && players.Fewest > players.Most)
            {
                problems.Add(new("players", DraftFault.PlayersBackToFront));
            }
        }

        Range("mostCompanions", facts.MostCompanions, 0, NightFacts.MostCompanionsAllowed);
        return problems;

        void TooLong(string field, string text, int longest)
        {
            if (text.Length > longest)
            {
                problems.Add(new(field, DraftFault.TooLong, 0, longest));
            }
        }

        void Range(string field, double given, double low, double high)
        {
            if (!(given >= low && given <= high))
            {
                problems.Add(new(field, DraftFault.OutOfRange, low, high));
            }
        }
    }
}

/// <summary>What came of opening or changing a night.</summary>
public abstract record NightResult
{
    private NightResult()
    {
    }

    /// <param name="Clock">Whether the serving time falls into an hour that the clock skips or doubles.</param>
    /// <param name="DoughIsLetGo">A begun dough cannot be baked for the new time; another one is planned.</param>
    public sealed record Kept(NightId Night, ClockChange Clock, bool DoughIsLetGo = false) : NightResult;

    public sealed record Refused(IReadOnlyList<DraftProblem> Problems) : NightResult;

    public sealed record ChangedMeanwhile : NightResult;

    public sealed record Gone : NightResult;
}
