using GameNight.Nights.ForHosts;
using GameNight.Planning;
using GameNight.Planning.Fermentation;
using GameNight.Planning.Quantities;
using GameNight.TestKit.Nights;
using GameNight.TestKit.Postgres;
using NodaTime;

namespace GameNight.Nights.Tests.Plans;

public sealed class DoughLogTests(ClassDatabase database) : PlannerTest(database)
{
    [Fact]
    public async Task A_reading_moves_the_course_of_the_dough_that_is_under_way()
    {
        var night = await BegunAsync();
        var before = (await PlanAsync(night)).Plan!;
        App.Clock.Advance(Duration.FromHours(20));

        Assert.IsType<ReadingResult.Kept>(await AddAsync(night, Now(fridge: 9)));
        await UntilPlannedAsync(night.Night);

        var after = await PlanAsync(night);
        Assert.True(after.Plan!.Ripening!.Window.Best < before.Ripening!.Window.Best - Duration.FromHours(3));
        Assert.Equal(before.Yeast.ShareOfFlour.Value, after.Plan.Yeast.ShareOfFlour.Value);
        Assert.Equal(new Celsius(9), Assert.Single(after.Night.Readings!).Fridge);
    }

    [Fact]
    public async Task The_same_reading_sent_again_is_kept_once_and_can_be_taken_back()
    {
        var night = await BegunAsync();
        var reading = Now(look: DoughLook.Domed);

        var results = await Task.WhenAll(Enumerable.Range(0, 4).Select(_ => AddAsync(night, reading)));

        Assert.All(results, result => Assert.IsType<ReadingResult.Kept>(result));
        Assert.Single((await SnapshotAsync(night)).Readings!);
        Assert.IsType<ReadingResult.Kept>(await App.DoughLog.RemoveAsync(night.Group.Access, night.Night, reading, Cancellation));
        Assert.Null((await SnapshotAsync(night)).Readings);
    }

    [Fact]
    public async Task Two_hosts_who_write_different_readings_at_once_keep_both()
    {
        var night = await BegunAsync();

        var results = await Task.WhenAll(Enumerable.Range(0, 5).Select(number => AddAsync(night, Now(fridge: number))));

        Assert.All(results, result => Assert.IsType<ReadingResult.Kept>(result));
        Assert.Equal(5, (await SnapshotAsync(night)).Readings!.Count);
    }

    [Fact]
    public async Task Before_mixing_there_is_nothing_to_read()
    {
        var night = await PlannedAsync();

        Assert.IsType<ReadingResult.NotBegun>(await AddAsync(night, Now(fridge: 4)));
    }

    [Theory]
    [InlineData(-1)]
    [InlineData(1)]
    public async Task A_clock_that_runs_backwards_or_ahead_is_told(int hours)
    {
        var night = await BegunAsync();
        var wrong = Now(fridge: 4) with { At = App.Clock.GetCurrentInstant() + Duration.FromHours(hours) };

        Assert.IsType<ReadingResult.OutOfTime>(await AddAsync(night, wrong));
    }

    [Fact]
    public async Task Readings_out_of_range_are_refused_with_the_range()
    {
        var night = await BegunAsync();

        var cold = Assert.IsType<ReadingResult.Refused>(await AddAsync(night, Now(fridge: -12)));
        var nothing = Assert.IsType<ReadingResult.Refused>(await AddAsync(night, Now()));

        Assert.Equal(("readings.fridgeCelsius", SnapshotFault.OutOfRange, -2, 20), (cold.Problems[0].Field, cold.Problems[0].Fault, cold.Problems[0].Low, cold.Problems[0].High));
        Assert.Equal("readings.parts", nothing.Problems[0].Field);
    }

    [Fact]
    public async Task A_log_that_is_full_says_so()
    {
        var night = await BegunAsync();
        await Storage.Rows.TellAsync(
            Database.AdminConnectionString,
            $$"""
              update nights set readings = (select jsonb_agg(jsonb_build_object('at', '2026-01-01T00:00:00Z', 'doughCelsius', null, 'fridgeCelsius', n::numeric / 100, 'look', null))
              from generate_series(1, {{SnapshotCheck.MostReadings}}) n) where id = '{{night.Night.Value}}'
              """);

        Assert.IsType<ReadingResult.Full>(await AddAsync(night, Now(fridge: 4)));
    }

    [Fact]
    public async Task What_a_dough_taught_the_kitchen_does_not_count_for_it_again()
    {
        var night = await BegunAsync();
        App.Clock.Advance(Duration.FromHours(24));
        await AddAsync(night, Now(look: DoughLook.Airy));
        await UntilPlannedAsync(night.Night);
        var learned = (await PlanAsync(night)).Plan!.Ripening!.Learned!;
        var (facts, version) = await App.Get<KitchenDesk>().KitchenAsync(night.Group.Access, Cancellation);

        await App.Get<KitchenDesk>().SetKitchenAsync(
            night.Group.Access, facts with { Kitchen = facts.Kitchen with { Calibration = learned } }, version, Cancellation);
        await PlanAsync(night);
        await UntilPlannedAsync(night.Night);

        Assert.NotEqual(FermentationCalibration.None, learned);
        Assert.Equal(learned, (await PlanAsync(night)).Plan!.Ripening!.Learned);
    }

    [Fact]
    public async Task A_night_of_another_group_is_not_there()
    {
        var night = await BegunAsync();
        var other = await App.FoundGroupAsync();

        Assert.IsType<ReadingResult.Gone>(await App.DoughLog.AddAsync(other.Access, night.Night, Now(fridge: 4), Cancellation));
    }

    private DoughReading Now(double? fridge = null, DoughLook? look = null) =>
        new(App.Clock.GetCurrentInstant(), null, fridge is { } celsius ? new Celsius(celsius) : null, look);

    private Task<ReadingResult> AddAsync(GuestNight night, DoughReading reading) =>
        App.DoughLog.AddAsync(night.Group.Access, night.Night, reading, Cancellation);

    private async Task<PlanView> PlanAsync(GuestNight night) =>
        (await App.Plans.PlanAsync(night.Group.Access, night.Night, Cancellation))!;

    private async Task<GuestNight> PlannedAsync()
    {
        var night = await App.OpenNightForOneGuestAsync();
        await App.AnswerAsync(night.Link, Answers.Coming());
        await PlanAllAsync();
        return night;
    }

    /// <summary>Committed, and half an hour after mixing began.</summary>
    private async Task<GuestNight> BegunAsync()
    {
        var night = await PlannedAsync();
        Assert.IsType<CommitResult.Done>(await App.Doughs.CommitAsync(night.Group.Access, night.Night, Cancellation));
        await UntilPlannedAsync(night.Night);
        App.Clock.Reset((await SavedAsync(night))!.DoughCommitment!.Value + Duration.FromMinutes(30));
        await PlanAsync(night);
        await UntilPlannedAsync(night.Night);
        return night;
    }
}
