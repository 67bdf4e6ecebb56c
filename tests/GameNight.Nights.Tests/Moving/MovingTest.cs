using System.Text.Json;
using System.Text.Json.Nodes;
using GameNight.Nights.Dates;
using GameNight.Nights.ForHosts;
using GameNight.Nights.Links;
using GameNight.Nights.Membership;
using GameNight.Nights.Moving;
using GameNight.Nights.Plans;
using GameNight.Nights.Records;
using GameNight.Nights.Snapshots;
using GameNight.Nights.Storage;
using GameNight.Nights.Tests.Storage;
using GameNight.Planning;
using GameNight.Planning.Contract;
using GameNight.Planning.Dates;
using GameNight.Planning.Dough;
using GameNight.Planning.Fermentation;
using GameNight.Planning.Guests;
using GameNight.Planning.Live;
using GameNight.Planning.Quantities;
using GameNight.Planning.Timeline;
using GameNight.Planning.Toppings;
using GameNight.TestKit;
using GameNight.TestKit.Nights;
using GameNight.TestKit.Postgres;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace GameNight.Nights.Tests.Moving;

/// <summary>A group that has lived: what tests of leaving and moving have in common.</summary>
public abstract class MovingTest(ClassDatabase database) : NightsTest(database)
{
    /// <summary>Found nowhere but where it belongs.</summary>
    protected const string Marker = "a marker that nobody else writes";

    /// <summary>No item of the starting menu has anything to do with it.</summary>
    protected const Allergen MarkedAllergen = Allergen.Lupin;

    /// <summary>One coming night with an own pie, its plan, a begun dough; and what people said of it.</summary>
    protected sealed record LivedIn(FoundedGroup Group, NightId Night, GuestId Ines, GuestId Rui, LinkToken InesLink, LinkToken RuiLink);

