using GameNight.Nights.PastNights;
using GameNight.Nights.Records;
using GameNight.Planning;
using GameNight.Planning.Quantities;
using GameNight.TestKit;
using GameNight.TestKit.Nights;

namespace GameNight.Nights.Tests.PastNights;

public class SlicesAccountTests
{
    private static readonly NightPlan Plan = new NightPlanner(SharedFolder.Tables)
        .Plan(NightBuilder.ANight().WithGuests(6).Build(), NightBuilder.Now, Effort.Quick);

    [Fact]
    public void Eaten_is_what_was_baked_less_what_is_left()
    {
        var account = SlicesAccount.Of(Plan, otherwise: 6, Log(baked: 4, left: 4.5));

        Assert.Equal(8, account.SlicesPerPie);
        Assert.Equal((Plan.Pies.Count.Value.Value * 8, 32), (account.Planned, account.Baked));
        Assert.Equal(27.5, account.Eaten);
        Assert.Equal(Plan.Slices.Slices, account.Wanted);
    }

    [Fact]
    public void What_was_not_noted_stays_unknown()
    {
        Assert.Null(SlicesAccount.Of(Plan, 8, log: null).Eaten);
        Assert.Null(SlicesAccount.Of(Plan, 8, Log(baked: 4, left: null)).Eaten);
        Assert.Null(SlicesAccount.Of(Plan, 8, Log(baked: null, left: 2)).Eaten);
    }

    [Fact]
    public void Without_a_plan_the_recipe_says_how_many_slices_a_pie_has()
    {
        var account = SlicesAccount.Of(plan: null, otherwise: 6, Log(baked: 2, left: 1));

        Assert.Null(account.Planned);
        Assert.Equal(11, account.Eaten);
    }

    [Theory]
    [InlineData(2, 3.0)]
    [InlineData(3, null)]
    public void Pies_counted_one_by_one_are_a_total_once_each_that_was_baked_is_counted(int baked, double? left)
    {
        var log = Log(baked, left: null) with { Pies = [new(1, 1, ""), new(2, 2, ""), new(3, null, "too wet")] };

        Assert.Equal(left, SlicesAccount.Of(Plan, 8, log).Left);
    }

    [Fact]
    public void The_total_that_was_noted_counts_before_single_pies() =>
        Assert.Equal(5, SlicesAccount.Of(Plan, 8, Log(baked: 1, left: 5) with { Pies = [new(1, 2, "")] }).Left);

    [Fact]
    public void More_left_than_baked_gives_no_number_of_eaten_slices() =>
        Assert.Null(SlicesAccount.Of(Plan, 8, Log(baked: 1, left: 9)).Eaten);

    private static BakeLogFacts Log(int? baked, double? left) =>
        new([], baked is { } pies ? new PieCount(pies) : null, left, [], "");
}
