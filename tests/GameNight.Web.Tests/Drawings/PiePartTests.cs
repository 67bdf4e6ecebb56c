using GameNight.Planning.Toppings;
using GameNight.Web.Drawings;

namespace GameNight.Web.Tests.Drawings;

public class PiePartTests
{
    [Theory]
    [InlineData("8", "Whole pie")]
    [InlineData("4,4", "Left half|Right half")]
    [InlineData("6,2", "Three quarters|Lower right quarter")]
    [InlineData("4,2,2", "Left half|Upper right quarter|Lower right quarter")]
    [InlineData("2,2,2,2", "Lower left quarter|Upper left quarter|Upper right quarter|Lower right quarter")]
    public void Parts_are_named_as_they_lie(string slices, string names) =>
        Assert.Equal(names, string.Join('|', PiePart.Of(Pie(slices)).Select(part => part.Name)));

    /// <summary>The letter stands where the name says, y growing downwards.</summary>
    [Fact]
    public void Letters_stand_in_their_part()
    {
        var letters = PiePart.Of(Pie("2,2,2,2")).Select(part => (Left: part.Letter.X < 100, Lower: part.Letter.Y > 100));

        Assert.Equal([(true, true), (true, false), (false, false), (false, true)], letters);
    }

    private static PieOrder Pie(string slices) =>
        new(1, [.. slices.Split(',').Select((count, index) => new Sector(((char)('A' + index)).ToString(), int.Parse(count, System.Globalization.CultureInfo.InvariantCulture)))], []);
}
