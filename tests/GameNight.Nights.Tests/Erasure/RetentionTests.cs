using System.Text.Json;
using GameNight.Nights.Erasure;
using GameNight.Nights.Links;
using GameNight.Nights.Records;
using GameNight.Nights.Tests.Moving;
using GameNight.Nights.Tests.Storage;
using GameNight.Planning;
using GameNight.Planning.Contract;
using GameNight.TestKit.Nights;
using GameNight.TestKit.Postgres;
using NodaTime;

namespace GameNight.Nights.Tests.Erasure;

public sealed class RetentionTests(ClassDatabase database) : MovingTest(database)
{
    private static readonly Instant ServeAt = Instant.FromUtc(2026, 12, 12, 18, 30);

    private Retention Retention => App.Get<Retention>();

    [Fact]
    public async Task A_week_after_the_night_a_note_and_an_allergy_are_found_in_no_table()
    {
        var lived = await LiveAsync();

        App.Clock.Reset(ServeAt + Duration.FromDays(DietaryNote.KeptDays) - Duration.FromMinutes(1));
        await Retention.EraseAsync(Cancellation);
        Assert.Contains(await TablesAsync(lived, "lupin"), table => table == "dietary_notes");
        Assert.Contains(await TablesAsync(lived, "lupin"), table => table == "committed_doughs");
        Assert.NotEmpty(await TablesAsync(lived, "ownPieFor\":[\""));

        App.Clock.Reset(ServeAt + Duration.FromDays(DietaryNote.KeptDays) + Duration.FromMinutes(1));
        Assert.True(await Retention.EraseAsync(Cancellation) >= 1);

        Assert.Empty(await TablesAsync(lived, "lupin"));
        Assert.Empty(await TablesAsync(lived, "vegan\"],\"avoids"));
        Assert.Empty(await TablesAsync(lived, "dietary_notes "));
        Assert.Empty(await TablesAsync(lived, "eaterId"));
        Assert.Empty(await TablesAsync(lived, "ownPieFor\":[\""));
    }

    [Fact]
    public async Task What_the_group_learns_from_stays()
    {
        var lived = await LiveAsync();
        var before = (await App.Plans.PlanAsync(lived.Group.Access, lived.Night, Cancellation))!.Plan!;
        App.Clock.Reset(ServeAt + Duration.FromDays(20));

        await Retention.EraseAsync(Cancellation);
        await Rows.TellAsync(Database.AdminConnectionString, $"delete from replan_queue where night_id = '{lived.Night.Value}'");

        var after = (await App.Plans.PlanAsync(lived.Group.Access, lived.Night, Cancellation))!;
        Assert.False(after.IsBeingRedone);
        Assert.Equal(before.Pies.Count.Value, after.Plan!.Pies.Count.Value);
        Assert.Equal(before.Split.Pies.Count, after.Plan.Split.Pies.Count);
        Assert.Equal(before.Timeline.Steps.Count, after.Plan.Timeline.Steps.Count);
        var answer = await App.InvitedAsync(lived.Group, lived.Night, lived.Ines);
        Assert.Single(answer.Answer!.Companions);
        Assert.NotEmpty(answer.Answer.Likes);
    }

    [Fact]
    public async Task Again_and_again_changes_nothing_more()
    {
        await LiveAsync();
        App.Clock.Reset(ServeAt + Duration.FromDays(20));
        await Retention.EraseAsync(Cancellation);
        var before = await Rows.EverythingAsync(Database);

        Assert.Equal(0, await Retention.EraseAsync(Cancellation));

        Assert.Equal(before, await Rows.EverythingAsync(Database));
    }

    [Fact]
    public async Task It_reaches_nights_whose_links_are_all_gone()
    {
        var lived = await LiveAsync();
        await Rows.TellAsync(Database.AdminConnectionString, $"delete from link_directory where night_id = '{lived.Night.Value}'");
        App.Clock.Reset(ServeAt + Duration.FromDays(400));

        await Retention.EraseAsync(Cancellation);

        Assert.Empty(await TablesAsync(lived, "lupin"));
    }

    [Fact]
    public async Task A_group_in_trouble_does_not_keep_the_others_notes()
    {
        var (broken, well) = (await LiveAsync(), await LiveAsync());
        await Rows.TellAsync(
            Database.AdminConnectionString,
            $"update nights set facts = jsonb_set(facts, '{{zone}}', '\"Atlantis/Centre\"') where id = '{broken.Night.Value}'");
        App.Clock.Reset(ServeAt + Duration.FromDays(20));

        await Retention.EraseAsync(Cancellation);

        Assert.Empty(await TablesAsync(well, "lupin"));
        await Rows.TellAsync(Database.AdminConnectionString, $"delete from nights where id = '{broken.Night.Value}'");
    }

