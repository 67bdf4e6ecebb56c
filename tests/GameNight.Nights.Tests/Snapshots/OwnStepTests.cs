using GameNight.Nights.ForHosts;
using GameNight.Nights.Records;
using GameNight.Nights.Tests.Plans;
using GameNight.Planning;
using GameNight.Planning.Contract;
using GameNight.Planning.Timeline;
using GameNight.TestKit.Nights;
using GameNight.TestKit.Postgres;
using NodaTime;

namespace GameNight.Nights.Tests.Snapshots;

public sealed class OwnStepTests(ClassDatabase database) : PlannerTest(database)
{
    private static readonly Duration Quarter = Duration.FromMinutes(15);

    private static NamedOwnStep Chairs => new("Fetch the chairs", new OwnStep(3, Quarter, true, After: new StepTie(StepKind.Shop)));

    private static NamedOwnStep Lights => new("Light the garden", new OwnStep(9, Quarter, true, After: new StepTie(StepKind.Own, 3)));

    [Fact]
    public async Task A_step_arrives_in_the_snapshot_by_its_number_and_its_name_does_not()
    {
        var night = await App.OpenNightForOneGuestAsync();

        await OverruleAsync(night, overrides => overrides.WithOwn(Lights with { Step = Lights.Step with { After = new StepTie(StepKind.Serve) } }).WithOwn(Chairs));
        await OverruleAsync(night, overrides => overrides.WithOwn(Lights));
        await OverruleAsync(night, overrides => overrides.WithOwn(Lights));

        Assert.Equal([Chairs, Lights], (await App.ViewAsync(night.Group, night.Night)).Overrides.Own!);
        var snapshot = await SnapshotAsync(night);
        Assert.Equal([Chairs.Step, Lights.Step], snapshot.OwnSteps!);
        Assert.DoesNotContain("chairs", PlanJson.Canonical(snapshot), StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public async Task A_circle_a_step_of_thirty_hours_and_a_step_without_a_name_are_refused_and_nothing_changes()
    {
        var night = await App.OpenNightForOneGuestAsync();
        await OverruleAsync(night, overrides => overrides.WithOwn(Chairs).WithOwn(Lights));
        NamedOwnStep[] bad =
        [
            Chairs with { Step = Chairs.Step with { After = new StepTie(StepKind.Own, 9) } },
            Chairs with { Step = Chairs.Step with { After = new StepTie(StepKind.Own, 3) } },
            Chairs with { Step = Chairs.Step with { Length = Duration.FromHours(30) } },
            Chairs with { Name = "" },
            Chairs with { Name = new string('x', NamedOwnStep.LongestName + 1) },
        ];

        foreach (var step in bad)
        {
            Assert.NotEmpty(Assert.IsType<SaveResult.Refused>(await OverruleAsync(night, overrides => overrides.WithOwn(step))).Problems);
        }

        Assert.Equal([Chairs, Lights], (await App.ViewAsync(night.Group, night.Night)).Overrides.Own!);
    }

    [Fact]
    public void What_was_tied_to_a_step_that_is_taken_out_takes_over_its_limits()
    {
        var both = NightOverrides.None.WithOwn(Chairs).WithOwn(Lights);
        Assert.Equal([Lights with { Step = Lights.Step with { After = new StepTie(StepKind.Shop) } }], both.WithoutOwn(3).Own!);

        // What has a limit of its own left only loses the tie.
        var timed = Lights with { Step = Lights.Step with { Before = new StepTie(StepKind.Preheat) } };
        Assert.Equal([timed with { Step = timed.Step with { After = null } }], NightOverrides.None.WithOwn(Chairs).WithOwn(timed).WithoutOwn(3).Own!);

        // The last one of a circle that never was: a step before the one that goes, which itself came after it.
        var first = Chairs with { Step = Chairs.Step with { After = null, Before = new StepTie(StepKind.Own, 9) } };
        var second = Lights with { Step = Lights.Step with { After = new StepTie(StepKind.Own, 3) } };
        Assert.Empty(OwnStepCheck.Problems([.. NightOverrides.None.WithOwn(first).WithOwn(second).WithoutOwn(9).Own!.Select(own => own.Step)]));
        Assert.Null(both.WithoutOwn(9).WithoutOwn(3).Own);
    }

    [Fact]
    public async Task Helpers_of_the_night_are_its_hands_and_their_names_stay_out_of_the_snapshot()
    {
        var night = await App.OpenNightForOneGuestAsync();
        Assert.Null((await SnapshotAsync(night)).Helpers);
        HelperOfNight[] helpers = [new(HelperSkill.Everything, Name: "Zofia"), new(HelperSkill.FetchAndClear, night.Guest)];

        await OverruleAsync(night, overrides => overrides.WithOwn(Chairs with { Step = Chairs.Step with { Who = 2 } }).HelpedBy(helpers));

        var snapshot = await SnapshotAsync(night);
        Assert.Equal(3, snapshot.Kitchen.Hands);
        Assert.Equal([HelperSkill.Everything, HelperSkill.FetchAndClear], snapshot.Helpers!);
        Assert.DoesNotContain("Zofia", PlanJson.Canonical(snapshot), StringComparison.Ordinal);
        Assert.Empty(new SnapshotCheck(GameNight.TestKit.SharedFolder.Tables).Problems(snapshot));

        // Who is taken off takes nobody else's step along.
        await OverruleAsync(night, overrides => overrides.WithoutHelper(1, helpers));
        snapshot = await SnapshotAsync(night);
        Assert.Equal((2, (int?)1), (snapshot.Kitchen.Hands, snapshot.OwnSteps![0].Who));
        await OverruleAsync(night, overrides => overrides.HelpedBy([]));
        Assert.Equal((1, (int?)null), ((await SnapshotAsync(night)).Kitchen.Hands, (await SnapshotAsync(night)).OwnSteps![0].Who));
    }

    [Fact]
    public async Task Too_many_helpers_are_refused_and_nothing_changes()
    {
        var night = await App.OpenNightForOneGuestAsync();

        Assert.IsType<SaveResult.Refused>(await OverruleAsync(night, overrides => overrides.HelpedBy([.. Enumerable.Repeat(new HelperOfNight(HelperSkill.Everything), 8)])));
        Assert.IsType<SaveResult.Refused>(await OverruleAsync(night, overrides => overrides.HelpedBy([new HelperOfNight(HelperSkill.Everything, Name: "")])));

        Assert.Null((await App.ViewAsync(night.Group, night.Night)).Overrides.Helpers);
    }

    private Task<SaveResult> OverruleAsync(GuestNight night, Func<NightOverrides, NightOverrides> change) =>
        App.Nights.OverruleAsync(night.Group.Access, night.Night, change, Cancellation);
}
