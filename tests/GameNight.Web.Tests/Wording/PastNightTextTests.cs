using GameNight.Nights.PastNights;
using GameNight.Nights.Records;
using GameNight.Web.Tests.Panels;
using GameNight.Web.Wording;

namespace GameNight.Web.Tests.Wording;

public class PastNightTextTests
{
    [Theory]
    [InlineData(4, 5.0, "27 of 32 slices were eaten, about 4.5 each. That is within what was expected (20 to 33).")]
    [InlineData(4, 14.0, "18 of 32 slices were eaten, about 3 each. Less than expected (20 to 33).")]
    [InlineData(6, 6.0, "42 of 48 slices were eaten, about 7 each. More than expected (20 to 33).")]
    [InlineData(3, 0.0, "24 of 24 slices were eaten, about 4 each. Nothing was left, so people may have wanted more.")]
    [InlineData(4, null, "How many slices were left is not noted.")]
    [InlineData(null, 3.0, "Pies baked and slices left are not noted yet.")]
    public void Eaten_slices_are_set_against_what_was_expected(int? baked, double? left, string sentence) =>
        Assert.Equal(sentence, PastNightText.Eaten(PastNights.Slices(baked, left), people: 6));

    [Theory]
    [InlineData("", "Nobody has said whether there was enough.")]
    [InlineData("Right", "Enough: 1 right; too few voices for an average.")]
    [InlineData("Right TooMuch", "Enough: 1 right and 1 too much; too few voices for an average.")]
    [InlineData("Right Right TooMuch", "Enough: right, leaning to too much on average (2 right and 1 too much).")]
    [InlineData("TooLittle TooLittle TooLittle", "Enough: too little on average (3 too little).")]
    [InlineData("TooLittle Right TooMuch", "Enough: right on average (1 too little, 1 right and 1 too much).")]
    public void Few_voices_are_counted_and_never_averaged(string said, string sentence) => Assert.Equal(
        sentence, PastNightText.Enough(Said([.. said.Split(' ', StringSplitOptions.RemoveEmptyEntries)
            .Select(word => PastNights.Silence with { Enough = Enum.Parse<Enough>(word) })])));

    [Theory]
    [InlineData("", "Nobody has named a best pie.")]
    [InlineData("1 2", "No pie stands out: no two of 2 people named the same.")]
    [InlineData("1 1 2", "Liked best: A (something, something) (2 of 3).")]
    public void What_won_needs_two_who_agree(string votes, string sentence) => Assert.Equal(
        sentence, PastNightText.Best(
            Said([.. votes.Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(vote => PastNights.Silence with { BestPies = [int.Parse(vote, null)] })]),
            PastNights.Pies(2)));

    [Fact]
    public void Every_problem_of_what_a_host_writes_down_has_a_sentence() => Assert.All(
        Enum.GetValues<LogFault>(),
        fault => Assert.Matches("^[A-Z].*[.]$", LogProblemText.Say(new LogProblem(LogField.Left, null, fault, 1.5, 8))));

    private static Opinions Said(params LookBackFacts[] said) => Opinions.Of(said, PastNights.Pies(2));
}
