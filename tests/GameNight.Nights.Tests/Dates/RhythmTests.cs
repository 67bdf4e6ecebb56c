using GameNight.Nights.Dates;
using GameNight.Nights.Membership;
using GameNight.Nights.Records;
using GameNight.TestKit.Postgres;
using NodaTime;

namespace GameNight.Nights.Tests.Dates;

public sealed class RhythmTests(ClassDatabase database) : NightsTest(database)
{
    private static readonly LocalDate December = new(2026, 12, 1);

    private static Rhythm EverySecondFriday { get; } = new(IsoDayOfWeek.Friday, (19 * 60) + 30, 2, null, December, [], []);

    private static Rhythm LastSaturday { get; } = new(IsoDayOfWeek.Saturday, (19 * 60) + 30, null, Rhythm.LastOfMonth, December, [], []);

    [Fact]
    public void Every_second_Friday_is_counted_from_where_it_began()
    {
        Assert.Equal(["2026-12-04", "2026-12-18", "2027-01-01"], Days(EverySecondFriday, December.PlusDays(-1), 3));
        Assert.Equal(["2026-12-18", "2027-01-01"], Days(EverySecondFriday, new LocalDate(2026, 12, 4), 2));
        Assert.Equal(["2028-12-01"], Days(EverySecondFriday, new LocalDate(2028, 11, 30), 1));
    }

    [Fact]
    public void The_last_Saturday_and_the_fifth_week_are_told_apart()
    {
        Assert.Equal(["2026-12-26", "2027-01-30", "2027-02-27"], Days(LastSaturday, December, 3));
        Assert.Equal(["2027-01-02", "2027-02-06"], Days(LastSaturday with { OfMonth = 1 }, new LocalDate(2026, 12, 5), 2));
        Assert.Equal(["2026-12-26", "2027-01-23"], Days(LastSaturday with { OfMonth = 4 }, December, 2));
    }

    [Fact]
    public void Days_off_are_left_out_and_a_moved_one_stands_where_it_is_now()
    {
        var rhythm = EverySecondFriday with
        {
            DaysOff = [new LocalDate(2026, 12, 18)],
            Moved = [new MovedDay(new LocalDate(2027, 1, 1), new LocalDateTime(2027, 1, 3, 18, 0))],
        };

        var nights = RhythmDays.Next(rhythm, December, 3, "Europe/Berlin");

        Assert.Equal(
            [new LocalDateTime(2026, 12, 4, 19, 30), new(2027, 1, 3, 18, 0), new(2027, 1, 15, 19, 30)], nights.Select(night => night.At));
        Assert.Equal([false, true, false], nights.Select(night => night.IsMoved));

        // Moved to before today it is over, although its own day is yet to come.
        Assert.Equal("2027-01-15", Days(rhythm, new LocalDate(2027, 1, 3), 1)[0]);
    }

    [Fact]
    public void A_time_that_the_clock_skips_moves_on_and_every_other_keeps_its_time_of_day()
    {
        var nightly = EverySecondFriday with { Day = IsoDayOfWeek.Sunday, EveryWeeks = 1, ServeMinute = 150 };

        var nights = RhythmDays.Next(nightly, new LocalDate(2027, 3, 20), 3, "Europe/Berlin").Select(night => night.At).ToList();

        Assert.Equal([new LocalDateTime(2027, 3, 21, 2, 30), new(2027, 3, 28, 3, 30), new(2027, 4, 4, 2, 30)], nights);
        Assert.Equal(
            [Instant.FromUtc(2027, 3, 26, 18, 30), Instant.FromUtc(2027, 4, 2, 17, 30)],
            RhythmDays.Next(EverySecondFriday with { EveryWeeks = 1 }, new LocalDate(2027, 3, 25), 2, "Europe/Berlin")
                .Select(night => NightTime.ToInstant(night.At, "Europe/Berlin")));
    }

    [Fact]
    public void Nights_come_in_order_on_their_weekday_and_none_is_passed_over()
    {
        foreach (var later in Enumerable.Range(0, 900))
        {
            var (weeks, day) = (1 + (later % Rhythm.MostWeeks), (IsoDayOfWeek)(1 + (later % 7)));
            var rhythm = EverySecondFriday with { EveryWeeks = weeks, Day = day };
            var after = December.PlusDays(later);

            var days = RhythmDays.Next(rhythm, after, 5, "Europe/Berlin").Select(night => night.Day).ToList();

            Assert.All(days, one => Assert.Equal(day, one.DayOfWeek));
            Assert.All(days.Zip(days.Skip(1)), pair => Assert.Equal(7 * weeks, Period.DaysBetween(pair.First, pair.Second)));
            Assert.InRange(Period.DaysBetween(after, days[0]), 1, 7 * weeks);
            Assert.Equal(0, Period.DaysBetween(RhythmDays.Next(rhythm, December.PlusDays(-1), 1, "Europe/Berlin")[0].Day, days[0]) % (7 * weeks));
        }
    }

