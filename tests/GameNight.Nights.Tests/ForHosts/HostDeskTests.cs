using GameNight.Nights.ForHosts;
using GameNight.Nights.Records;
using GameNight.Nights.Tests.Storage;
using GameNight.Planning.Quantities;
using GameNight.TestKit.Nights;
using GameNight.TestKit.Postgres;
using NodaTime;

namespace GameNight.Nights.Tests.ForHosts;

public sealed class HostDeskTests(ClassDatabase database) : NightsTest(database)
{
    public static TheoryData<string, DraftFault, Func<NightFacts, NightFacts>> Drafts => new()
    {
        { "title", DraftFault.Missing, facts => facts with { Title = " " } },
        { "title", DraftFault.TooLong, facts => facts with { Title = new string('x', NightFacts.LongestTitle + 1) } },
        { "address", DraftFault.TooLong, facts => facts with { Address = new string('x', NightFacts.LongestAddress + 1) } },
        { "bring", DraftFault.TooLong, facts => facts with { Bring = new string('x', NightFacts.LongestBring + 1) } },
        { "serveAt", DraftFault.HasPassed, facts => facts with { ServeAt = new LocalDateTime(2026, 12, 9, 19, 0) } },
        { "zone", DraftFault.UnknownZone, facts => facts with { Zone = "Europe/Atlantis" } },
        { "serveAt", DraftFault.TooFarAhead, facts => facts with { ServeAt = new LocalDateTime(9999, 12, 31, 23, 0), EndsAt = null } },
        { "endsAt", DraftFault.EndsBeforeServing, facts => facts with { EndsAt = facts.ServeAt } },
        { "coldHours", DraftFault.HoursBackToFront, facts => facts with { ShortestColdHours = 49 } },
        { "coldHours", DraftFault.HoursBackToFront, facts => facts with { LongestColdHours = 47 } },
        { "coldHours", DraftFault.OutOfRange, facts => facts with { LongestColdHours = 121 } },
        { "runOutChance", DraftFault.OutOfRange, facts => facts with { RunOutChance = new Share(0.6) } },
        { "mostCompanions", DraftFault.OutOfRange, facts => facts with { MostCompanions = 11 } },
        { "formula", DraftFault.UnknownFormula, facts => facts with { Formula = FormulaId.New() } },
    };

    [Theory]
    [MemberData(nameof(Drafts))]
    public async Task A_draft_that_cannot_be_is_refused_with_its_field(
        string field, DraftFault fault, Func<NightFacts, NightFacts> but)
    {
        var night = await App.OpenNightForOneGuestAsync();
        var view = await App.ViewAsync(night.Group, night.Night);
        var before = await Rows.EverythingAsync(Database);

        var opened = await App.Nights.OpenNightAsync(
            night.Group.Access, NightId.New(), but(view.Facts), [night.Guest], Cancellation);
        var changed = await App.Nights.ChangeNightAsync(
            night.Group.Access, night.Night, but(view.Facts), view.Version, Cancellation);

        foreach (var result in new[] { opened, changed })
        {
            Assert.Equal((field, fault), Assert.Single(
                Assert.IsType<NightResult.Refused>(result).Problems.Select(problem => (problem.Field, problem.Fault))));
        }

        Assert.Equal(before, await Rows.EverythingAsync(Database));
    }

    [Theory]
    [InlineData("2027-03-28T02:30", "2027-03-28T01:30Z", ClockChange.Skipped)]
    [InlineData("2027-10-31T02:30", "2027-10-31T00:30Z", ClockChange.Doubled)]
    [InlineData("2027-10-31T19:30", "2027-10-31T18:30Z", ClockChange.None)]
    public async Task A_serving_time_in_a_strange_hour_is_kept_as_meant_with_a_notice(
        string local, string instant, ClockChange clock)
    {
        var group = await App.FoundGroupAsync();
        var serveAt = NodaTime.Text.LocalDateTimePattern.CreateWithInvariantCulture("uuuu-MM-ddTHH:mm").Parse(local).Value;
        var facts = await App.NightFactsAsync(group) with { ServeAt = serveAt };

        var kept = Assert.IsType<NightResult.Kept>(
            await App.Nights.OpenNightAsync(group.Access, NightId.New(), facts, [], Cancellation));

        Assert.Equal(clock, kept.Clock);
        var view = await App.ViewAsync(group, kept.Night);
        Assert.Equal((serveAt, clock), (view.Facts.ServeAt, view.Clock));
        Assert.Equal(instant, NodaTime.Text.InstantPattern.CreateWithInvariantCulture("uuuu-MM-ddTHH:mm'Z'").Format(view.ServeAt));
    }

    [Fact]
    public async Task The_same_night_opened_many_times_is_one_night()
    {
        var group = await App.FoundGroupAsync();
        var guest = await App.AddGuestAsync(group);
        var (facts, id) = (await App.NightFactsAsync(group), NightId.New());

        var results = await Task.WhenAll(Enumerable.Range(0, 8).Select(
            _ => App.Nights.OpenNightAsync(group.Access, id, facts, [guest], Cancellation)));

        Assert.All(results, result => Assert.Equal(new NightResult.Kept(id, ClockChange.None), result));
        var line = Assert.Single(await App.Nights.NightsAsync(group.Access, Cancellation));
        Assert.Equal((id, 2, 1), (line.Id, line.Invited, line.Coming));
    }

