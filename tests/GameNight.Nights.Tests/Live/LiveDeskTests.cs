using GameNight.Nights.Live;
using GameNight.Nights.Tests.Plans;
using GameNight.Planning.Live;
using GameNight.TestKit.Nights;
using GameNight.TestKit.Postgres;
using NodaTime;

namespace GameNight.Nights.Tests.Live;

public sealed class LiveDeskTests(ClassDatabase database) : PlannerTest(database)
{
    [Fact]
    public async Task A_tap_counts_once_however_often_it_is_sent_and_is_there_for_every_device()
    {
        var night = await OnTheNightAsync();
        var tap = Guid.CreateVersion7();

        var results = await Task.WhenAll(Enumerable.Range(0, 5).Select(_ => TapAsync(night, Done("shop"), tap)));

        Assert.All(results, result => Assert.IsType<LiveResult.Counted>(result));
        var view = (await App.Lives.LiveAsync(night.Group.Access, night.Night, Cancellation))!;
        Assert.Equal(LiveState.Done, Step(view, "shop").State);
        Assert.Equal(tap.ToString("N"), view.LastTap!.Id);
    }

    [Fact]
    public async Task Of_two_who_tap_the_same_step_the_first_counts_and_the_second_is_told()
    {
        var night = await OnTheNightAsync();

        var results = await Task.WhenAll(TapAsync(night, Done("sauce")), TapAsync(night, Done("sauce")));

        Assert.Single(results.OfType<LiveResult.Counted>());
        Assert.Equal("sauce", Assert.Single(results.OfType<LiveResult.AlreadySo>()).Before.Step);
        Assert.Equal(LiveState.Done, Step(await ViewAsync(night), "sauce").State);
    }

    [Fact]
    public async Task The_last_tap_is_taken_back_and_nothing_else()
    {
        var night = await OnTheNightAsync();
        await TapAsync(night, Done("sauce"));
        App.Clock.Advance(Duration.FromMinutes(1));
        await TapAsync(night, Done("grate-cheese"));
        var last = (await ViewAsync(night)).LastTap!;

        Assert.IsType<LiveResult.Counted>(await TakeBackAsync(night, last.Id));
        Assert.IsType<LiveResult.Nothing>(await TakeBackAsync(night, last.Id));

        var view = await ViewAsync(night);
        Assert.Equal(LiveState.Done, Step(view, "sauce").State);
        Assert.NotEqual(LiveState.Done, Step(view, "grate-cheese").State);
        Assert.Equal("sauce", view.LastTap!.Step);
    }

    [Fact]
    public async Task What_was_taken_back_can_be_tapped_again()
    {
        var night = await OnTheNightAsync();
        await TapAsync(night, Done("sauce"));
        await TakeBackAsync(night, (await ViewAsync(night)).LastTap!.Id);

        Assert.IsType<LiveResult.Counted>(await TapAsync(night, Done("sauce")));
    }

    [Fact]
    public async Task Another_process_shows_the_same_night_with_every_clock()
    {
        var night = await OnTheNightAsync();
        await TapAsync(night, new LiveMark("", default, LiveMarkKind.ClockSet, Until: App.Clock.GetCurrentInstant() + Duration.FromMinutes(9), Name: "Peppers"));
        await TapAsync(night, new LiveMark("", default, LiveMarkKind.StepBegun, "preheat"));

        await using var other = NightsApp.On(Database.AppConnectionString);
        other.Clock.Reset(App.Clock.GetCurrentInstant());
        var here = await ViewAsync(night);
        var there = (await other.Lives.LiveAsync(night.Group.Access, night.Night, Cancellation))!;

        Assert.Equal(2, here.Evening!.Clocks.Count);
        Assert.Equal(here.Evening.Clocks, there.Evening!.Clocks);
        Assert.Equal(here.Evening.Steps, there.Evening.Steps);
    }

    [Fact]
    public async Task A_new_order_counts_on_every_device_until_it_is_taken_back()
    {
        var night = await OnTheNightAsync();
        var before = (await ViewAsync(night)).Evening!;
        var later = before.Steps.Where(step => step.IsTapped)
            .ToDictionary(step => step.Id, step => step.Start + (step.Id == "sauce" ? Duration.FromMinutes(7) : Duration.Zero));

        Assert.IsType<LiveResult.Counted>(await TapAsync(night, new LiveMark("", default, LiveMarkKind.NewOrder, Starts: later)));

        var view = await ViewAsync(night);
        Assert.Equal(before.Steps.Single(step => step.Id == "sauce").Start + Duration.FromMinutes(7), Step(view, "sauce").Start);
        Assert.Equal(later, view.LastTap!.Starts);
        await TakeBackAsync(night, view.LastTap.Id);
        Assert.Equal(before.Steps, (await ViewAsync(night)).Evening!.Steps);
    }

