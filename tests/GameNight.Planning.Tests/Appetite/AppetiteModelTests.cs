using CsCheck;
using GameNight.Planning.Appetite;
using GameNight.Planning.Guests;
using GameNight.Planning.Quantities;
using GameNight.TestKit;
using static GameNight.TestKit.Nights.NightBuilder;

namespace GameNight.Planning.Tests.Appetite;

public class AppetiteModelTests
{
    private static readonly Grams Ball = new(325);

    [Fact]
    public void One_adult_who_comes_eats_the_prior()
    {
        // By hand: 0.95 pies of 250 g are 237.5 g; a slice of a 325 g pie in 8 is 40.625 g; 5.846 slices, times 0.95.
        var (forecast, _) = Forecast(ANight().WithGuests(1).Build());

        Assert.Equal(237.5 / 40.625 * 0.95, forecast.Slices.Expected, 1e-9);
    }

    [Fact]
    public void More_guests_never_mean_fewer_pies() =>
        Gen.Select(Gen.Int[0, 25], Gen.Enum<AnswerState>(), Gen.Enum<PortionClass>(), Gen.Double[0.01, 0.5]).Sample(
            (guests, answer, portion, runOut) =>
            {
                var few = ANight().WithGuests(guests);
                var before = Pies(few.Build(), runOut);
                var after = Pies(few.With(answer, AnEater("one-more", portion)).Build(), runOut);

                Assert.True(after >= before, $"{before} pies, then {after}");
            }, iter: 60);

    [Fact]
    public void Households_make_the_count_less_certain_than_single_guests()
    {
        var single = Forecast(ANight().WithGuests(8, AnswerState.Undecided).Build()).Demand;
        var households = ANight();
        for (var index = 0; index < 4; index++)
        {
            households.With(AnswerState.Undecided, AnEater($"a{index}"), AnEater($"b{index}"));
        }

        var together = Forecast(households.Build()).Demand;

        Assert.Equal(single.Mean, together.Mean, 1e-9);
        Assert.True(together.Variance > single.Variance * 1.2);
    }

    [Fact]
    public void Children_and_small_appetites_eat_less()
    {
        var adult = Slices(AnEater("a"));

        Assert.True(Slices(AnEater("a", PortionClass.Child)) < adult);
        Assert.True(Slices(AnEater("a", PortionClass.Teen)) > adult);
        Assert.True(Slices(AnEater("a", hunger: Hunger.Less)) < adult);
        Assert.True(Slices(AnEater("a", hunger: Hunger.More)) > adult);
        Assert.Equal(0, Slices(AnEater("a", eatsHere: false)));
    }

    [Fact]
    public void Must_not_groups_get_their_own_nine_in_ten_quantile()
    {
        var vegan = new DietaryNeeds([Diet.Vegan], [], []);
        var (forecast, _) = Forecast(ANight()
            .WithGuests(4)
            .With(AnswerState.Coming, AnEater("v1", needs: vegan))
            .With(AnswerState.Coming, AnEater("v2", needs: vegan))
            .With(AnswerState.NotComing, AnEater("v3", needs: vegan))
            .Build());

        var group = Assert.Single(forecast.MustNotGroups);
        Assert.Equal(["v1", "v2"], group.EaterIds);
        Assert.True(group.SlicesNineInTen > 2 * 5.5, "two vegans eat more than their mean one time in ten");
    }

    [Fact]
    public void Nobody_expected_means_no_pie()
    {
        Assert.Equal(0, Pies(ANight().Build(), 0.1));
        Assert.Equal(0, Pies(ANight().WithGuests(5, AnswerState.NotComing).Build(), 0.1));
    }

    [Fact]
    public void The_choice_keeps_its_run_out_chance_and_one_pie_fewer_would_not()
    {
        var (_, demand) = Forecast(ANight().WithGuests(9).Build());
        var plan = PieCountRule.For(demand, 8, new Share(0.1), null);

        Assert.True(plan.Chosen.RunOutChance.Value <= 0.1);
        Assert.True(plan.Choices.Single(choice => choice.Pies.Value == plan.Count.Value.Value - 1).RunOutChance.Value > 0.1);
    }

    [Fact]
    public void A_count_set_by_hand_shows_its_own_run_out_chance()
    {
        var (_, demand) = Forecast(ANight().WithGuests(9).Build());
        var plan = PieCountRule.For(demand, 8, new Share(0.1), new PieCount(2));

        Assert.True(plan.Count.IsByHand);
        Assert.True(plan.Chosen.RunOutChance.Value > 0.9);
    }

    private static (SlicesForecast Forecast, SliceDistribution Demand) Forecast(NightSnapshot night) =>
        AppetiteModel.Forecast(night.Guests, Ball, 8, SharedFolder.Tables.Appetite);

    private static double Slices(Eater eater) =>
        Forecast(ANight().With(AnswerState.Coming, eater).Build()).Forecast.Slices.Expected;

    private static int Pies(NightSnapshot night, double runOut) =>
        PieCountRule.For(Forecast(night).Demand, 8, new Share(runOut), null).Count.Value.Value;
}
