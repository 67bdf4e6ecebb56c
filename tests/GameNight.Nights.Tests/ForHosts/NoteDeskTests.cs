using GameNight.Nights.ForHosts;
using GameNight.Nights.Membership;
using GameNight.Nights.Records;
using GameNight.Nights.Snapshots;
using GameNight.Nights.Storage;
using GameNight.Planning;
using GameNight.Planning.Guests;
using GameNight.TestKit.Nights;
using GameNight.TestKit.Postgres;

namespace GameNight.Nights.Tests.ForHosts;

/// <summary>From a guest's words to a rule of the plan, or to a reason why it is none.</summary>
public sealed class NoteDeskTests(ClassDatabase database) : NightsTest(database)
{
    private const string Note = "Mushrooms make me ill, and the little one eats no meat";

    [Fact]
    public async Task An_open_note_is_a_conflict_and_holds_the_dough_until_it_is_settled()
    {
        var night = await NotedAsync();
        Assert.Equal([night.Guest.ToString()], Assert.Single((await PlanAsync(night)).Conflicts.OfType<NotesToSettle>()).EaterIds);
        await PlannedAsync(night);
        Assert.IsType<CommitResult.NotesAreOpen>(await App.Get<DoughDesk>().CommitAsync(night.Group.Access, night.Night, Cancellation));

        Assert.IsType<NoteResult.Settled>(await SettleAsync(night, [], SetAside.TalkedOver));

        Assert.DoesNotContain((await PlanAsync(night)).Conflicts, conflict => conflict is NotesToSettle);
        await PlannedAsync(night);
        Assert.IsType<CommitResult.Done>(await App.Get<DoughDesk>().CommitAsync(night.Group.Access, night.Night, Cancellation));
    }

    [Fact]
    public async Task Rules_made_of_a_note_count_beside_what_was_ticked_and_reach_the_pies()
    {
        var night = await NotedAsync(Answers.Avoiding(Allergen.Fish));
        var mushrooms = (await App.Kitchen.MenuAsync(night.Group.Access, Cancellation)).Single(item => item.Name == "Mushrooms").Id.ToString();

        await SettleAsync(night, [DietaryNeeds.None with { KeptOff = [mushrooms] }, new DietaryNeeds([Diet.Vegetarian], [], [])], null);

        var (snapshot, plan) = (await SnapshotAsync(night), await PlanAsync(night));
        var eaters = snapshot.Guests.Single(guest => guest.Id == night.Guest.ToString()).Eaters;
        Assert.Equal([Allergen.Fish], eaters[0].Needs.Avoids);
        Assert.Equal([mushrooms], eaters[0].Needs.KeptOff!);
        Assert.Equal([Diet.Vegetarian], eaters[1].Needs.Diets);
        var combinations = plan.Split.Combinations.ToDictionary(combination => combination.Letter);
        var own = plan.Split.Servings.Where(serving => serving.EaterId == night.Guest.ToString()).ToList();
        Assert.NotEmpty(own);
        Assert.All(own, serving => Assert.DoesNotContain(mushrooms, combinations[serving.Letter].ToppingIds));
    }

    [Fact]
    public async Task The_same_words_sent_again_keep_their_ruling_and_other_words_do_not()
    {
        var night = await NotedAsync();
        await SettleAsync(night, [], SetAside.NotAboutFood);

        await App.AnswerAsync(night.Link, Answers.Coming(revision: 1, companions: 1).WithNote(Note));
        Assert.False((await RowAsync(night)).NoteIsOpen);

        await App.AnswerAsync(night.Link, Answers.Coming(revision: 2, companions: 1).WithNote("No garlic either"));
        Assert.True((await RowAsync(night)).NoteIsOpen);
    }

