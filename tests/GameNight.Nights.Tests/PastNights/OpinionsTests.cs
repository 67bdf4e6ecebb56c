using GameNight.Nights.PastNights;
using GameNight.Nights.Records;
using GameNight.Planning.Toppings;

namespace GameNight.Nights.Tests.PastNights;

public class OpinionsTests
{
    /// <summary>Pies 1 and 3 have the same on them; pie 2 is another.</summary>
    private static readonly NightPies Pies = new(
        [
            new PieKind(1, [1, 3], new PieOrder(1, [new Sector("A", 8)], [])),
            new PieKind(2, [2], new PieOrder(2, [new Sector("B", 8)], [])),
        ],
        new Dictionary<string, Combination>(),
        []);

    [Fact]
    public void Averages_run_from_minus_one_to_one()
    {
        var said = Of(Enoughs(Enough.TooLittle, Enough.TooMuch, Enough.TooMuch));

        Assert.Equal(1.0 / 3, said.AverageEnough);
        Assert.Equal((1, 0, 2), (said.Enough[Enough.TooLittle], said.Enough[Enough.Right], said.Enough[Enough.TooMuch]));
    }

    [Theory]
    [InlineData(2, false)]
    [InlineData(3, true)]
    public void Fewer_than_three_voices_are_no_average(int voices, bool hasAverage)
    {
        var said = Of([.. Enumerable.Repeat(Empty with { Enough = Enough.Right, Evening = Evening.Fine, Slices = 3 }, voices)]);

        Assert.Equal(hasAverage, said.AverageEnough is not null);
        Assert.Equal(hasAverage, said.AverageEvening is not null);
        Assert.Equal(hasAverage, said.SlicesEach is not null);
    }

    [Fact]
    public void Each_question_needs_three_voices_of_its_own()
    {
        var averages = Averages.Of(Of(
            Empty with { Enough = Enough.TooLittle, BestPies = [1] }, Empty with { Evening = Evening.Poor }, Empty with { Evening = Evening.Poor },
            Empty with { Evening = Evening.Poor }));

        Assert.Null(averages.Enough);
        Assert.Null(averages.Best);
        Assert.Equal(-1, averages.Evening);
    }

    [Fact]
    public void Votes_for_pies_with_the_same_on_them_are_one_vote_a_head()
    {
        var said = Of(Empty with { BestPies = [1, 3] }, Empty with { BestPies = [3] }, Empty with { BestPies = [2] });

        Assert.Equal([(1, 2), (2, 1)], said.Pies.Select(row => (row.Kind.Number, row.Votes)));
        Assert.Equal([1], said.Winners.Select(kind => kind.Number));
        Assert.Equal(3, said.PieVoices);
    }

    [Fact]
    public void A_single_vote_wins_nothing() => Assert.Empty(Of(Empty with { BestPies = [1] }, Empty with { BestPies = [2] }).Winners);

    [Fact]
    public void Pies_with_as_many_votes_win_together() =>
        Assert.Equal(2, Of(Empty with { BestPies = [1, 2] }, Empty with { BestPies = [1, 2] }).Winners.Count);

    [Fact]
    public void A_look_back_that_says_nothing_counts_nowhere()
    {
        var said = Of(Empty, Empty with { Namelessly = true });

        Assert.Equal((0, 0, 0), (said.People, said.EnoughVoices, said.PieVoices));
    }

    [Fact]
    public void A_pie_that_was_not_on_the_table_is_no_vote() => Assert.Equal(0, Of(Empty with { BestPies = [9] }).PieVoices);

    private static LookBackFacts Empty { get; } = new(null, null, null, [], "", Namelessly: false);

    private static Opinions Of(params LookBackFacts[] said) => Opinions.Of(said, Pies);

    private static LookBackFacts[] Enoughs(params Enough[] values) => [.. values.Select(value => Empty with { Enough = value })];
}
