using GameNight.Nights.ForGuests;
using GameNight.Nights.Records;
using GameNight.Planning.Guests;
using GameNight.Planning.Quantities;
using NodaTime;

namespace GameNight.Nights.Tests.ForGuests;

public class StayTimesTests
{
    private static readonly NightFacts Evening = new(
        "Tiles", new LocalDateTime(2026, 12, 12, 19, 30), new LocalDateTime(2026, 12, 12, 23, 30), "Europe/Berlin", "", "",
        new FormulaId(Guid.NewGuid()), new Share(0.1), 40, 48, 72, 2);

    [Theory]
    [InlineData("21:00", null, null)]
    [InlineData(null, "22:00", null)]
    [InlineData("21:00", "22:00", null)]
    [InlineData("19:00", null, null)]
    [InlineData("23:30", null, AnswerFault.ComesAfterTheEnd)]
    [InlineData("02:00", null, AnswerFault.ComesAfterTheEnd)]
    [InlineData(null, "19:30", AnswerFault.LeavesBeforeTheFirstPie)]
    [InlineData(null, "18:00", AnswerFault.LeavesBeforeTheFirstPie)]
    [InlineData(null, "23:45", null)]
    [InlineData("22:00", "21:00", AnswerFault.LeavesBeforeComing)]
    [InlineData("21:00", "21:00", AnswerFault.LeavesBeforeComing)]
    public void Times_that_do_not_fit_the_evening_are_told(string? comes, string? leaves, AnswerFault? fault) =>
        Assert.Equal(fault, StayTimes.Fault(Evening, Saying(comes, leaves)));

    [Fact]
    public void What_says_nothing_is_not_kept()
    {
        Assert.Equal((null, null), Kept("19:00", "23:30"));
        Assert.Equal((null, null), Kept("19:30", "23:59"));
        Assert.Equal((20 * 60, 23 * 60), Kept("20:00", "23:00"));

        static (int?, int?) Kept(string comes, string leaves)
        {
            var plain = StayTimes.Plain(Evening, Saying(comes, leaves));
            return (plain.ComesAtMinute, plain.LeavesAtMinute);
        }
    }

    [Fact]
    public void A_time_after_midnight_belongs_to_the_night()
    {
        var late = Evening with { EndsAt = new LocalDateTime(2026, 12, 13, 2, 0) };

        Assert.Equal(
            new Stay(Duration.FromHours(3.5), Duration.FromHours(5.5)),
            StayTimes.Of(late, Saying("23:00", "01:00")));
    }

    [Fact]
    public void The_hour_that_the_clock_shows_twice_is_counted()
    {
        var autumn = Evening with { ServeAt = new LocalDateTime(2026, 10, 24, 22, 0), EndsAt = new LocalDateTime(2026, 10, 25, 5, 0) };

        Assert.Equal(new Stay(LeavesAfter: Duration.FromHours(7)), StayTimes.Of(autumn, Saying(null, "04:00")));
    }

    [Fact]
    public void Offered_are_whole_hours_inside_a_long_evening_and_halves_inside_a_short_one()
    {
        Assert.Equal([20 * 60, 21 * 60, 22 * 60, 23 * 60], StayTimes.Offered(Evening.ServeAt, Evening.EndsAt));
        Assert.Equal([20 * 60, 20 * 60 + 30], StayTimes.Offered(Evening.ServeAt, new LocalDateTime(2026, 12, 12, 21, 0)));
        Assert.Equal([23 * 60, 0, 60], StayTimes.Offered(new LocalDateTime(2026, 12, 12, 22, 0), new LocalDateTime(2026, 12, 13, 1, 30)));
    }

    [Fact]
    public void Whatever_is_offered_is_accepted()
    {
        for (var start = 0; start < 1440; start += 35)
        {
            for (var length = 10; length < 1000; length += 55)
            {
                var serveAt = new LocalDateTime(2026, 12, 12, 0, 0).PlusMinutes(start);
                var night = Evening with { ServeAt = serveAt, EndsAt = serveAt.PlusMinutes(length) };
                foreach (var minute in StayTimes.Offered(serveAt, night.EndsAt))
                {
                    Assert.Null(StayTimes.Fault(night, Saying(null, null) with { ComesAtMinute = minute }));
                    Assert.Null(StayTimes.Fault(night, Saying(null, null) with { LeavesAtMinute = minute }));
                }
            }
        }
    }

    [Fact]
    public void Whatever_a_move_of_the_night_makes_of_the_times_can_be_planned()
    {
        for (var moved = 0; moved < 1440; moved += 45)
        {
            for (var comes = 0; comes < 1440; comes += 65)
            {
                for (var leaves = 0; leaves < 1440; leaves += 85)
                {
                    var serveAt = new LocalDateTime(2026, 12, 12, 0, 0).PlusMinutes(moved);
                    var stay = StayTimes.Of(
                        Evening with { ServeAt = serveAt, EndsAt = null },
                        Saying(null, null) with { ComesAtMinute = comes, LeavesAtMinute = leaves });

                    Assert.False(stay?.LeavesAfter <= stay?.ComesAfter);
                    Assert.True(stay?.ComesAfter is not { } after || (after > Duration.Zero && after <= Duration.FromHours(24)));
                    Assert.True(stay?.LeavesAfter is not { } until || (until >= Duration.Zero && until <= Duration.FromHours(24)));
                }
            }
        }
    }

    private static AnswerFacts Saying(string? comes, string? leaves) => new(
        Presence.Coming, false, Hunger.AsUsual, [], new Dictionary<string, Liking>(), Minute(comes), Minute(leaves));

    private static int? Minute(string? time) => time is null ? null : (int.Parse(time[..2], null) * 60) + int.Parse(time[3..], null);
}
