using CsCheck;
using GameNight.Planning.Appetite;
using GameNight.Planning.Guests;
using GameNight.Planning.Quantities;
using GameNight.TestKit;
using GameNight.TestKit.Nights;
using NodaTime;
using static GameNight.TestKit.Nights.NightBuilder;

namespace GameNight.Planning.Tests.Appetite;

/// <summary>Households, courses, length of the evening, weights, the curve: and all of it against plain drawing of lots.</summary>
public class EveningTests
{
    private static readonly Grams Ball = new(320);

    [Fact]
    public void A_household_with_one_answer_is_one_draw()
    {
        var alone = Of([Guest("a", AnswerState.Undecided), Guest("b", AnswerState.Undecided)]);
        var together = Of([Guest("a", AnswerState.Undecided, "home"), Guest("b", AnswerState.Undecided, "home")]);

        Assert.Equal(alone.Demand.Mean, together.Demand.Mean, 1e-9);
        Assert.Equal(0.4 * 0.4, alone.Demand.Probabilities[0], 0.01);
        Assert.Equal(0.4, together.Demand.Probabilities[0], 0.01);
        Assert.Contains(new HouseholdsTogether(1, 2), together.Forecast.Because);
    }

    [Fact]
    public void Who_of_a_household_answered_otherwise_comes_on_their_own()
    {
        var split = Of([Guest("a", AnswerState.Undecided, "home"), Guest("b", AnswerState.Coming, "home")]);
        var alone = Of([Guest("a", AnswerState.Undecided), Guest("b", AnswerState.Coming)]);

        Assert.Equal(alone.Demand.Probabilities, split.Demand.Probabilities);
        Assert.Empty(split.Forecast.Because.OfType<HouseholdsTogether>());
    }

    [Fact]
    public void A_must_not_group_of_one_household_needs_more_in_hand_than_one_of_strangers()
    {
        var vegan = new DietaryNeeds([Diet.Vegan], [], []);
        int Nine(string? household) => Assert.Single(Of([.. Enumerable.Range(0, 6).Select(index =>
            new GuestSnapshot($"g{index}", AnswerState.Undecided, [AnEater($"g{index}", needs: vegan)], household))]).Forecast.MustNotGroups).SlicesNineInTen;

        Assert.True(Nine("home") > Nine(null));
    }

    [Fact]
    public void Who_stays_in_part_eats_that_part()
    {
        var whole = Of([Guest("a")]).Forecast.Eaters[0].ExpectedSlices;
        var half = Of([new GuestSnapshot("a", AnswerState.Coming, [AnEater("a") with { Stays = new Share(0.5) }])]).Forecast;

        Assert.Equal(whole / 2, half.Eaters[0].ExpectedSlices, 1e-9);
        Assert.Contains(new PartOfTheEvening(1), half.Because);
        Assert.Equal(0, Of([new GuestSnapshot("a", AnswerState.Coming, [AnEater("a") with { Stays = default(Share) }])]).Demand.Mean);
    }

    [Fact]
    public void Every_course_takes_its_part_of_what_the_others_leave()
    {
        var none = Of([Guest("a")]).Demand.Mean;
        var salad = new Course("salad", AppetiteTaken.Some);
        var stew = new Course("stew", AppetiteTaken.ALot);

        // The rows of the table: 15 % and 35 %.
        Assert.Equal(none * 0.85, Of([Guest("a")], [salad]).Demand.Mean, 1e-9);
        Assert.Equal(none * 0.85 * 0.65, Of([Guest("a")], [salad, stew]).Demand.Mean, 1e-9);
        Assert.Contains(new CoursesOnTheTable(1, new Share(0.85)), Of([Guest("a")], [salad]).Forecast.Because);
    }

    [Theory]
    [InlineData(1, 0.9)]
    [InlineData(2, 0.9)]
    [InlineData(3, 0.95)]
    [InlineData(4, 1)]
    [InlineData(6, 1.075)]
    [InlineData(12, 1.15)]
    public void A_longer_evening_eats_more(int hours, double factor) => Assert.Equal(
        factor, Of([Guest("a")], length: Duration.FromHours(hours)).Demand.Mean / Of([Guest("a")]).Demand.Mean, 1e-9);

    [Fact]
    public void A_shortage_that_weighs_more_never_means_fewer_pies() => Gen.Select(Gen.Int[1, 12], Gen.Double[1, 90]).Sample((guests, weight) =>
    {
        var demand = Of([.. Enumerable.Range(0, guests).Select(index => Guest($"g{index}"))]).Demand;
        var (light, heavy) = (Count(weight), Count(weight + 9));

        Assert.True(heavy >= light);
        Assert.True(demand.MoreThan(8 * light) <= 1 / (weight + 1) + 1e-9);
        Assert.True(light == 0 || demand.MoreThan(8 * (light - 1)) > 1 / (weight + 1));

        int Count(double by) => PieCountRule.For(demand, 8, new Share(0.1), null, shortageWeight: by).Count.Value.Value;
    }, iter: 40);

