using GameNight.Planning.Guests;
using GameNight.Planning.Quantities;
using NodaTime;

namespace GameNight.Planning.Appetite;

/// <summary>
/// Slices wanted: who shares a draw comes together or not at all; each person's appetite is gamma-Poisson around what is
/// believed of them. The whole distribution is convolved: a mean or a normal curve would understate the chance of running
/// out. (Gelman et al., Bayesian Data Analysis, 3rd ed., sections 2.6 and 2.7.)
/// </summary>
public sealed class AppetiteModel
{
    private const double BandLow = 0.1;
    private const double BandHigh = 0.9;

    /// <summary>The share of nights on which a must-not group's slices must be enough.</summary>
    private const double GroupService = 0.9;

    private readonly IReadOnlyList<GuestSnapshot> _guests;
    private readonly AppetiteTable _table;
    private readonly GroupBelief _belief;
    private readonly double _evening;
    private readonly Duration? _length;
    private readonly List<Draw> _draws;

    private AppetiteModel(
        IReadOnlyList<GuestSnapshot> guests, Grams slice, IReadOnlyList<Course>? courses, Duration? length, AppetiteTable table)
    {
        (_guests, _table, _evening, _length) = (guests, table, EveningAppetite.Factor(courses, length, table), length);
        _belief = new GroupBelief(guests, slice, table);
        _draws = [.. guests
            .GroupBy(guest => (guest.Household, Alone: guest.Household is null ? guest.Id : null, guest.Answer))
            .Select(together => new Draw(
                [.. together],
                together.Average(_belief.Chance),
                [.. together.SelectMany(guest => guest.Eaters.Select(eater => Forecast(guest, eater)))]))];
    }

    /// <param name="ball">Dough of one pie.</param>
    /// <param name="slicesPerPie">4 to 16.</param>
    /// <param name="length">From the first pie to the end; null when nobody said.</param>
    /// <param name="players">With how many what is played works; null when nobody said.</param>
    public static (SlicesForecast Forecast, SliceDistribution Demand) Forecast(
        IReadOnlyList<GuestSnapshot> guests, Grams ball, int slicesPerPie, AppetiteTable table,
        IReadOnlyList<Course>? courses = null, Duration? length = null, PlayersWanted? players = null)
    {
        var model = new AppetiteModel(guests, ball / slicesPerPie, courses, length, table);
        var demand = model.Sum(draw => draw.Eaters);
        var people = model.Heads(one => one.Appetite is not null);
        var chances = model._draws.SelectMany(draw => draw.Guests.Select(guest => (guest.Id, draw.Chance))).ToDictionary(row => row.Id, row => row.Chance);
        var appetites = model._draws.SelectMany(draw => draw.Eaters).ToDictionary(one => one.Eater.Id);
        var past = guests.Select(model._belief.Counted).OfType<PastCounted>().ToList();

        var forecast = new SlicesForecast(
            Band(demand),
            Band(people),
            [.. guests.SelectMany(guest => guest.Eaters.Select(eater => new EaterForecast(
                eater.Id, new Share(chances[guest.Id]), chances[guest.Id] * (appetites[eater.Id].Appetite?.Mean ?? 0))))],
            model.Groups(),
            [.. model.Reasons(), .. EveningAppetite.Reasons(courses, length, table), .. model._belief.Because],
            past.Count > 0 ? past : null,
            players is { Fewest: null, Most: null } or null ? null : Players(model.Heads(_ => true), players));
        return (forecast, demand);
    }

    /// <summary>Tonight's appetite of one person, if they come: null for who eats nothing here.</summary>
    private Hungry Forecast(GuestSnapshot guest, Eater eater)
    {
        var tonight = _table.Of(eater.Hunger).Factor * _evening * Part(guest, eater);
        if (!eater.EatsHere || tonight <= 0)
        {
            return new Hungry(eater, null, SliceDistribution.None);
        }

        var usual = _belief.Appetite(guest, eater);
        var appetite = usual with { Rate = usual.Rate / tonight };
        return new Hungry(eater, appetite, SliceDistribution.GammaPoisson(appetite.Shape, appetite.Rate));
    }

    /// <summary>What is left of an appetite by being there for a part of the evening.</summary>
    private double Part(GuestSnapshot guest, Eater eater) =>
        eater.Stays?.Value ?? PartOfEvening.Appetite(guest.Stay, _length, _table);

    /// <summary>How many of these people come.</summary>
    private SliceDistribution Heads(Func<Hungry, bool> counts) => _draws.Aggregate(SliceDistribution.None, (sum, draw) =>
        sum + SliceDistribution.Certainly(draw.Eaters.Count(counts)).WithChance(draw.Chance));