    [Fact]
    public void Everything_off_for_two_years_is_no_night_and_no_endless_search() => Assert.Empty(RhythmDays.Next(
        EverySecondFriday with { DaysOff = [.. Enumerable.Range(0, 200).Select(two => new LocalDate(2026, 12, 4).PlusWeeks(2 * two))] },
        December, 3, "Europe/Berlin"));

    [Fact]
    public async Task A_rhythm_is_kept_changed_and_told_of_when_another_host_was_quicker()
    {
        var group = await App.FoundGroupAsync();
        var desk = App.Get<RhythmDesk>();
        Assert.IsType<RhythmResult.Kept>(await desk.SetAsync(group.Access, EverySecondFriday, before: null, Cancellation));
        Assert.IsType<RhythmResult.ChangedMeanwhile>(await desk.SetAsync(group.Access, LastSaturday, before: null, Cancellation));
        var stands = await desk.RhythmAsync(group.Access, Cancellation);
        Assert.IsType<RhythmResult.Kept>(await desk.SetAsync(group.Access, LastSaturday, stands, Cancellation));

        var day = new LocalDate(2026, 12, 26);
        Assert.IsType<RhythmResult.Kept>(await desk.MoveAsync(group.Access, day, new LocalDateTime(2026, 12, 27, 18, 0), Cancellation));
        Assert.Equal(new LocalDateTime(2026, 12, 27, 18, 0), (await ProposedAsync())[0]);
        Assert.IsType<RhythmResult.Kept>(await desk.SkipAsync(group.Access, day, Cancellation));
        Assert.IsType<RhythmResult.Kept>(await desk.SkipAsync(group.Access, day, Cancellation));
        Assert.Equal(new LocalDateTime(2027, 1, 30, 19, 30), (await ProposedAsync())[0]);
        Assert.IsType<RhythmResult.Kept>(await desk.MoveAsync(group.Access, day, day.At(new LocalTime(19, 30)), Cancellation));
        Assert.Equal(day.At(new LocalTime(19, 30)), (await ProposedAsync())[0]);

        async Task<List<LocalDateTime>> ProposedAsync() =>
            [.. (await App.Get<DateDesk>().ProposedAsync(group.Access, Cancellation)).Select(night => night.At)];
    }

    [Fact]
    public async Task What_is_no_rhythm_is_refused_with_its_field()
    {
        var group = await App.FoundGroupAsync();
        var desk = App.Get<RhythmDesk>();
        Assert.Equal("distance NoDistance", await FaultAsync(EverySecondFriday with { EveryWeeks = null }));
        Assert.Equal("distance NoDistance", await FaultAsync(EverySecondFriday with { OfMonth = 1 }));
        Assert.Equal("everyWeeks OutOfRange", await FaultAsync(EverySecondFriday with { EveryWeeks = 9 }));
        Assert.Equal("ofMonth OutOfRange", await FaultAsync(LastSaturday with { OfMonth = 5 }));
        Assert.Equal("time OutOfRange", await FaultAsync(LastSaturday with { ServeMinute = 1440 }));
        await desk.SetAsync(group.Access, EverySecondFriday with { Day = IsoDayOfWeek.Sunday, EveryWeeks = 1 }, null, Cancellation);

        Assert.Equal(RhythmFault.NotANight, await MovedAsync(new LocalDate(2026, 12, 14), new LocalDateTime(2026, 12, 14, 19, 30)));
        Assert.Equal(RhythmFault.HasPassed, await MovedAsync(new LocalDate(2026, 12, 13), new LocalDateTime(2026, 12, 9, 18, 0)));
        Assert.Equal(RhythmFault.InSkippedHour, await MovedAsync(new LocalDate(2027, 3, 28), new LocalDateTime(2027, 3, 28, 2, 30)));
        Assert.Equal(RhythmFault.TooFarMoved, await MovedAsync(new LocalDate(2026, 12, 13), new LocalDateTime(2027, 3, 1, 18, 0)));
        await Assert.ThrowsAsync<RightMissingException>(() => desk.SkipAsync(
            new GroupAccess(group.Id, group.Host, HostRole.Cook), new LocalDate(2026, 12, 13), Cancellation));

        async Task<string> FaultAsync(Rhythm rhythm) =>
            Assert.IsType<RhythmResult.Refused>(await desk.SetAsync(group.Access, rhythm, null, Cancellation)).Problems
                .Select(problem => $"{problem.Field} {problem.Fault}").Single();

        async Task<RhythmFault> MovedAsync(LocalDate day, LocalDateTime to) =>
            Assert.IsType<RhythmResult.Refused>(await desk.MoveAsync(group.Access, day, to, Cancellation)).Problems.Single().Fault;
    }

    private static List<string> Days(Rhythm rhythm, LocalDate after, int count) =>
        [.. RhythmDays.Next(rhythm, after, count, "Europe/Berlin").Select(night => night.At.Date.ToString("uuuu-MM-dd", null))];
}