    [Fact]
    public async Task An_order_says_nothing_once_the_plan_is_another()
    {
        var night = await OnTheNightAsync();
        var later = (await ViewAsync(night)).Evening!.Steps.Where(step => step.IsTapped)
            .ToDictionary(step => step.Id, step => step.Start + (step.Id == "sauce" ? Duration.FromMinutes(7) : Duration.Zero));
        await TapAsync(night, new LiveMark("", default, LiveMarkKind.NewOrder, Starts: later));

        App.Clock.Advance(Duration.FromMinutes(5));
        await App.AnswerAsync(night.Link, Answers.Coming(revision: 1, companions: 1));
        await PlanAllAsync();

        var view = await ViewAsync(night);
        Assert.True(view.Plan.MadeAt > view.LastTap!.At);
        Assert.Equal(Step(view, "sauce").Planned.Start, Step(view, "sauce").Start);
    }

    [Fact]
    public async Task A_night_on_time_is_offered_no_other_order()
    {
        var night = await OnTheNightAsync();

        Assert.Null(await App.Lives.AnotherOrderAsync(await ViewAsync(night), Cancellation));
    }

    [Fact]
    public async Task What_cannot_be_is_refused_and_not_kept()
    {
        var night = await OnTheNightAsync();
        var now = App.Clock.GetCurrentInstant();

        Assert.Equal("step", await RefusedAsync(new LiveMark("", default, LiveMarkKind.StepDone)));
        Assert.Equal("hands", await RefusedAsync(new LiveMark("", default, LiveMarkKind.HandsNow, Hands: 9)));
        Assert.Equal("until", await RefusedAsync(new LiveMark("", default, LiveMarkKind.ClockSet, Until: now - Duration.FromMinutes(1), Name: "Late")));
        Assert.Equal("until", await RefusedAsync(new LiveMark("", default, LiveMarkKind.NotBefore, Until: now + Duration.FromDays(2))));
        Assert.Equal("name", await RefusedAsync(new LiveMark("", default, LiveMarkKind.ClockSet, Until: now + Duration.FromMinutes(1), Name: new string('a', 41))));
        Assert.Equal("starts", await RefusedAsync(new LiveMark("", default, LiveMarkKind.NewOrder)));
        Assert.Equal("starts", await RefusedAsync(new LiveMark("", default, LiveMarkKind.NewOrder, Starts: new Dictionary<string, Instant> { [new string('a', 41)] = now })));
        Assert.Null((await ViewAsync(night)).LastTap);

        async Task<string> RefusedAsync(LiveMark mark) => Assert.IsType<LiveResult.Refused>(await TapAsync(night, mark)).Field;
    }

    [Fact]
    public async Task Another_group_has_no_such_night()
    {
        var night = await OnTheNightAsync();
        var other = await App.FoundGroupAsync();

        Assert.IsType<LiveResult.Gone>(await App.Lives.TapAsync(other.Access, night.Night, Guid.NewGuid(), Done("sauce"), Cancellation));
        Assert.Null(await App.Lives.LiveAsync(other.Access, night.Night, Cancellation));
    }

    private static LiveMark Done(string step) => new("", default, LiveMarkKind.StepDone, step);

    private static LiveStep Step(LiveView view, string id) => view.Evening!.Steps.Single(step => step.Id == id);

    private Task<LiveResult> TapAsync(GuestNight night, LiveMark mark, Guid? tap = null) =>
        App.Lives.TapAsync(night.Group.Access, night.Night, tap ?? Guid.CreateVersion7(), mark, Cancellation);

    private Task<LiveResult> TakeBackAsync(GuestNight night, string last) =>
        App.Lives.TakeBackAsync(night.Group.Access, night.Night, last, Cancellation);

    private async Task<LiveView> ViewAsync(GuestNight night) => (await App.Lives.LiveAsync(night.Group.Access, night.Night, Cancellation))!;
}