    [Fact]
    public async Task Of_two_hosts_who_change_a_night_the_second_is_told_and_the_firsts_values_stand()
    {
        var night = await App.OpenNightForOneGuestAsync();
        var read = await App.ViewAsync(night.Group, night.Night);

        var first = await App.Nights.ChangeNightAsync(
            night.Group.Access, night.Night, read.Facts with { Title = "First" }, read.Version, Cancellation);
        var second = await App.Nights.ChangeNightAsync(
            night.Group.Access, night.Night, read.Facts with { Title = "Second", Address = "Elsewhere" }, read.Version,
            Cancellation);

        Assert.IsType<NightResult.Kept>(first);
        Assert.IsType<NightResult.ChangedMeanwhile>(second);
        Assert.Equal(read.Facts with { Title = "First" }, (await App.ViewAsync(night.Group, night.Night)).Facts);
    }

    [Fact]
    public async Task Overruled_numbers_stick_one_by_one_and_can_be_taken_back()
    {
        var night = await App.OpenNightForOneGuestAsync();
        await OverruleAsync(night, numbers => numbers.With(Overridable.Pies, 7));
        await OverruleAsync(night, numbers => numbers.With(Overridable.BallGrams, 260));
        Assert.Equal(
            NightOverrides.None with { Pies = new PieCount(7), Ball = new Grams(260) },
            (await App.ViewAsync(night.Group, night.Night)).Overrides);

        await OverruleAsync(night, numbers => numbers.Without(Overridable.Pies));

        Assert.Equal(
            NightOverrides.None with { Ball = new Grams(260) }, (await App.ViewAsync(night.Group, night.Night)).Overrides);
    }

    [Fact]
    public async Task Hosts_who_overrule_at_once_never_undo_each_other()
    {
        var night = await App.OpenNightForOneGuestAsync();
        (Overridable What, double Value)[] changes =
        [
            (Overridable.Pies, 7), (Overridable.BallGrams, 260), (Overridable.SaucePerPieGrams, 70),
            (Overridable.CheesePerPieGrams, 90),
        ];

        var results = await Task.WhenAll(changes.Select(
            change => OverruleAsync(night, numbers => numbers.With(change.What, change.Value))));

        var kept = (await App.ViewAsync(night.Group, night.Night)).Overrides;
        foreach (var (result, change) in results.Zip(changes))
        {
            Assert.Equal(result is SaveResult.Saved, kept != kept.Without(change.What));
        }

        Assert.Contains(results, result => result is SaveResult.Saved);
    }

    [Theory]
    [InlineData(Overridable.BallGrams, 5)]
    [InlineData(Overridable.BallGrams, 5000)]
    [InlineData(Overridable.YeastPercentOfFlour, 20)]
    [InlineData(Overridable.SaucePerPieGrams, 1001)]
    public async Task A_number_outside_its_range_is_refused_and_nothing_changes(Overridable what, double value)
    {
        var night = await App.OpenNightForOneGuestAsync();
        await OverruleAsync(night, numbers => numbers.With(Overridable.Pies, 7));

        var refused = Assert.IsType<SaveResult.Refused>(await OverruleAsync(night, numbers => numbers.With(what, value)));

        Assert.NotEmpty(refused.Problems);
        Assert.Equal(
            NightOverrides.None with { Pies = new PieCount(7) }, (await App.ViewAsync(night.Group, night.Night)).Overrides);
    }

    [Fact]
    public async Task Nights_of_another_group_are_gone()
    {
        var theirs = await App.OpenNightForOneGuestAsync();
        var ours = await App.FoundGroupAsync("Sam");
        var facts = await App.NightFactsAsync(ours);

        Assert.Null(await App.Nights.NightAsync(ours.Access, theirs.Night, Cancellation));
        Assert.Null(await App.Plans.PlanAsync(ours.Access, theirs.Night, Cancellation));
        Assert.IsType<NightResult.Gone>(
            await App.Nights.ChangeNightAsync(ours.Access, theirs.Night, facts, 1, Cancellation));
        Assert.IsType<SaveResult.Gone>(
            await App.Invitations.UninviteAsync(ours.Access, theirs.Night, theirs.Guest, Cancellation));
        Assert.IsType<SaveResult.Gone>(
            await App.Invitations.InviteAsync(ours.Access, theirs.Night, theirs.Guest, Cancellation));
        Assert.IsType<SaveResult.Gone>(
            await App.Invitations.RenewLinkAsync(ours.Access, theirs.Night, theirs.Guest, Cancellation));
        Assert.IsType<SaveResult.Gone>(
            await App.Nights.OverruleAsync(ours.Access, theirs.Night, numbers => numbers, Cancellation));
        Assert.NotNull(await App.LookAsync(theirs.Link));
    }

    [Fact]
    public async Task Guests_of_another_group_are_not_invited()
    {
        var theirs = await App.OpenNightForOneGuestAsync();
        var ours = await App.FoundGroupAsync("Sam");

        var night = await App.OpenNightAsync(ours, [theirs.Guest]);

        Assert.True(Assert.Single((await App.ViewAsync(ours, night)).Guests).IsHost);
    }

    private Task<SaveResult> OverruleAsync(GuestNight night, Func<NightOverrides, NightOverrides> change) =>
        App.Nights.OverruleAsync(night.Group.Access, night.Night, change, Cancellation);
}
