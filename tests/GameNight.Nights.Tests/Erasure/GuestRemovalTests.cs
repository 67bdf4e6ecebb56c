using System.Text;
using System.Text.Json.Nodes;
using GameNight.Nights.Erasure;
using GameNight.Nights.ForHosts;
using GameNight.Nights.Links;
using GameNight.Nights.Live;
using GameNight.Nights.Membership;
using GameNight.Nights.Moving;
using GameNight.Nights.Plans;
using GameNight.Nights.Records;
using GameNight.Nights.Tests.Moving;
using GameNight.Nights.Tests.Storage;
using GameNight.Planning.Live;
using GameNight.Planning.Timeline;
using GameNight.TestKit.Postgres;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace GameNight.Nights.Tests.Erasure;

public sealed class GuestRemovalTests(ClassDatabase database) : MovingTest(database)
{
    [Fact]
    public async Task A_guest_who_leaves_is_found_nowhere_but_as_a_count()
    {
        var lived = await LiveAsync();
        App.Clock.AdvanceDays(5);

        Assert.IsType<RemovalResult.Removed>(await RemoveOwnAsync(lived.InesLink));

        var left = await OfGroupAsync(lived.Group.Id);
        Assert.DoesNotContain(left, row => row.Contains("Inês", StringComparison.Ordinal));
        Assert.DoesNotContain(left, row => row.Contains(Marker, StringComparison.Ordinal));
        Assert.DoesNotContain(left, row => row.Contains("lupin", StringComparison.Ordinal));
        Assert.DoesNotContain(left, row => row.Contains("favourite", StringComparison.Ordinal));
        Assert.Equal(
            ["answers", "bake_logs", "committed_doughs", "guests", "invitations", "look_backs"],
            left.Where(row => row.Contains(lived.Ines.ToString(), StringComparison.Ordinal) || row.Contains(lived.Ines.Value.ToString(), StringComparison.Ordinal))
                .Select(row => row.Split(' ')[0]).Distinct());
        Assert.Contains(left, row =>
            row.StartsWith("answers", StringComparison.Ordinal) && row.Contains(lived.Ines.Value.ToString(), StringComparison.Ordinal)
            && row.Contains("\"presence\": \"coming\"", StringComparison.Ordinal)
            && row.Contains("\"companions\": [{\"portion\": \"adult\"}]", StringComparison.Ordinal));
    }

    /// <summary>A name in what a host typed goes too; a word that only holds its letters is left alone.</summary>
    [Fact]
    public async Task Their_name_goes_from_own_steps_and_clocks_of_the_night_and_the_steps_stay()
    {
        var lived = await LiveAsync();
        var step = new OwnStep(88, Duration.FromMinutes(10), true, Before: new StepTie(StepKind.Serve));
        await App.Nights.OverruleAsync(
            lived.Group.Access, lived.Night, overrides => overrides.WithOwn(new NamedOwnStep("Call INÊS about the Inêsinha cake", step)), Cancellation);
        Assert.IsType<LiveResult.Counted>(await App.Lives.TapAsync(
            lived.Group.Access, lived.Night, Guid.CreateVersion7(),
            new LiveMark("", default, LiveMarkKind.ClockSet, Until: App.Clock.GetCurrentInstant() + Duration.FromMinutes(5), Name: "Inês's tea"), Cancellation));

        Assert.IsType<RemovalResult.Removed>(await App.Get<GuestRemoval>().RemoveAsync(lived.Group.Access, lived.Ines, Cancellation));

        var own = (await App.ViewAsync(lived.Group, lived.Night)).Overrides.Own!.Single(one => one.Step.Number == 88);
        Assert.Equal(("Call … about the Inêsinha cake", step), (own.Name, own.Step));
        Assert.Contains("…'s tea", await Rows.ReadAsync(Database.AdminConnectionString, "select mark->>'name' from live_taps"));
    }

    [Fact]
    public async Task From_a_coming_night_they_are_gone_at_once_and_the_plan_is_made_anew_without_their_own_pie()
    {
        var lived = await LiveAsync();
        Assert.Contains((await PlanOfAsync(lived)).Split.Pies, pie => pie.OwnPieFor.Contains(lived.Ines.ToString()));

        Assert.IsType<RemovalResult.Removed>(await App.Get<GuestRemoval>().RemoveAsync(lived.Group.Access, lived.Ines, Cancellation));

        Assert.DoesNotContain((await App.ViewAsync(lived.Group, lived.Night)).Guests, guest => guest.Id == lived.Ines);
        Assert.DoesNotContain((await PlanOfAsync(lived)).Split.Pies, pie => pie.IsOwnPie);
        Assert.Contains(
            lived.Night.Value.ToString(), await Rows.ReadAsync(Database.AdminConnectionString, "select night_id from replan_queue"));
        await PlanAsync(lived.Group.Access, lived.Night);
        Assert.DoesNotContain((await PlanOfAsync(lived)).Slices.Eaters, eater => eater.EaterId == lived.Ines.ToString());
        Assert.Null(await App.LookAsync(lived.InesLink));
        Assert.NotNull(await App.LookAsync(lived.RuiLink));
    }