    [Fact]
    public void Nine_times_as_bad_is_one_chance_in_ten()
    {
        var demand = Of([.. Enumerable.Range(0, 9).Select(index => Guest($"g{index}"))]).Demand;
        var weighed = PieCountRule.For(demand, 8, new Share(0.5), null, shortageWeight: 9);

        Assert.Equal(PieCountRule.For(demand, 8, new Share(0.1), null).Count.Value, weighed.Count.Value);
        var reason = Assert.IsType<ShortageWeighed>(Assert.Single(weighed.Count.Because));
        Assert.Equal((9, 0.1), (reason.Weight, reason.Asked.Value));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(9)]
    [InlineData(200)]
    public void The_curve_runs_from_nearly_certain_to_nearly_safe_and_holds_the_choice(int guests)
    {
        var demand = Of([.. Enumerable.Range(0, guests).Select(index => Guest($"g{index}"))]).Demand;
        var plan = PieCountRule.For(demand, 8, new Share(0.1), null);

        if (guests == 0)
        {
            Assert.Null(plan.Curve);
            return;
        }

        var curve = plan.Curve!;
        Assert.Equal(curve.Chances.OrderDescending(), curve.Chances);
        Assert.InRange(curve.Chances.Count, 2, 60);
        Assert.True(curve.Chances[^1] < 0.005);
        Assert.Equal(plan.Chosen.RunOutChance.Value, curve.Chances[plan.Count.Value.Value - curve.From.Value], 1e-5);
    }

    [Fact]
    public void A_forecast_is_what_drawing_lots_gives() =>
        Gen.Select(
            Gen.Select(Gen.Enum<AnswerState>(), Gen.Enum<PortionClass>(), Gen.Enum<Hunger>(), Gen.Int[0, 3], Gen.Int[0, 3]).Array[1, 14],
            Gen.Int[0, 3], Gen.Int[1, 8]).Sample(
            (rows, courses, hours) =>
            {
                GuestSnapshot[] guests = [.. rows.Select((row, index) => new GuestSnapshot(
                    $"g{index}", row.Item1,
                    [.. Enumerable.Range(0, 1 + row.Item5).Select(eater => AnEater(eater == 0 ? $"g{index}" : $"g{index}+{eater}", row.Item2, row.Item3))],
                    row.Item4 == 0 ? null : $"house-{row.Item4}"))];
                Course[] dishes = [.. Enumerable.Repeat(new Course("dip", AppetiteTaken.ALittle), courses)];
                var demand = Of(guests, dishes, Duration.FromHours(hours)).Demand;

                var lots = new Lots(guests, dishes, Duration.FromHours(hours), Ball / 8);
                const int nights = 20_000;
                var drawn = Enumerable.Range(0, nights).Select(_ => lots.Draw()).ToList();

                // Six standard errors: once in five hundred million comparisons by chance, and the seed is fixed.
                Assert.InRange(drawn.Average() - demand.Mean, -6 * Error(demand.Variance), 6 * Error(demand.Variance));
                foreach (var slices in new[] { 0.1, 0.5, 0.9, 0.99 }.Select(demand.Quantile).Distinct())
                {
                    var chance = demand.AtMost(slices);
                    var seen = drawn.Count(one => one <= slices) / (double)nights;
                    Assert.InRange(seen - chance, -6 * Error(chance * (1 - chance)) - 1e-12, 6 * Error(chance * (1 - chance)) + 1e-12);
                }

                static double Error(double variance) => Math.Sqrt(variance / nights);
            }, iter: 25, seed: "0N0XIzNsQ0O2");

    [Fact]
    public void Sums_of_poissons_and_of_even_heads_are_their_closed_forms_to_twelve_digits() =>
        Gen.Select(Gen.Double[0.1, 9].Array[1, 20], Gen.Double[0, 1], Gen.Int[1, 60]).Sample((means, chance, heads) =>
        {
            var poissons = means.Select(SliceDistribution.Poisson).Aggregate(SliceDistribution.None, (sum, one) => sum + one);
            var closed = SliceDistribution.Poisson(means.Sum());
            for (var slices = 0; slices < 250; slices++)
            {
                Assert.Equal(closed.AtMost(slices), poissons.AtMost(slices), 1e-12);
            }

            var people = Enumerable.Repeat(SliceDistribution.Certainly(1).WithChance(chance), heads)
                .Aggregate(SliceDistribution.None, (sum, one) => sum + one);
            for (var come = 0; come < heads; come++)
            {
                Assert.Equal(MathNet.Numerics.Distributions.Binomial.CDF(chance, heads, come), people.AtMost(come), 1e-12);
            }
        }, iter: 40);

    private static GuestSnapshot Guest(string id, AnswerState answer = AnswerState.Coming, string? household = null) =>
        new(id, answer, [AnEater(id)], household);

    private static (SlicesForecast Forecast, SliceDistribution Demand) Of(
        IReadOnlyList<GuestSnapshot> guests, IReadOnlyList<Course>? courses = null, Duration? length = null) =>
        AppetiteModel.Forecast(guests, Ball, 8, SharedFolder.Tables.Appetite, courses, length);
}