    protected async Task<LivedIn> LiveAsync()
    {
        var group = await App.FoundGroupAsync();
        var (ines, rui) = (await App.AddGuestAsync(group, "Inês \"Ink\" & <Co>"), await App.AddGuestAsync(group, "Rui"));
        var night = await App.OpenNightAsync(group, [ines, rui]);
        var (inesLink, ruiLink) = (await App.LinkAsync(group, night, ines), await App.LinkAsync(group, night, rui));
        var topping = (await App.LookAsync(ruiLink))!.Toppings[0].Id;
        var answer = Answers.Coming(companions: 1).WithNote(Marker, new DietaryNeeds([], [], [MarkedAllergen]), new DietaryNeeds([Diet.Vegan], [], []));
        await App.AnswerAsync(inesLink, answer with
        {
            Facts = answer.Facts with { Hunger = Hunger.More, Likes = new Dictionary<string, Liking> { [topping] = Liking.Favourite } },
        });
        await App.AnswerAsync(ruiLink, Answers.Coming());
        await SettleAsync(group, night, ines, topping);
        await App.Nights.OverruleAsync(group.Access, night, overrides => (overrides with { SaucePerPie = new Grams(81.5) }).WithOwn(
            new NamedOwnStep("Light the garden", new OwnStep(7, Duration.FromMinutes(20), true, Before: new StepTie(StepKind.Serve))))
            .HelpedBy([new HelperOfNight(HelperSkill.FetchAndClear, ines), new HelperOfNight(HelperSkill.Everything, Name: "Rui")]), Cancellation);
        await PlanAsync(group.Access, night);
        await Rows.TellAsync(Database.AdminConnectionString, $"delete from replan_queue where night_id = '{night.Value}'");
        await InSessionAsync(group.Access, async session =>
        {
            var (snapshot, plan) = (await SnapshotAsync(session, night), await session.Db.Plans.FindAsync([group.Id, night], Cancellation));
            session.Db.CommittedDoughs.Add(new CommittedDough(
                group.Id, night, App.Clock.GetCurrentInstant(), group.Host, SavedPlan.CurrentEnvelope,
                JsonSerializer.Serialize(snapshot, PlanJson.Options), plan!.Document));
            (await session.Db.Nights.SingleAsync(row => row.Id == night, Cancellation)).Read(new DoughReading(
                App.Clock.GetCurrentInstant(), new Celsius(5.5), null, DoughLook.Domed));
            var tap = new LiveTap(group.Id, night, Guid.CreateVersion7(), new LiveMark("1", App.Clock.GetCurrentInstant(), LiveMarkKind.StepDone, "sauce"), by: null);
            tap.TakeBack(App.Clock.GetCurrentInstant());
            session.Db.LiveTaps.Add(tap);
            session.Db.LiveTaps.Add(new LiveTap(
                group.Id, night, Guid.CreateVersion7(),
                new LiveMark("2", App.Clock.GetCurrentInstant(), LiveMarkKind.ClockSet, Until: App.Clock.GetCurrentInstant() + Duration.FromMinutes(9), Name: "Peppers"), by: null));
            session.Db.BakeLogs.Add(new BakeLog(
                group.Id, night,
                new BakeLogFacts([new CameFacts(ines.Value, 2)], new PieCount(5), 3.5, [new PieOutcome(1, 1, "dark rim")], "less water"),
                App.Clock.GetCurrentInstant()));
            session.Db.LookBacks.Add(new LookBack(
                group.Id, night, ines, new LookBackFacts(Enough.Right, Evening.Lovely, 4, [1], $"said by Ines: {Marker}", false),
                Guid.NewGuid(), App.Clock.GetCurrentInstant()));
            session.Db.RememberedWishes.Add(new RememberedWishes(
                group.Id, ines, new WishFacts(Hunger.Less, new Dictionary<string, Liking> { [topping] = Liking.Never }, DietaryNeeds.None),
                App.Clock.GetCurrentInstant()));
            var row = await session.Db.Nights.FindAsync([group.Id, night], Cancellation);
            row!.Moved(new NightMove(
                App.Clock.GetCurrentInstant(), new LocalDateTime(2026, 12, 11, 19, 0), "Europe/Berlin", row.Facts.ServeAt, row.Facts.Zone,
                "2 Elm Street"));
            (await session.Db.Guests.SingleAsync(guest => guest.Id == rui, Cancellation)).StopMessages(App.Clock.GetCurrentInstant());
        });
        await App.GuestList.ReachAsync(group.Access, ines, "ines@example.org", Cancellation);
        await AskForDateAsync(group, ines, rui);
        return new LivedIn(group, night, ines, rui, inesLink, ruiLink);
    }

    /// <summary>What a host made of the note, and how toppings go together in this house.</summary>
    private async Task SettleAsync(FoundedGroup group, NightId night, GuestId ines, string topping)
    {
        var noted = (await App.InvitedAsync(group, night, ines)).NotedAt!.Value;
        Assert.IsType<NoteResult.Settled>(await App.Get<NoteDesk>().SettleAsync(
            group.Access, night, ines, noted, [DietaryNeeds.None, DietaryNeeds.None with { KeptOff = [topping] }], null, Cancellation));
        var items = (await App.Kitchen.MenuAsync(group.Access, Cancellation)).Where(item => item.Role == MenuRole.Topping).ToList();
        Assert.IsType<SaveResult.Saved>(await App.Kitchen.SetHouseMenuAsync(
            group.Access,
            house => house.KeepingApart(items[0].Id.ToString(), items[1].Id.ToString())
                .Naming(new NamedToppings("Garden", [items[2].Id.ToString()])) with
            {
                MostToppings = 2,
                Peel = PeelFlour.Rice,
                Oil = BoxOil.Sesame,
                SecondDough = new HouseSecondDough("Maize dough", new SecondDough(
                    new Composition([], [Allergen.Soybeans], [], []),
                    new SecondDoughRecipe(
                        new Grams(160), new Grams(125), new Grams(2.5), new Grams(8), new Grams(3), Duration.FromMinutes(60),
                        SecondDoughOn.BakingPaper, new Celsius(230)))),
            },
            Cancellation));
        Assert.IsType<SaveResult.Saved>(await App.Kitchen.SetMenuItemAsync(
            group.Access, items[0].Id, items[0].Name, items[0].GramsPerCm2, items[0].WaterShare, items[0].Composition, new PantryStock(900, 250), true,
            items[0].Version, Cancellation));
    }

