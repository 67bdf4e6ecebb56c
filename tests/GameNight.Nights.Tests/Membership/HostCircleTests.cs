using GameNight.Nights.Links;
using GameNight.Nights.Membership;
using GameNight.Nights.Records;
using GameNight.Nights.Tests.Storage;
using GameNight.Planning.Guests;
using GameNight.TestKit.Nights;
using GameNight.TestKit.Postgres;
using NodaTime;

namespace GameNight.Nights.Tests.Membership;

public sealed class HostCircleTests(ClassDatabase database) : NightsTest(database)
{
    private HostCircle Circle => App.Get<HostCircle>();

    private JoiningDesk Joining => App.Get<JoiningDesk>();

    [Fact]
    public async Task Somebody_asked_to_cook_joins_with_that_right_and_eats_along()
    {
        var group = await App.FoundGroupAsync();
        var link = await InviteAsync(group, HostRole.Cook, seesNotes: false);
        var noor = await App.SignUpAsync("Noor");

        var seen = Assert.IsType<JoiningLookup.Found>(await Joining.LookAsync(link, Cancellation)).Invitation;
        var joined = await Joining.JoinAsync(link, noor, "Noor", Cancellation);

        Assert.Equal(("Thursday table", "Hana", HostRole.Cook), (seen.GroupName, seen.InvitedBy, seen.Role));
        Assert.Equal(group.Id, joined);
        var access = await App.Groups.EnterAsync(noor, group.Id, Cancellation);
        Assert.Equal((HostRole.Cook, false), (access!.Role, access.SeesNotes));
        Assert.Contains(await App.GuestList.GuestsAsync(group.Access, Cancellation), guest => guest is { Name: "Noor", IsHost: true });
    }

    [Fact]
    public async Task A_link_to_join_works_once_even_for_two_at_the_same_moment()
    {
        var group = await App.FoundGroupAsync();
        var link = await InviteAsync(group, HostRole.Organiser);
        var people = await Task.WhenAll(Enumerable.Range(0, 4).Select(number => App.SignUpAsync($"Host {number}")));

        var joined = await Task.WhenAll(people.Select(person => Joining.JoinAsync(link, person, "Somebody", Cancellation)));

        Assert.Single(joined, group.Id);
        Assert.Equal(2, (await Circle.HostsAsync(group.Access, Cancellation)).Count);
        Assert.IsType<JoiningLookup.LinkNotValid>(await Joining.LookAsync(link, Cancellation));
        Assert.Empty(await Rows.ReadAsync(Database.AdminConnectionString, $"select 1 from link_directory where scope = 'JoinAsHost' and group_id = '{group.Id.Value}'"));
    }

    [Fact]
    public async Task A_link_to_join_ends_when_it_is_withdrawn_or_a_week_old()
    {
        var group = await App.FoundGroupAsync();
        var (withdrawn, old) = (await InviteAsync(group, HostRole.Cook), await InviteAsync(group, HostRole.Cook));
        var lines = await Circle.InvitationsAsync(group.Access, Cancellation);
        await Circle.WithdrawAsync(
            group.Access, lines.Single(line => line.LinkToken == withdrawn.Text).Id, Cancellation);
        Assert.IsType<JoiningLookup.LinkNotValid>(await Joining.LookAsync(withdrawn, Cancellation));
        Assert.IsType<JoiningLookup.Found>(await Joining.LookAsync(old, Cancellation));

        App.Clock.Advance(HostInvitation.OpenFor + Duration.FromMinutes(1));

        Assert.IsType<JoiningLookup.LinkNotValid>(await Joining.LookAsync(old, Cancellation));
        Assert.Null(await Joining.JoinAsync(old, group.Host, "Hana", Cancellation));
        Assert.Empty(await Circle.InvitationsAsync(group.Access, Cancellation));
    }

    [Fact]
    public async Task Whoever_is_in_already_keeps_their_right_and_leaves_the_link_for_whom_it_is_meant()
    {
        var group = await App.FoundGroupAsync();
        var link = await InviteAsync(group, HostRole.Cook, seesNotes: false);

        Assert.Equal(group.Id, await Joining.JoinAsync(link, group.Host, "Hana", Cancellation));

        Assert.IsType<JoiningLookup.Found>(await Joining.LookAsync(link, Cancellation));
        var self = Assert.Single(await Circle.HostsAsync(group.Access, Cancellation));
        Assert.Equal((HostRole.Owner, true), (self.Role, self.SeesNotes));
        Assert.Single(await App.GuestList.GuestsAsync(group.Access, Cancellation));
    }

    [Fact]
    public async Task The_last_owner_neither_leaves_nor_steps_down()
    {
        var group = await App.FoundGroupAsync();
        await JoinAsync(group, HostRole.Organiser);

        Assert.IsType<HostChange.LastOwner>(await Circle.RemoveAsync(group.Access, group.Host, Cancellation));
        Assert.IsType<HostChange.LastOwner>(
            await Circle.GrantAsync(group.Access, group.Host, HostRole.Cook, seesNotes: true, Cancellation));
        Assert.NotNull(await App.Groups.EnterAsync(group.Host, group.Id, Cancellation));
    }