    private static PlayersForecast Players(SliceDistribution heads, PlayersWanted wanted) => new(
        wanted,
        Band(heads),
        new Share(wanted.Fewest is { } fewest ? heads.AtMost(fewest - 1) : 0),
        new Share(wanted.Most is { } most ? heads.MoreThan(most) : 0));

    private SliceDistribution Sum(Func<Draw, IEnumerable<Hungry>> of) => _draws.Aggregate(
        SliceDistribution.None,
        (sum, draw) => sum + of(draw).Aggregate(SliceDistribution.None, (all, one) => all + one.Slices).WithChance(draw.Chance));

    private static Estimate<double> Band(SliceDistribution distribution)
    {
        var mean = distribution.Mean;
        return new Estimate<double>(
            mean,
            Math.Min(mean, distribution.Quantile(BandLow)),
            Math.Max(mean, distribution.Quantile(BandHigh)));
    }

    /// <summary>One group for each set of must-nots that occurs, of people who may come.</summary>
    private List<GroupForecast> Groups()
    {
        var withNeeds =
            from draw in _draws
            where draw.Chance > 0
            from one in draw.Eaters
            where one.Appetite is not null && !one.Eater.Needs.IsNone
            group one.Eater.Id by one.Eater.Needs.Key into needs
            orderby needs.Key
            select needs.ToHashSet();

        var order = _guests.SelectMany(guest => guest.Eaters).Select(eater => eater.Id).ToList();
        return [.. withNeeds.Select(ids => new GroupForecast(
            [.. order.Where(ids.Contains)],
            Sum(draw => draw.Eaters.Where(one => ids.Contains(one.Eater.Id))).Quantile(GroupService)))];
    }

    private IEnumerable<Reason> Reasons()
    {
        var answers = _draws
            .SelectMany(draw => draw.Guests.Select(guest => (Guest: guest, draw.Chance)))
            .GroupBy(row => row.Guest.Answer)
            .OrderBy(group => group.Key)
            .Select(Reason (group) => new AnswersCounted(
                group.Key,
                group.Count(),
                group.Sum(row => Math.Max(0, row.Guest.Eaters.Count - 1)),
                new Share(group.Average(row => row.Chance))));

        var eaters = _draws.Where(draw => draw.Chance > 0).SelectMany(draw => draw.Eaters).ToList();
        var portions = eaters
            .Where(one => one.Appetite is not null)
            .GroupBy(one => one.Eater.Portion)
            .OrderBy(group => group.Key)
            .Select(Reason (group) => new EatersCounted(group.Key, group.Count(), group.Average(one => one.Appetite!.Mean)));

        var together = _draws.Where(draw => draw.Guests.Count > 1 && draw.Chance > 0).ToList();
        var inPart = eaters.Count(one => one.Appetite is not null && one.Eater.Stays is { Value: < 1 });
        var remote = eaters.Count(one => !one.Eater.EatsHere);
        return
        [
            .. answers, .. portions,
            .. together.Count > 0 ? [new HouseholdsTogether(together.Count, together.Sum(draw => draw.Guests.Count))] : Array.Empty<Reason>(),
            .. inPart > 0 ? [new PartOfTheEvening(inPart)] : Array.Empty<Reason>(),
            .. LateAndEarly(),
            .. remote > 0 ? [new RemoteNotCounted(remote)] : Array.Empty<Reason>(),
        ];
    }

    private IEnumerable<Reason> LateAndEarly()
    {
        var eating = PartOfEvening.EatingTime(_length, _table);
        var inPart = (
            from draw in _draws
            where draw.Chance > 0
            from guest in draw.Guests
            from eater in guest.Eaters
            where eater is { EatsHere: true, Stays: null } && Part(guest, eater) < 1
            select (guest.Stay, Part: Part(guest, eater))).ToList();
        if (inPart.Count > 0)
        {
            yield return new LateAndEarlyCounted(
                inPart.Count(one => one.Stay?.ComesAfter > Duration.Zero),
                inPart.Count(one => one.Stay?.LeavesAfter < eating),
                eating,
                new Share(inPart.Average(one => one.Part)));
        }
    }

    /// <summary>People who come together or not at all.</summary>
    private sealed record Draw(IReadOnlyList<GuestSnapshot> Guests, double Chance, IReadOnlyList<Hungry> Eaters);

    private sealed record Hungry(Eater Eater, GammaPrior? Appetite, SliceDistribution Slices);
}