    /// <summary>Which of two evenings before that night; Rui has answered. And a rhythm with a day off and a moved one.</summary>
    private async Task AskForDateAsync(FoundedGroup group, GuestId ines, GuestId rui)
    {
        var evening = new LocalDateTime(2026, 12, 10, 20, 0);
        var question = DateChoiceId.New();
        Assert.IsType<DateResult.Kept>(await App.Get<DateDesk>().AskAsync(
            group.Access, question,
            new DateChoiceFacts("Another table", "Europe/Berlin", [evening, evening.PlusDays(1)], 2, evening.PlusHours(-5)),
            new Asking([ines, rui], [ines]), Cancellation));
        var view = (await App.Get<DateDesk>().QuestionAsync(group.Access, question, Cancellation))!;
        var link = LinkToken.TryParse(view.Asked.Single(row => row.Id == rui).LinkToken);
        var said = new Dictionary<string, DateAnswer> { [DateChoiceFacts.IdOf(evening)] = DateAnswer.AtAPinch };
        Assert.IsType<DateReplyResult.Recorded>(await App.Get<DateBook>().AnswerAsync(link, new DateReply(said, 0, Guid.NewGuid()), Cancellation));
        Assert.IsType<RhythmResult.Kept>(await App.Get<RhythmDesk>().SetAsync(
            group.Access,
            new Rhythm(
                IsoDayOfWeek.Saturday, 1170, null, Rhythm.LastOfMonth, new LocalDate(2026, 12, 1), [new LocalDate(2026, 12, 26)],
                [new MovedDay(new LocalDate(2027, 1, 30), new LocalDateTime(2027, 1, 29, 19, 30))]),
            before: null, Cancellation));
    }

    /// <summary>As the planner would, without its waiting.</summary>
    protected async Task PlanAsync(GroupAccess access, NightId night)
    {
        await using var session = await App.Get<GroupSessions>().OpenAsync(access, Cancellation);
        var snapshot = await SnapshotAsync(session, night);
        var now = App.Clock.GetCurrentInstant();
        var plan = App.Get<NightPlanner>().Plan(snapshot, now, Effort.Quick, cancellation: Cancellation);
        await App.Get<PlanBook>().SaveAsync(access.GroupId, night, PlanJson.Fingerprint(snapshot, SharedFolder.Tables), plan, now, Cancellation);
    }

    internal async Task InSessionAsync(GroupAccess access, Func<GroupSession, Task> work)
    {
        await using var session = await App.Get<GroupSessions>().OpenAsync(access, Cancellation);
        await work(session);
        await session.CommitAsync(Cancellation);
    }

    protected async Task<byte[]> ExportAsync(GroupAccess access, NightsApp? from = null)
    {
        using var written = new MemoryStream();
        Assert.IsType<ExportResult.Written>(await (from ?? App).Get<GroupExport>().WriteAsync(access, _ => written, Cancellation));
        return written.ToArray();
    }

    protected async Task<ImportResult> ImportAsync(HostId host, byte[] document, GroupId? id = null) =>
        await App.Get<GroupImport>().FoundAsync(host, id ?? GroupId.New(), document, Cancellation);

    /// <summary>The document with a change.</summary>
    protected static byte[] But(byte[] document, Action<JsonNode> change)
    {
        var node = JsonNode.Parse(document)!;
        change(node);
        return JsonSerializer.SerializeToUtf8Bytes(node);
    }

    /// <summary>A document without the moment it was made at.</summary>
    protected static string Lasting(byte[] document)
    {
        var node = JsonNode.Parse(document)!.AsObject();
        node.Remove("exportedAt");
        return node.ToJsonString();
    }

    private async Task<NightSnapshot> SnapshotAsync(GroupSession session, NightId night) =>
        (await App.Get<NightSnapshots>().LoadAsync(session, night, Cancellation))!;
}
