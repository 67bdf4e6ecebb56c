using GameNight.Planning.Guests;
using GameNight.Planning.Quantities;

namespace GameNight.Planning.Appetite;

/// <summary>
/// Slices wanted: each guest and their companions come together or not at all; each person's appetite is gamma-Poisson
/// around the prior of their portion class. The whole distribution is convolved: a mean or a normal curve would understate
/// the chance of running out. (Gelman et al., Bayesian Data Analysis, 3rd ed., sections 2.6 and 2.7.)
/// </summary>
public static class AppetiteModel
{
    private const double BandLow = 0.1;
    private const double BandHigh = 0.9;

    /// <summary>The share of nights on which a must-not group's slices must be enough.</summary>
    private const double GroupService = 0.9;

    /// <param name="ball">Dough of one pie.</param>
    /// <param name="slicesPerPie">4 to 16.</param>
    public static (SlicesForecast Forecast, SliceDistribution Demand) Forecast(
        IReadOnlyList<GuestSnapshot> guests, Grams ball, int slicesPerPie, AppetiteTable table)
    {
        var sliceDough = ball / slicesPerPie;
        var demand = SliceDistribution.None;
        var people = SliceDistribution.None;
        var eaters = new List<EaterForecast>();

        foreach (var guest in guests)
        {
            var chance = table.Of(guest.Answer).Probability;
            var here = guest.Eaters.Where(eater => eater.EatsHere).ToList();
            var household = here.Aggregate(
                SliceDistribution.None, (sum, eater) => sum + Appetite(eater, sliceDough, table));

            demand += household.WithChance(chance);
            people += SliceDistribution.Certainly(here.Count).WithChance(chance);
            eaters.AddRange(guest.Eaters.Select(eater => new EaterForecast(
                eater.Id, new Share(chance), eater.EatsHere ? chance * MeanSlices(eater, sliceDough, table) : 0)));
        }

        var forecast = new SlicesForecast(
            Band(demand), Band(people), eaters, Groups(guests, sliceDough, table), Reasons(guests, sliceDough, table));
        return (forecast, demand);
    }

    private static double MeanSlices(Eater eater, Grams sliceDough, AppetiteTable table) =>
        table.Of(eater.Portion).Pies * table.Of(eater.Hunger).Factor * table.ReferenceDoughGrams / sliceDough.Value;

    private static SliceDistribution Appetite(Eater eater, Grams sliceDough, AppetiteTable table)
    {
        var cv = table.BetweenPersonVariation.Cv;
        var shape = 1 / (cv * cv);
        return SliceDistribution.GammaPoisson(shape, shape / MeanSlices(eater, sliceDough, table));
    }

    private static Estimate<double> Band(SliceDistribution distribution)
    {
        var mean = distribution.Mean;
        return new Estimate<double>(
            mean,
            Math.Min(mean, distribution.Quantile(BandLow)),
            Math.Max(mean, distribution.Quantile(BandHigh)));
    }

    /// <summary>One group for each set of must-nots that occurs, of people who may come.</summary>
    private static List<GroupForecast> Groups(
        IReadOnlyList<GuestSnapshot> guests, Grams sliceDough, AppetiteTable table)
    {
        var withNeeds =
            from guest in guests
            let chance = table.Of(guest.Answer).Probability
            where chance > 0
            from eater in guest.Eaters
            where eater.EatsHere && !eater.Needs.IsNone
            group (Guest: guest.Id, Eater: eater, Chance: chance) by Key(eater.Needs) into needs
            orderby needs.Key
            select needs;

        return withNeeds.Select(group => new GroupForecast(
            [.. group.Select(member => member.Eater.Id)],
            group.GroupBy(member => member.Guest)
                .Aggregate(SliceDistribution.None, (sum, household) => sum + household
                    .Aggregate(SliceDistribution.None, (all, member) => all + Appetite(member.Eater, sliceDough, table))
                    .WithChance(household.First().Chance))
                .Quantile(GroupService))).ToList();
    }

    private static string Key(DietaryNeeds needs) => string.Join('|',
        string.Join(',', needs.Diets.Order()),
        string.Join(',', needs.Avoids.Order()),
        string.Join(',', needs.MustNotTouch.Order()));

    private static List<Reason> Reasons(
        IReadOnlyList<GuestSnapshot> guests, Grams sliceDough, AppetiteTable table)
    {
        var answers = guests
            .GroupBy(guest => guest.Answer)
            .OrderBy(group => group.Key)
            .Select(Reason (group) => new AnswersCounted(
                group.Key,
                group.Count(),
                group.Sum(guest => Math.Max(0, guest.Eaters.Count - 1)),
                new Share(table.Of(group.Key).Probability)));

        var eaters = guests
            .Where(guest => table.Of(guest.Answer).Probability > 0)
            .SelectMany(guest => guest.Eaters)
            .ToList();
        var portions = eaters
            .Where(eater => eater.EatsHere)
            .GroupBy(eater => eater.Portion)
            .OrderBy(group => group.Key)
            .Select(Reason (group) => new EatersCounted(
                group.Key, group.Count(), group.Average(eater => MeanSlices(eater, sliceDough, table))));

        var remote = eaters.Count(eater => !eater.EatsHere);
        return [.. answers, .. portions, .. remote > 0 ? [new RemoteNotCounted(remote)] : Array.Empty<Reason>()];
    }
}
