using GameNight.Planning.Appetite;
using GameNight.Planning.Guests;
using GameNight.Planning.Quantities;
using NodaTime;

namespace GameNight.Planning.Dates;

/// <summary>
/// Which evening: how many come to each, as a whole distribution (Poisson-binomial, households as one draw), from what each
/// guest's such answers were worth on past nights. (Brams and Fishburn, Approval Voting, 1983, for choosing by acceptance;
/// Gelman et al., Bayesian Data Analysis, 3rd ed., section 5.1, for the chances.)
/// </summary>
public static class DateModel
{
    /// <summary>A guest counts this much more for each night in a row that they missed. A figure of our own.</summary>
    public const double BonusPerMissedNight = 0.25;

    /// <summary>More nights missed count no more. A figure of our own.</summary>
    public const int MostMissedCounted = 3;

    private const double BandLow = 0.1;
    private const double BandHigh = 0.9;

    private static readonly AnswerState[] States =
        [AnswerState.Host, AnswerState.Coming, AnswerState.Undecided, AnswerState.NoAnswer, AnswerState.NotComing];

    public static DateForecast Forecast(DateRequest request, AppetiteTable table)
    {
        var guests = request.Guests.ToDictionary(
            guest => guest.Id, guest => new GuestSnapshot(guest.Id, AnswerState.NoAnswer, [], guest.Household, guest.Past));
        var belief = new AttendanceBelief([.. guests.Values], States, table);
        var evenings = request.Options
            .Select(option => Outlook(option, request, guest => belief.Chance(guests[guest.Id], StateOf(guest, option))))
            .OrderBy(evening => !evening.CanBe)
            .ThenByDescending(evening => evening.OverTheSeason)
            .ThenByDescending(evening => evening.Quorum)
            .ThenBy(evening => evening.Option.ServeAt)
            .ToList();

        return new DateForecast(
            evenings,
            Best(evening => evening.Expected.Expected),
            Best(evening => evening.Quorum.Value),
            Best(evening => evening.OverTheSeason),
            belief.Because);

        // Of equals the earlier evening; sums in another order differ in the last digits.
        string? Best(Func<DateOutlook, double> of) => evenings
            .Where(evening => evening.CanBe)
            .OrderByDescending(evening => Math.Round(of(evening), 12))
            .ThenBy(evening => evening.Option.ServeAt)
            .FirstOrDefault()?.Option.Id;
    }

    /// <summary>
    /// How many come to one evening when each guest's chance is known; without any filter.
    /// </summary>
    /// <param name="chance">0 to 1.</param>
    internal static (SliceDistribution Heads, double Quorum, IReadOnlyDictionary<string, double> Chances) Heads(
        IReadOnlyList<DateGuest> guests, Func<DateGuest, DateAnswer?> said, Func<DateGuest, double> chance, int quorum)
    {
        var draws = guests
            .GroupBy(guest => (guest.Household, Alone: guest.Household is null ? guest.Id : null, Said: said(guest), guest.IsHost))
            .Select(together => (Guests: together.ToList(), Chance: together.Average(chance)))
            .ToList();
        var heads = SliceDistribution.None;
        var withThoseNeeded = SliceDistribution.None;
        var allNeededCome = 1.0;
        foreach (var (people, each) in draws)
        {
            var everybody = SliceDistribution.Certainly(people.Count);
            var come = everybody.WithChance(Math.Clamp(each, 0, 1));
            heads += come;
            var isNeeded = people.Any(guest => guest.MustHave);
            allNeededCome *= isNeeded ? Math.Clamp(each, 0, 1) : 1;
            withThoseNeeded += isNeeded ? everybody : come;
        }

        return (
            heads,
            allNeededCome * withThoseNeeded.MoreThan(quorum - 1),
            draws.SelectMany(draw => draw.Guests.Select(guest => (guest.Id, draw.Chance))).ToDictionary(row => row.Id, row => row.Chance));
    }

    private static DateOutlook Outlook(DateOption option, DateRequest request, Func<DateGuest, double> chance)
    {
        var (heads, quorum, chances) = Heads(request.Guests, Said, chance, request.Quorum);
        var mean = heads.Mean;
        return new DateOutlook(
            option,
            heads.Probabilities,
            new Estimate<double>(mean, Math.Min(mean, heads.Quantile(BandLow)), Math.Max(mean, heads.Quantile(BandHigh))),
            new Share(Math.Min(1, quorum)),
            request.Guests.Sum(guest => chances[guest.Id] * Weight(guest)),
            chances.ToDictionary(row => row.Key, row => new Share(Math.Clamp(row.Value, 0, 1))),
            Count(DateAnswer.Works),
            Count(DateAnswer.AtAPinch),
            Count(DateAnswer.No),
            request.Guests.Count(guest => !guest.IsHost && Said(guest) is null),
            [.. request.Guests.Where(guest => guest.MissedInARow > 0 && Said(guest) == DateAnswer.No).Select(guest => guest.Id)],
            [.. Obstacles(option, request, Said)]);

        DateAnswer? Said(DateGuest guest) => guest.Answers.TryGetValue(option.Id, out var said) ? said : null;

        int Count(DateAnswer answer) => request.Guests.Count(guest => Said(guest) == answer);
    }

    private static double Weight(DateGuest guest) => 1 + BonusPerMissedNight * Math.Clamp(guest.MissedInARow, 0, MostMissedCounted);

    private static AnswerState StateOf(DateGuest guest, DateOption option) =>
        (guest.Answers.TryGetValue(option.Id, out var said) ? said : (DateAnswer?)null) switch
        {
            DateAnswer.Works => guest.IsHost ? AnswerState.Host : AnswerState.Coming,
            DateAnswer.AtAPinch => AnswerState.Undecided,
            DateAnswer.No => AnswerState.NotComing,
            null => guest.IsHost ? AnswerState.Host : AnswerState.NoAnswer,
        };

    private static IEnumerable<DateObstacle> Obstacles(DateOption option, DateRequest request, Func<DateGuest, DateAnswer?> said)
    {
        if (option.ServeAt <= request.Now)
        {
            yield return new DateObstacle.HasPassed();
            yield break;
        }

        if (request.DaysOff.Contains(option.Day))
        {
            yield return new DateObstacle.DayOff(option.Day);
        }

        var from = option.ServeAt - (request.Dough?.FirstPie ?? Duration.Zero);
        var until = option.ServeAt + request.Length;
        if (request.EveningsTaken.FirstOrDefault(taken => taken.From < until && taken.Until > from) is { } evening)
        {
            yield return new DateObstacle.EveningTaken(evening.From, evening.Until);
        }

        if (request.Dough is { } lead && DoughWindow.Obstacle(option, lead, request.Now, request.HandsAway) is { } dough)
        {
            yield return dough;
        }

        var missing = request.Guests.Where(guest => guest.MustHave && said(guest) == DateAnswer.No).Select(guest => guest.Id).ToList();
        if (missing.Count > 0)
        {
            yield return new DateObstacle.MustHaveSaysNo(missing);
        }
    }
}
