using GameNight.Nights.Records;
using GameNight.Planning;
using NodaTime;

namespace GameNight.Nights.Dates;

/// <summary>What is wrong with one field of a question for a date.</summary>
public enum DateFault
{
    Missing,
    TooLong,
    UnknownZone,
    NoOption,
    TooManyOptions,
    HasPassed,
    InSkippedHour,
    TooFarAhead,
    Repeated,
    QuorumOutOfRange,
    NeededNotAsked,
    NobodyAsked,
    TooManyAsked,
    DeadlineHasPassed,
    DeadlineAfterFirst,
}

/// <param name="Field"><c>option</c> and its number from 0 for an evening.</param>
public sealed record DateProblem(string Field, DateFault Fault, double Low = 0, double High = 0);

/// <summary>Whom a host asks.</summary>
/// <param name="Needed">Without them there is no night; each is asked.</param>
public sealed record Asking(IReadOnlyList<GuestId> Guests, IReadOnlyList<GuestId> Needed);

/// <summary>Checks what a host fills in to ask for a date, before anything is kept.</summary>
public static class DateDraft
{
    private static readonly Period FurthestAhead = Period.FromYears(2);

    /// <param name="before">The question as it stands, or null for a new one: what passed meanwhile need not be taken out.</param>
    public static IReadOnlyList<DateProblem> Problems(DateChoiceFacts facts, Asking asking, Instant now, DateChoiceFacts? before = null)
    {
        var problems = new List<DateProblem>();
        if (string.IsNullOrWhiteSpace(facts.Title))
        {
            problems.Add(new("title", DateFault.Missing));
        }
        else if (facts.Title.Length > NightFacts.LongestTitle)
        {
            problems.Add(new("title", DateFault.TooLong, 0, NightFacts.LongestTitle));
        }

        if (asking.Guests.Count is 0 or > SnapshotCheck.MostGuests)
        {
            problems.Add(new(
                "asked", asking.Guests.Count == 0 ? DateFault.NobodyAsked : DateFault.TooManyAsked, 1, SnapshotCheck.MostGuests));
        }

        if (asking.Needed.Except(asking.Guests).Any())
        {
            problems.Add(new("needed", DateFault.NeededNotAsked));
        }

        // The host is one of them.
        if (facts.Quorum < 1 || facts.Quorum > asking.Guests.Distinct().Count() + 1)
        {
            problems.Add(new("quorum", DateFault.QuorumOutOfRange, 1, asking.Guests.Distinct().Count() + 1));
        }

        if (NightTime.Zone(facts.Zone) is null)
        {
            problems.Add(new("zone", DateFault.UnknownZone));
            return problems;
        }

        if (facts.Options.Count is 0 or > DateChoiceFacts.MostOptions)
        {
            problems.Add(new(
                "options", facts.Options.Count == 0 ? DateFault.NoOption : DateFault.TooManyOptions, 1, DateChoiceFacts.MostOptions));
        }

        for (var index = 0; index < facts.Options.Count; index++)
        {
            if (OfOption(facts, index, now, before) is { } fault)
            {
                problems.Add(new($"option{index}", fault));
            }
        }

        if (Deadline(facts, now, before) is { } late)
        {
            problems.Add(new("openUntil", late));
        }

        return problems;
    }

    private static DateFault? OfOption(DateChoiceFacts facts, int index, Instant now, DateChoiceFacts? before)
    {
        var option = facts.Options[index];
        if (facts.Options.Take(index).Contains(option))
        {
            return DateFault.Repeated;
        }

        var (at, clock) = NightTime.Resolve(option, facts.Zone);
        return clock == ClockChange.Skipped ? DateFault.InSkippedHour
            : option > now.InUtc().LocalDateTime + FurthestAhead ? DateFault.TooFarAhead
            : at.ToInstant() <= now && before?.Options.Contains(option) != true ? DateFault.HasPassed
            : null;
    }

    private static DateFault? Deadline(DateChoiceFacts facts, Instant now, DateChoiceFacts? before)
    {
        var until = NightTime.ToInstant(facts.OpenUntil, facts.Zone);
        var ahead = facts.Options.Select(option => NightTime.ToInstant(option, facts.Zone)).Where(at => at > now).ToList();
        return until <= now && before?.OpenUntil != facts.OpenUntil ? DateFault.DeadlineHasPassed
            : ahead.Count > 0 && until >= ahead.Min() ? DateFault.DeadlineAfterFirst
            : null;
    }
}
