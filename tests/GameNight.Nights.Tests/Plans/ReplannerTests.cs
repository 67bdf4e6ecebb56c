using GameNight.Nights.Plans;
using GameNight.Nights.Tests.Storage;
using GameNight.Planning;
using GameNight.Planning.Contract;
using GameNight.Planning.Guests;
using GameNight.TestKit;
using GameNight.TestKit.Nights;
using GameNight.TestKit.Postgres;

namespace GameNight.Nights.Tests.Plans;

public sealed class ReplannerTests(ClassDatabase database) : PlannerTest(database)
{
    [Fact]
    public async Task An_answer_makes_a_plan_and_leaves_nothing_to_do()
    {
        var night = await App.OpenNightForOneGuestAsync();
        await PlanAllAsync();
        var first = await SavedAsync(night);

        await App.AnswerAsync(night.Link, Answers.Coming(companions: 2));
        await UntilPlannedAsync(night.Night);

        var second = await SavedAsync(night);
        Assert.NotEqual(first!.Fingerprint, second!.Fingerprint);
        Assert.Equal(await FingerprintAsync(night), second.Fingerprint);
        Assert.True(App.Get<Replanner>().IsWell);
        var view = (await App.Plans.PlanAsync(night.Group.Access, night.Night, Cancellation))!;
        Assert.False(view.IsBeingRedone);
        Assert.Equal("Ines +2", view.Names[$"{night.Guest}+2"]);
    }

    [Fact]
    public async Task A_plan_comes_back_from_the_database_exactly_as_it_was_made()
    {
        var night = await App.OpenNightForOneGuestAsync();
        await App.AnswerAsync(night.Link, Answers.Coming(companions: 2).WithNote("", Answers.Avoiding(Allergen.Milk)));
        var fingerprint = await FingerprintAsync(night);
        var made = new NightPlanner(SharedFolder.Tables).Plan(
            await SnapshotAsync(night), NightBuilder.Now, Effort.Quick, cancellation: Cancellation);

        await PlanAllAsync();

        var saved = (await SavedAsync(night))!;
        Assert.Equal(PlanJson.Canonical(made), PlanJson.Canonical(PlanBook.Read(saved)));
        Assert.Equal(
            (fingerprint, NightPlanner.EngineVersion, NightBuilder.Now, made.Timeline.DoughCommitment),
            (saved.Fingerprint, saved.EngineVersion, saved.MadeAt, saved.DoughCommitment));
        Assert.NotNull(saved.AnswerBy);
    }

    [Fact]
    public async Task Answers_that_arrive_during_the_solving_are_all_in_the_plan()
    {
        await using var app = NightsApp.On(Database.AppConnectionString, effort: new Effort(8));
        var group = await app.FoundGroupAsync();
        var guests = await Task.WhenAll(Enumerable.Range(0, 8).Select(number => app.AddGuestAsync(group, $"Guest {number}")));
        var night = await app.OpenNightAsync(group, guests);
        var links = await Task.WhenAll(guests.Select(guest => app.LinkAsync(group, night, guest)));
        await app.StartPlanningAsync();

        foreach (var link in links)
        {
            await app.AnswerAsync(link, Answers.Coming());
            await Task.Delay(100, Cancellation);
        }

        await UntilPlannedAsync(night);

        var ours = new GuestNight(group, night, guests[0], links[0]);
        var saved = (await SavedAsync(ours))!;
        Assert.Equal(await FingerprintAsync(ours), saved.Fingerprint);
        Assert.Equal(PlanStage.Improved, saved.Stage);
    }

