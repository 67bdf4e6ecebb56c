using CsCheck;
using GameNight.Planning.Toppings;

namespace GameNight.Planning.Tests.Toppings;

public class ContestedSharesTests
{
    private static readonly Gen<(int[] Wanted, int Available)> Tables =
        from wanted in Gen.Int[0, 8].Array[1, 12]
        from available in Gen.Int[0, wanted.Sum()]
        select (wanted, available);

    [Fact]
    public void All_that_there_is_is_given_and_nobody_gets_more_than_they_want() => Tables.Sample(table =>
    {
        var whole = ContestedShares.Whole(table.Wanted, table.Available);

        Assert.Equal(table.Available, whole.Sum());
        Assert.All(whole.Zip(table.Wanted), person => Assert.InRange(person.First, 0, person.Second));
    });

    /// <summary>What makes the rule what it is: any two divide what they have together as two alone would.</summary>
    [Fact]
    public void Any_two_share_what_both_have_as_they_would_alone() => Tables.Where(table => table.Wanted.Length > 1).Sample(table =>
    {
        double[] wanted = [.. table.Wanted.Select(wish => (double)wish)];
        var shares = ContestedShares.Of(wanted, table.Available);
        for (var other = 1; other < wanted.Length; other++)
        {
            var both = shares[0] + shares[other];
            var conceded = (First: Math.Max(0, both - wanted[other]), Second: Math.Max(0, both - wanted[0]));
            var contested = both - conceded.First - conceded.Second;

            Assert.Equal(conceded.First + (contested / 2), shares[0], 9);
        }
    });
}