    [Fact]
    public async Task Nobody_can_invite_or_change_them_any_more()
    {
        var lived = await LiveAsync();
        App.Clock.AdvanceDays(5);
        await RemoveOwnAsync(lived.InesLink);
        App.Clock.AdvanceDays(-5);

        Assert.DoesNotContain(await App.GuestList.GuestsAsync(lived.Group.Access, Cancellation), guest => guest.Id == lived.Ines);
        Assert.IsType<SaveResult.Gone>(await App.Invitations.RenewLinkAsync(lived.Group.Access, lived.Night, lived.Ines, Cancellation));
        Assert.IsType<SaveResult.Gone>(await App.GuestList.SetAsync(lived.Group.Access, lived.Ines, "Back", default, Cancellation));
        var next = await App.OpenNightAsync(lived.Group, [lived.Ines, lived.Rui]);
        Assert.DoesNotContain((await App.ViewAsync(lived.Group, next)).Guests, guest => guest.Id == lived.Ines);
        Assert.IsType<SaveResult.Gone>(await App.Invitations.InviteAsync(lived.Group.Access, next, lived.Ines, Cancellation));
    }

    [Fact]
    public async Task Sent_twice_it_removes_once()
    {
        var lived = await LiveAsync();
        await RemoveOwnAsync(lived.InesLink);
        var before = await Rows.EverythingAsync(Database);

        Assert.Equal(new RemovalResult.Gone(), await RemoveOwnAsync(lived.InesLink));
        Assert.Equal(new RemovalResult.Gone(), await App.Get<GuestRemoval>().RemoveAsync(lived.Group.Access, lived.Ines, Cancellation));
        Assert.Equal(before, await Rows.EverythingAsync(Database));
    }

    [Fact]
    public async Task A_host_is_an_account_first()
    {
        var lived = await LiveAsync();
        var own = (await App.GuestList.GuestsAsync(lived.Group.Access, Cancellation)).Single(guest => guest.IsHost);

        Assert.IsType<RemovalResult.IsHost>(await App.Get<GuestRemoval>().RemoveAsync(lived.Group.Access, own.Id, Cancellation));
    }

    [Fact]
    public async Task A_cook_may_not_remove_people()
    {
        var lived = await LiveAsync();
        var cook = new GroupAccess(lived.Group.Id, lived.Group.Host, HostRole.Cook);

        await Assert.ThrowsAsync<RightMissingException>(() => App.Get<GuestRemoval>().RemoveAsync(cook, lived.Ines, Cancellation));
    }

    [Fact]
    public async Task Others_lose_nothing()
    {
        var lived = await LiveAsync();
        var before = await OfGuestAsync(lived.Rui);

        await RemoveOwnAsync(lived.InesLink);

        Assert.Equal(before, await OfGuestAsync(lived.Rui));
    }

    [Fact]
    public async Task A_guest_takes_their_own_data_along_and_nobody_elses()
    {
        var lived = await LiveAsync();

        var own = Encoding.UTF8.GetString((await App.Get<OwnCopy>().WriteAsync(lived.InesLink, Cancellation))!);

        var document = JsonNode.Parse(own)!;
        Assert.Equal("Inês \"Ink\" & <Co>", (string?)document["name"]);
        var night = document["nights"]!.AsArray().Single()!;
        Assert.Equal(Marker, (string?)night["dietary"]!["note"]);
        Assert.Contains("lupin", night["dietary"]!["needs"]!.ToJsonString(), StringComparison.Ordinal);
        Assert.Equal(2, (int)night["cameHeads"]!);
        Assert.NotNull(night["lookBack"]);
        Assert.NotNull(document["remembered"]);
        Assert.DoesNotContain("Rui", own, StringComparison.Ordinal);
        Assert.Null(await App.Get<OwnCopy>().WriteAsync(LinkToken.TryParse(new string('A', LinkToken.Length)), Cancellation));
    }

    private Task<RemovalResult> RemoveOwnAsync(LinkToken link) => App.Get<GuestRemoval>().RemoveOwnAsync(link, Cancellation);

    private async Task<Planning.NightPlan> PlanOfAsync(LivedIn lived)
    {
        Planning.NightPlan? plan = null;
        await InSessionAsync(lived.Group.Access, async session =>
            plan = PlanBook.Read(await session.Db.Plans.AsNoTracking().SingleAsync(row => row.NightId == lived.Night, Cancellation)));
        return plan!;
    }

    private async Task<List<string>> OfGroupAsync(GroupId group) =>
        [.. (await Rows.EverythingAsync(Database)).Where(row => row.Contains(group.Value.ToString(), StringComparison.Ordinal))];

    private async Task<List<string>> OfGuestAsync(GuestId guest) =>
        [.. (await Rows.EverythingAsync(Database)).Where(row =>
            row.Contains($"\"{guest.Value}\"", StringComparison.Ordinal)
            && !row.StartsWith("plans", StringComparison.Ordinal) && !row.StartsWith("committed", StringComparison.Ordinal))];
}