    [Fact]
    public async Task A_request_made_while_one_is_worked_on_is_told_apart_even_in_the_same_instant()
    {
        var night = await App.OpenNightForOneGuestAsync();
        var first = await RequestedAtAsync();

        await App.AnswerAsync(night.Link, Answers.Coming());
        var second = await RequestedAtAsync();
        App.Clock.AdvanceSeconds(-30);
        await App.AnswerAsync(night.Link, Answers.NotComing(revision: 1));

        Assert.True(first < second);
        Assert.True(second < await RequestedAtAsync());

        async Task<decimal> RequestedAtAsync() => decimal.Parse(
            (await Rows.ReadAsync(
                Database.AdminConnectionString,
                $"select extract(epoch from requested_at) from replan_queue where night_id = '{night.Night.Value}'"))[0],
            System.Globalization.CultureInfo.InvariantCulture);
    }

    [Fact]
    public async Task What_was_asked_for_before_a_restart_is_planned_after_it()
    {
        var night = await App.OpenNightForOneGuestAsync();
        await App.AnswerAsync(night.Link, Answers.Coming());
        await using var restarted = NightsApp.On(Database.AppConnectionString);

        await PlanAllAsync(restarted);

        Assert.Equal(await FingerprintAsync(night), (await SavedAsync(night))!.Fingerprint);
    }

    [Fact]
    public async Task A_night_that_cannot_be_planned_keeps_no_other_waiting_and_is_tried_again()
    {
        var (broken, fine) = (await App.OpenNightForOneGuestAsync(), await App.OpenNightForOneGuestAsync());
        await SetZoneAsync("Europe/Atlantis");

        await App.StartPlanningAsync();
        await UntilPlannedAsync(fine.Night);

        Assert.Contains($"{broken.Night.Value}", await QueuedAsync());
        await UntilAsync(() => Task.FromResult(App.Get<Replanner>().IsWell), "the round is over");

        await SetZoneAsync("Europe/Berlin");
        await UntilPlannedAsync(broken.Night);
        Assert.NotNull(await SavedAsync(broken));

        Task<int> SetZoneAsync(string zone) => Rows.TellAsync(
            Database.AdminConnectionString,
            $"""update nights set facts = jsonb_set(facts, '{"{zone}"}', '"{zone}"') where id = '{broken.Night.Value}'""");
    }

    [Fact]
    public async Task A_night_that_is_gone_leaves_the_queue()
    {
        var night = await App.OpenNightForOneGuestAsync();
        await Rows.TellAsync(Database.AdminConnectionString, $"delete from nights where id = '{night.Night.Value}'");

        await PlanAllAsync();

        Assert.Null(await SavedAsync(night));
    }

    [Fact]
    public async Task Open_pages_are_told_of_answers_and_plans_until_they_close()
    {
        var night = await App.OpenNightForOneGuestAsync();
        var other = await App.OpenNightForOneGuestAsync();
        var (told, elsewhere) = (0, 0);
        using var otherPage = App.Changes.Listen(other.Night, () => Interlocked.Increment(ref elsewhere));
        var page = App.Changes.Listen(night.Night, () => Interlocked.Increment(ref told));

        await App.AnswerAsync(night.Link, Answers.Coming());
        Assert.Equal((1, 0), (told, elsewhere));

        await PlanAllAsync();
        await UntilAsync(() => Task.FromResult(Volatile.Read(ref told) >= 2), "the page is told of the plan");

        page.Dispose();
        var before = told;
        await App.AnswerAsync(night.Link, Answers.NotComing(revision: 1));
        Assert.Equal(before, told);
    }

    [Fact]
    public async Task No_name_or_note_is_in_a_saved_plan()
    {
        var night = await App.OpenNightForOneGuestAsync();
        await App.AnswerAsync(night.Link, Answers.Coming(companions: 1).WithNote("Secret allergy", Answers.Avoiding(Allergen.Milk)));
        await PlanAllAsync();

        var document = (await SavedAsync(night))!.Document;

        Assert.All(
            new[] { "Ines", "Hana", "Secret", "Elm Street", "Mozzarella" },
            word => Assert.DoesNotMatch($@"(?i)\b{word}\b", document));
        Assert.Contains($"{night.Guest}", document, StringComparison.Ordinal);
    }
}
