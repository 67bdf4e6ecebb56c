using GameNight.Nights.Records;
using GameNight.Nights.Tests.Storage;
using GameNight.Planning.Guests;
using GameNight.TestKit;
using GameNight.TestKit.Postgres;

namespace GameNight.Nights.Tests.Membership;

public sealed class GroupDeskTests(ClassDatabase database) : NightsTest(database)
{
    [Fact]
    public async Task A_host_enters_their_own_group()
    {
        var group = await App.FoundGroupAsync();

        var access = await App.Groups.EnterAsync(group.Host, group.Id, Cancellation);

        Assert.Equal((group.Id, group.Host, HostRole.Owner), (access!.GroupId, access.HostId, access.Role));
    }

    [Fact]
    public async Task A_stranger_is_told_the_same_of_a_group_as_of_none()
    {
        var group = await App.FoundGroupAsync();
        var stranger = await App.FoundGroupAsync("Sam");

        Assert.Null(await App.Groups.EnterAsync(stranger.Host, group.Id, Cancellation));
        Assert.Null(await App.Groups.EnterAsync(stranger.Host, GroupId.New(), Cancellation));
        Assert.Null(await App.Groups.EnterAsync(new HostId(Guid.NewGuid()), group.Id, Cancellation));
    }

    [Fact]
    public async Task A_membership_that_was_taken_away_opens_nothing_any_more()
    {
        var group = await App.FoundGroupAsync();
        await Rows.TellAsync(
            Database.AdminConnectionString, $"delete from memberships where host_id = '{group.Host.Value}'");

        Assert.Null(await App.Groups.EnterAsync(group.Host, group.Id, Cancellation));
        Assert.Empty(await App.Groups.GroupsOfAsync(group.Host, Cancellation));
    }

    [Fact]
    public async Task A_host_sees_all_their_own_groups_and_no_others()
    {
        var first = await App.FoundGroupAsync("Hana", "Thursday table");
        await App.FoundGroupAsync("Sam", "Somebody else's");
        await App.Groups.FoundAsync(first.Host, "Hana", "Family", "Europe/London", Cancellation);

        var groups = await App.Groups.GroupsOfAsync(first.Host, Cancellation);

        Assert.Equal(["Thursday table", "Family"], groups.Select(group => group.Name));
        Assert.Equal(["Europe/Berlin", "Europe/London"], groups.Select(group => group.Zone));
    }

    [Fact]
    public async Task Memberships_of_others_are_invisible_even_to_the_serving_role()
    {
        var ours = await App.FoundGroupAsync();
        await App.FoundGroupAsync("Sam");

        var seen = await Rows.SeenFromAsync(
            Database.AppConnectionString,
            null,
            $"""
             with host as materialized (select set_config('app.host_id', '{ours.Host.Value}', true))
             select distinct host_id::text from host, memberships
             """);

        Assert.Equal([$"{ours.Host.Value}"], seen);
    }

    [Fact]
    public async Task Being_a_host_somewhere_gives_no_right_to_write_memberships()
    {
        var ours = await App.FoundGroupAsync();
        var theirs = await App.FoundGroupAsync("Sam");

        await Assert.ThrowsAsync<Npgsql.PostgresException>(() => Rows.TryAsync(
            Database.AppConnectionString,
            ours.Id,
            $"insert into memberships values ('{theirs.Id.Value}', '{ours.Host.Value}', 'Owner')"));
    }

    [Fact]
    public async Task A_new_group_has_a_kitchen_doughs_a_menu_and_its_host_as_an_eater()
    {
        var group = await App.FoundGroupAsync("Hana");

        var (kitchen, _) = await App.Kitchen.KitchenAsync(group.Access, Cancellation);
        var doughs = await App.Kitchen.RecipesAsync(group.Access, Cancellation);
        var menu = await App.Kitchen.MenuAsync(group.Access, Cancellation);
        var guests = await App.GuestList.GuestsAsync(group.Access, Cancellation);

        Assert.Equal(KitchenFacts.Starting.Kitchen.Room, kitchen.Kitchen.Room);
        Assert.Equal(["Counter slice", "House dough, cold", "Soft pan"], doughs.Select(dough => dough.Name));
        Assert.Equal(
            SharedFolder.Tables.Menu.Items.Select(item => item.Name).Order(), menu.Select(item => item.Name).Order());
        var host = Assert.Single(guests);
        Assert.Equal(("Hana", PortionClass.Adult, true), (host.Name, host.Portion, host.IsHost));
    }

    [Fact]
    public async Task Accounts_are_known_by_name()
    {
        var host = await App.SignUpAsync("Hana");

        Assert.Equal("Hana", await App.Accounts.NameOfAsync(host, Cancellation));
        Assert.Null(await App.Accounts.NameOfAsync(new HostId(Guid.NewGuid()), Cancellation));
        Assert.False(await App.Accounts.AreNoneAsync(Cancellation));
    }
}