    [Fact]
    public async Task Of_two_owners_who_leave_at_the_same_moment_one_stays()
    {
        for (var time = 0; time < 5; time++)
        {
            var group = await App.FoundGroupAsync();
            var other = await JoinAsync(group, HostRole.Owner);

            var results = await Task.WhenAll(
                Circle.RemoveAsync(group.Access, group.Host, Cancellation), Circle.RemoveAsync(other, other.HostId!.Value, Cancellation));

            Assert.Single(results, result => result is HostChange.Done);
            Assert.Single(results, result => result is HostChange.LastOwner);
        }
    }

    [Fact]
    public async Task An_owner_taken_out_or_stepped_down_cannot_come_back_by_links_they_made()
    {
        var group = await App.FoundGroupAsync();
        foreach (var isTakenOut in new[] { true, false })
        {
            var other = await JoinAsync(group, HostRole.Owner);
            var id = HostInvitationId.New();
            await Circle.InviteAsync(other, id, "Back door", HostRole.Owner, true, Cancellation);
            var link = LinkToken.TryParse(
                (await Circle.InvitationsAsync(group.Access, Cancellation)).Single(line => line.Id == id).LinkToken);

            await (isTakenOut
                ? Circle.RemoveAsync(group.Access, other.HostId!.Value, Cancellation)
                : Circle.GrantAsync(group.Access, other.HostId!.Value, HostRole.Cook, false, Cancellation));

            Assert.IsType<JoiningLookup.LinkNotValid>(await Joining.LookAsync(link, Cancellation));
            await Assert.ThrowsAsync<RightMissingException>(() => Circle.RemoveAsync(other, group.Host, Cancellation));
        }
    }

    [Fact]
    public async Task Who_leaves_stays_a_guest_and_enters_no_more()
    {
        var group = await App.FoundGroupAsync();
        var noor = await JoinAsync(group, HostRole.Organiser);

        Assert.IsType<HostChange.Done>(await Circle.RemoveAsync(noor, noor.HostId!.Value, Cancellation));

        Assert.Null(await App.Groups.EnterAsync(noor.HostId!.Value, group.Id, Cancellation));
        Assert.Contains(await App.GuestList.GuestsAsync(group.Access, Cancellation), guest => guest is { Name: "Noor", IsHost: false });
        Assert.IsType<HostChange.Gone>(await Circle.RemoveAsync(group.Access, noor.HostId!.Value, Cancellation));
    }

    [Fact]
    public async Task A_right_given_counts_from_the_next_step()
    {
        var group = await App.FoundGroupAsync();
        var noor = await JoinAsync(group, HostRole.Cook);
        await Assert.ThrowsAsync<RightMissingException>(() => App.GuestList.AddAsync(
            noor, GuestId.New(), "Kofi", PortionClass.Adult, Cancellation));

        await Circle.GrantAsync(group.Access, noor.HostId!.Value, HostRole.Organiser, seesNotes: false, Cancellation);
        var organiser = (await App.Groups.EnterAsync(noor.HostId!.Value, group.Id, Cancellation))!;

        await App.GuestList.AddAsync(organiser, GuestId.New(), "Kofi", PortionClass.Adult, Cancellation);
        Assert.Contains(await App.GuestList.GuestsAsync(group.Access, Cancellation), guest => guest.Name == "Kofi");
    }

    [Theory]
    [InlineData(HostRole.Cook)]
    [InlineData(HostRole.Organiser)]
    public async Task Only_owners_say_who_hosts(HostRole right)
    {
        var group = await App.FoundGroupAsync();
        var other = await JoinAsync(group, right);

        await Assert.ThrowsAsync<RightMissingException>(() => Circle.InvitationsAsync(other, Cancellation));
        await Assert.ThrowsAsync<RightMissingException>(
            () => Circle.InviteAsync(other, HostInvitationId.New(), "Kofi", HostRole.Cook, false, Cancellation));
        await Assert.ThrowsAsync<RightMissingException>(() => Circle.WithdrawAsync(other, HostInvitationId.New(), Cancellation));
        await Assert.ThrowsAsync<RightMissingException>(
            () => Circle.GrantAsync(other, other.HostId!.Value, HostRole.Owner, true, Cancellation));
        await Assert.ThrowsAsync<RightMissingException>(() => Circle.RemoveAsync(other, group.Host, Cancellation));
    }

    [Theory]
    [InlineData("")]
    [InlineData("   ")]
    public async Task An_invitation_names_somebody(string name)
    {
        var group = await App.FoundGroupAsync();

        Assert.IsType<HostChange.NameMissing>(
            await Circle.InviteAsync(group.Access, HostInvitationId.New(), name, HostRole.Cook, false, Cancellation));
        Assert.Empty(await Circle.InvitationsAsync(group.Access, Cancellation));
    }

    private async Task<LinkToken> InviteAsync(FoundedGroup group, HostRole right, bool seesNotes = true)
    {
        var id = HostInvitationId.New();
        await Circle.InviteAsync(group.Access, id, "Noor", right, seesNotes, Cancellation);
        await Circle.InviteAsync(group.Access, id, "Noor", right, seesNotes, Cancellation);
        var line = (await Circle.InvitationsAsync(group.Access, Cancellation)).Single(line => line.Id == id);
        return LinkToken.TryParse(line.LinkToken)!.Value;
    }

    private async Task<GroupAccess> JoinAsync(FoundedGroup group, HostRole right)
    {
        var link = await InviteAsync(group, right);
        var noor = await App.SignUpAsync("Noor");
        await Joining.JoinAsync(link, noor, "Noor", Cancellation);
        return (await App.Groups.EnterAsync(noor, group.Id, Cancellation))!;
    }
}
