using GameNight.Nights.Plans;
using GameNight.Nights.Records;
using GameNight.Nights.Tests.Storage;
using GameNight.Planning.Contract;
using GameNight.Planning.Guests;
using GameNight.TestKit.Nights;
using GameNight.TestKit.Postgres;
using NodaTime;

namespace GameNight.Nights.Tests.Plans;

public sealed class StaleFoundTests(ClassDatabase database) : PlannerTest(database)
{
    public static TheoryData<string> Unreadable =>
    [
        "envelope = 99",
        "document = '{}'",
        "document = '\"a plan\"'",
        "document = document - 'pies'",
        "document = document || '{\"madeBy\": \"a later version\"}'",
        "document = jsonb_set(document, '{stage}', '\"excellent\"')",
        """document = regexp_replace(document::text, '"kind": "\w+", ', '', 'g')::jsonb""",
        """document = regexp_replace(document::text, '"(low\w*)": [0-9.]+', '"\1": 9999', 'g')::jsonb""",
    ];

    [Theory]
    [MemberData(nameof(Unreadable))]
    public async Task A_stored_plan_that_cannot_be_read_is_made_anew(string spoiled)
    {
        var night = await App.OpenNightForOneGuestAsync();
        await PlanAllAsync();
        var plan = PlanJson.Canonical(PlanBook.Read((await SavedAsync(night))!));
        Assert.Equal(1, await SpoilAsync(night, spoiled));

        var view = (await App.Plans.PlanAsync(night.Group.Access, night.Night, Cancellation))!;
        Assert.Null(view.Plan);
        Assert.True(view.IsBeingRedone);

        await UntilPlannedAsync(night.Night);
        Assert.Equal(plan, PlanJson.Canonical(PlanBook.Read((await SavedAsync(night))!)));
    }

    [Fact]
    public async Task The_fingerprint_does_not_know_what_time_it_is()
    {
        var night = await App.OpenNightForOneGuestAsync();
        var now = await FingerprintAsync(night);

        App.Clock.AdvanceHours(30);

        Assert.Equal(now, await FingerprintAsync(night));
    }

    [Fact]
    public async Task Every_part_of_an_answer_changes_the_fingerprint_but_the_note()
    {
        var night = await App.OpenNightForOneGuestAsync();
        var topping = (await App.LookAsync(night.Link))!.Toppings[0].Id;
        var facts = Answers.Coming().Facts;
        var dislikes = new Dictionary<string, Liking> { [topping] = Liking.Never };
        AnswerFacts[] answers =
        [
            facts,
            facts with { Presence = Presence.Undecided },
            facts with { Presence = Presence.NotComing },
            facts with { Hunger = Hunger.More },
            facts with { Remotely = true },
            facts with { Companions = [new(PortionClass.Adult)] },
            facts with { Companions = [new(PortionClass.Toddler)] },
            facts with { Likes = dislikes },
        ];

        var fingerprints = new HashSet<string> { await FingerprintAsync(night) };
        var revision = 0;
        foreach (var answer in answers)
        {
            await AnswerAsync(Answers.Coming(revision++) with { Facts = answer });
        }

        await AnswerAsync(Answers.Coming(revision++).WithNote("First", Answers.Avoiding(Allergen.Eggs)));
        Assert.Equal(answers.Length + 2, fingerprints.Count);

        await AnswerAsync(Answers.Coming(revision).WithNote("Second", Answers.Avoiding(Allergen.Eggs)));
        Assert.Equal(answers.Length + 2, fingerprints.Count);

        async Task AnswerAsync(GameNight.Nights.ForGuests.GuestAnswer answer)
        {
            await App.AnswerAsync(night.Link, answer);
            fingerprints.Add(await FingerprintAsync(night));
        }
    }

    [Fact]
    public async Task Looking_at_a_plan_that_is_up_to_date_asks_for_nothing()
    {
        var night = await App.OpenNightForOneGuestAsync();
        await PlanAllAsync();
        var before = await EverythingAsync();

        Assert.False((await App.Plans.PlanAsync(night.Group.Access, night.Night, Cancellation))!.IsBeingRedone);

        Assert.Equal(before, await EverythingAsync());

        // Once there is a plan, rounds of the post go on by themselves.
        async Task<IEnumerable<string>> EverythingAsync() =>
            (await Rows.EverythingAsync(Database)).Where(row => !row.StartsWith("post_queue ", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Looking_at_a_plan_that_is_being_redone_does_not_start_it_over()
    {
        var night = await App.OpenNightForOneGuestAsync();
        var before = await Rows.EverythingAsync(Database);

        App.Clock.AdvanceMinutes(5);
        Assert.True((await App.Plans.PlanAsync(night.Group.Access, night.Night, Cancellation))!.IsBeingRedone);

        Assert.Equal(before, await Rows.EverythingAsync(Database));
    }

    [Fact]
    public async Task A_plan_of_another_engine_is_made_anew()
    {
        var night = await App.OpenNightForOneGuestAsync();
        await PlanAllAsync();
        await SpoilAsync(night, "engine_version = '0'");

        Assert.True((await App.Plans.PlanAsync(night.Group.Access, night.Night, Cancellation))!.IsBeingRedone);
        await UntilPlannedAsync(night.Night);

        Assert.False((await App.Plans.PlanAsync(night.Group.Access, night.Night, Cancellation))!.IsBeingRedone);
    }

    [Fact]
    public async Task A_plan_that_counted_on_a_moment_now_past_is_made_anew_once()
    {
        var night = await App.OpenNightForOneGuestAsync();
        await PlanAllAsync();
        App.Clock.Reset((await SavedAsync(night))!.AnswerBy!.Value + Duration.FromMinutes(2));

        Assert.True((await App.Plans.PlanAsync(night.Group.Access, night.Night, Cancellation))!.IsBeingRedone);
        await UntilPlannedAsync(night.Night);

        Assert.False((await App.Plans.PlanAsync(night.Group.Access, night.Night, Cancellation))!.IsBeingRedone);
    }
}