    [Fact]
    public async Task A_note_that_changed_meanwhile_is_read_first()
    {
        var night = await NotedAsync();
        var read = (await RowAsync(night)).NotedAt!.Value;
        App.Clock.AdvanceMinutes(1);
        await App.AnswerAsync(night.Link, Answers.Coming(revision: 1, companions: 1).WithNote("Something else"));

        Assert.IsType<NoteResult.NoteChanged>(await App.Get<NoteDesk>().SettleAsync(
            night.Group.Access, night.Night, night.Guest, read, [], SetAside.TalkedOver, Cancellation));
        Assert.True((await RowAsync(night)).NoteIsOpen);
    }

    [Fact]
    public async Task Neither_nothing_nor_both_settles_a_note()
    {
        var night = await NotedAsync();

        Assert.IsType<NoteResult.NothingSaid>(await SettleAsync(night, [], null));
        Assert.IsType<NoteResult.NothingSaid>(await SettleAsync(night, [Answers.Avoiding(Allergen.Fish)], SetAside.TickedAlready));
        Assert.True((await RowAsync(night)).NoteIsOpen);
    }

    [Fact]
    public async Task Who_may_not_read_notes_neither_settles_them_nor_sees_what_became_of_them()
    {
        var night = await NotedAsync();
        var blind = new GroupAccess(night.Group.Id, night.Group.Host, HostRole.Owner, seesNotes: false);
        await Assert.ThrowsAsync<RightMissingException>(() => App.Get<NoteDesk>().SettleAsync(
            blind, night.Night, night.Guest, App.Clock.GetCurrentInstant(), [], SetAside.TalkedOver, Cancellation));
        await SettleAsync(night, [], SetAside.TalkedOver);

        var row = (await App.Nights.NightAsync(blind, night.Night, Cancellation))!.Guests.Single(guest => guest.Id == night.Guest);

        Assert.Equal((null, null, null, false), (row.Note, row.NotedAt, row.Ruling, row.NoteIsOpen));
    }

    [Fact]
    public async Task A_guest_who_stays_away_holds_nothing_up()
    {
        var night = await NotedAsync();

        await App.AnswerAsync(night.Link, Answers.NotComing(revision: 1).WithNote(Note));

        Assert.DoesNotContain((await PlanAsync(night)).Conflicts, conflict => conflict is NotesToSettle);
    }

    private async Task<GuestNight> NotedAsync(params IReadOnlyList<DietaryNeeds> ticked)
    {
        var night = await App.OpenNightForOneGuestAsync();
        await App.AnswerAsync(night.Link, Answers.Coming(companions: 1).WithNote(Note, ticked));
        return night;
    }

    private async Task<NoteResult> SettleAsync(GuestNight night, IReadOnlyList<DietaryNeeds> rules, SetAside? because) =>
        await App.Get<NoteDesk>().SettleAsync(
            night.Group.Access, night.Night, night.Guest, (await RowAsync(night)).NotedAt!.Value, rules, because, Cancellation);

    private Task<InvitedGuest> RowAsync(GuestNight night) => App.InvitedAsync(night.Group, night.Night, night.Guest);

    private async Task<NightSnapshot> SnapshotAsync(GuestNight night)
    {
        await using var session = await App.Get<GroupSessions>().OpenAsync(night.Group.Access, Cancellation);
        return (await App.Get<NightSnapshots>().LoadAsync(session, night.Night, Cancellation))!;
    }

    private async Task<NightPlan> PlanAsync(GuestNight night) =>
        App.Get<NightPlanner>().Plan(await SnapshotAsync(night), App.Clock.GetCurrentInstant(), Effort.Quick, cancellation: Cancellation);

    private async Task PlannedAsync(GuestNight night)
    {
        var (snapshot, now) = (await SnapshotAsync(night), App.Clock.GetCurrentInstant());
        await App.Get<Nights.Plans.PlanBook>().SaveAsync(
            night.Group.Id, night.Night, Planning.Contract.PlanJson.Fingerprint(snapshot, TestKit.SharedFolder.Tables), await PlanAsync(night), now, Cancellation);
    }
}