    [Fact]
    public async Task A_database_that_is_away_is_told_and_the_next_round_does_it()
    {
        await using var nowhere = NightsApp.On("Host=127.0.0.1;Port=1;Timeout=2;Database=none;Username=nobody");

        await Assert.ThrowsAsync<NightsUnavailableException>(() => nowhere.Get<Retention>().EraseAsync(Cancellation));
    }

    [Fact]
    public async Task Ended_links_are_told_so_for_a_while_and_then_forgotten()
    {
        var lived = await LiveAsync();
        var ends = ServeAt + LinkDirectory.KeptAfterNight;

        App.Clock.Reset(ends + Retention.EndedLinksKept - Duration.FromMinutes(1));
        await Retention.EraseAsync(Cancellation);
        Assert.Contains("link_directory", await TablesAsync(lived, "token_hash"));

        App.Clock.Reset(ends + Retention.EndedLinksKept + Duration.FromMinutes(1));
        await Retention.EraseAsync(Cancellation);
        Assert.Empty(await TablesAsync(lived, "token_hash"));
    }

    [Fact]
    public async Task When_the_links_end_nobody_is_named_as_a_helper_any_more_and_the_hands_stay()
    {
        var lived = await LiveAsync();
        Assert.Equal(["Rui"], await HelpersAsync());
        App.Clock.Reset(ServeAt + LinkDirectory.KeptAfterNight + Duration.FromHours(1));

        await Retention.EraseAsync(Cancellation);

        Assert.Empty(await HelpersAsync());
        Assert.Equal(2, (await App.ViewAsync(lived.Group, lived.Night)).Overrides.Helpers!.Count);

        async Task<IEnumerable<string>> HelpersAsync() =>
            (await App.ViewAsync(lived.Group, lived.Night)).Overrides.Helpers!.Select(helper => helper.Name).OfType<string>();
    }

    [Fact]
    public async Task Invitations_of_hosts_that_have_run_out_are_deleted()
    {
        var lived = await LiveAsync();
        await InSessionAsync(lived.Group.Access, session =>
        {
            session.Db.HostInvitations.Add(new HostInvitation(
                lived.Group.Id, HostInvitationId.New(), "Somebody invited", HostRole.Cook, false, lived.Group.Host,
                App.Clock.GetCurrentInstant() + HostInvitation.OpenFor));
            return Task.CompletedTask;
        });
        await Retention.EraseAsync(Cancellation);
        Assert.NotEmpty(await TablesAsync(lived, "Somebody invited"));

        App.Clock.Advance(HostInvitation.OpenFor + Duration.FromSeconds(1));
        await Retention.EraseAsync(Cancellation);

        Assert.Empty(await TablesAsync(lived, "Somebody invited"));
    }

    [Fact]
    public void Every_conflict_that_names_eaters_is_erased_with_them()
    {
        foreach (var kind in Discriminators.Conflicts.Keys)
        {
            var names = kind.GetProperties().Any(property => property.Name.Contains("Eater", StringComparison.Ordinal));
            var conflict = (Conflict)System.Runtime.CompilerServices.RuntimeHelpers.GetUninitializedObject(kind);
            foreach (var property in kind.GetProperties().Where(property => property.Name == "EaterIds"))
            {
                property.SetValue(conflict, new[] { "one", "two" });
            }

            foreach (var property in kind.GetProperties().Where(property => property.Name == "EaterId"))
            {
                property.SetValue(conflict, "one");
            }

            var sample = Sample() with { Conflicts = [conflict] };

            Assert.True(PlanErasure.WithoutPeople(sample).Conflicts.Count == 0 == names, $"{kind.Name} is left with names, or lost without.");
        }
    }

    [Fact]
    public void A_plan_without_people_names_nobody()
    {
        var erased = JsonSerializer.Serialize(PlanErasure.WithoutPeople(Sample()), PlanJson.Options);

        Assert.DoesNotContain("\"eaterId\"", erased, StringComparison.Ordinal);
        Assert.DoesNotContain("\"eaterIds\":[\"", erased, StringComparison.Ordinal);
        Assert.DoesNotContain("\"ownPieFor\":[\"", erased, StringComparison.Ordinal);
        Assert.DoesNotContain("\"allergens\":[\"", erased, StringComparison.Ordinal);
    }

    private static NightPlan Sample()
    {
        var sample = System.Text.Json.Nodes.JsonNode.Parse(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Samples", "plan-v1.json")))!;
        return sample["document"]!.Deserialize<NightPlan>(PlanJson.Options)!;
    }

    /// <summary>Tables with a row of the group that holds the text.</summary>
    private async Task<List<string>> TablesAsync(LivedIn lived, string text) =>
        [.. (await Rows.EverythingAsync(Database))
            .Select(row => row.Replace(": ", ":", StringComparison.Ordinal).Replace(", ", ",", StringComparison.Ordinal))
            .Where(row => row.Contains(lived.Group.Id.Value.ToString(), StringComparison.Ordinal) && row.Contains(text, StringComparison.Ordinal))
            .Select(row => row.Split(' ')[0]).Distinct()];
}
