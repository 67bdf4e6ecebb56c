using CsCheck;
using GameNight.Planning.Guests;
using GameNight.Planning.Quantities;
using GameNight.Planning.Toppings;

namespace GameNight.Planning.Tests.Toppings;

public class FairOverTimeTests
{
    [Fact]
    public void Who_is_new_or_missed_nothing_counts_as_usual()
    {
        Assert.Equal(100, FairOverTime.WeightPercent(null));
        Assert.Equal(100, FairOverTime.WeightPercent([Night(1, null), Night(2, 1)]));
        Assert.Equal(100, FairOverTime.WeightPercent([Night(1, 0) with { Came = false }]));
    }

    [Theory]
    [InlineData(0.5, 125)] // half a night missed, beside the imagined full one: 0.5 / 2
    [InlineData(0.0, 150)] // 1 / 2
    public void One_night_counts_half(double served, int percent) => Assert.Equal(percent, FairOverTime.WeightPercent([Night(1, served)]));

    [Fact]
    public void It_is_bounded_and_less_on_any_night_never_weighs_less() =>
        Gen.Select(Gen.Double[0, 1].Array[0, 12], Gen.Int[0, 11], Gen.Double[0, 1]).Sample((served, which, part) =>
        {
            var before = FairOverTime.WeightPercent([.. served.Select((share, index) => Night(index + 1, share))]);
            var less = served.Select((share, index) => index == which ? share * part : share);
            var after = FairOverTime.WeightPercent([.. less.Select((share, index) => Night(index + 1, share))]);

            Assert.InRange(before, FairOverTime.UsualPercent, FairOverTime.MostPercent);
            Assert.True(after >= before, $"{before} became {after}");
        });

    /// <summary>With everything else alike a heavier eater never gets less of what they like, where the answers are proved.</summary>
    [Fact]
    public void Weighing_more_never_serves_worse() =>
        Gen.Select(ASplit.Nights(Gen.Int[2, 5], mostSlices: 4), Gen.Int[0, 4], Gen.Int[101, 150]).Sample(
            (night, who, percent) =>
            {
                var heavy = night with { Eaters = [.. night.Eaters.Select((eater, index) => index == who ? eater with { WeightPercent = percent } : eater)] };
                var (before, after) = (Of(night), Of(heavy));
                if (who >= night.Eaters.Count || before.Quality != SplitQuality.Proved || after.Quality != SplitQuality.Proved
                    || before.Conflicts.Concat(after.Conflicts).Any(conflict => conflict is EaterShortOfSlices or TooFewSlices))
                {
                    return;
                }

                // The logarithm is kept in thousandths: two answers that differ by less are the same to it, and prices of
                // combinations decide between them.
                Assert.True(ScoreOf(after, night.Eaters[who].Id) >= ScoreOf(before, night.Eaters[who].Id) - 0.06);
            },
            iter: 60);

    [Fact]
    public void Of_two_with_opposite_tastes_the_one_who_missed_more_is_served_first()
    {
        SplitEater[] eaters =
        [
            ASplit.Eater("ana", 3, null, ("mushrooms", Liking.Favourite), ("peppers", Liking.Never)),
            ASplit.Eater("eva", 3, null, ("mushrooms", Liking.Never), ("peppers", Liking.Favourite)),
            .. Enumerable.Range(0, 2).Select(index => ASplit.Eater($"all{index}", 1)),
        ];
        var night = ASplit.Night(AMenu.With(6, mostToppings: 1), 1, eaters) with { Parts = 1 };

        foreach (var heavy in new[] { "ana", "eva" })
        {
            var split = Of(night with { Eaters = [.. eaters.Select(eater => eater.Id == heavy ? eater with { WeightPercent = 150 } : eater)] });

            Assert.All(eaters[..2], eater => Assert.True(ScoreOf(split, heavy) >= ScoreOf(split, eater.Id)));
        }
    }

    private static PastEvening Night(int ago, double? served) =>
        new(ago, AnswerState.Coming, Came: true, Served: served is { } share ? new Share(share) : null);

    private static ToppingSplit Of(SplitRequest request) => SplitPlanner.For(request, Effort.Usual, CancellationToken.None);

    private static double ScoreOf(ToppingSplit split, string eater) =>
        split.Satisfactions.FirstOrDefault(row => row.EaterId == eater)?.Score ?? 0;
}
