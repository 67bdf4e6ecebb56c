using GameNight.Planning.Timeline;

namespace GameNight.Reference.Tests.Timeline;

/// <summary>The smallest lag cycle: a cold ferment of at least 40 hours for a dough made 36 hours before.</summary>
public class TemporalNetworkTests
{
    private const int Balled = 0;
    private const int FirstOut = 1;
    private const int FarAway = 1000;

    [Fact]
    public void At_least_forty_and_at_most_thirty_six_is_four_too_long()
    {
        var cycle = AtLeastFortyAndAtMost(36).FindCycle();

        Assert.NotNull(cycle);
        Assert.Equal(4, cycle.TooLongBy);
        Assert.Equal([Balled, FirstOut], cycle.Events.Order());
    }

    [Fact]
    public void At_exactly_forty_there_is_one_schedule()
    {
        var network = AtLeastFortyAndAtMost(40);
        int[] earliest = [0, -FarAway];
        int[] latest = [0, FarAway];

        var agrees = network.Narrow(earliest, latest, new AnyTime(), out _);

        Assert.Null(network.FindCycle());
        Assert.True(agrees);
        Assert.Equal([0, 40], earliest);
        Assert.Equal([0, 40], latest);
    }

    [Fact]
    public void With_two_to_spare_the_bounds_leave_two()
    {
        int[] earliest = [0, -FarAway];
        int[] latest = [0, FarAway];

        Assert.True(AtLeastFortyAndAtMost(42).Narrow(earliest, latest, new AnyTime(), out _));

        Assert.Equal(40, earliest[FirstOut]);
        Assert.Equal(42, latest[FirstOut]);
    }

    private static TemporalNetwork AtLeastFortyAndAtMost(int most)
    {
        var network = new TemporalNetwork(events: 2);
        network.AtLeast(Balled, FirstOut, 40);
        network.AtMost(Balled, FirstOut, most);
        return network;
    }

    private sealed class AnyTime : IFreeTimes
    {
        public int NextFree(int i, int minute) => minute;

        public int PreviousFree(int i, int minute) => minute;
    }
}
