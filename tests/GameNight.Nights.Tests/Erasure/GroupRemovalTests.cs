using GameNight.Nights.Erasure;
using GameNight.Nights.Links;
using GameNight.Nights.Membership;
using GameNight.Nights.Records;
using GameNight.Nights.Tests.Moving;
using GameNight.Nights.Tests.Storage;
using GameNight.TestKit.Nights;
using GameNight.TestKit.Postgres;
using NodaTime;

namespace GameNight.Nights.Tests.Erasure;

public sealed class GroupRemovalTests(ClassDatabase database) : MovingTest(database)
{
    [Fact]
    public async Task No_row_of_any_table_mentions_a_deleted_group()
    {
        var (lived, other) = (await LiveAsync(), await LiveAsync());
        await InviteHostAsync(lived.Group);
        var others = await MentioningAsync(other.Group.Id);
        Assert.NotEmpty(await MentioningAsync(lived.Group.Id));

        Assert.IsType<GroupRemovalResult.Deleted>(await DeleteAsync(lived.Group.Access, " thursday table "));

        Assert.Empty(await MentioningAsync(lived.Group.Id));
        Assert.Empty(await MentioningAsync(new GroupId(lived.Night.Value)));
        Assert.Empty(await MentioningAsync(new GroupId(lived.Ines.Value)));
        Assert.Equal(others, await MentioningAsync(other.Group.Id));
        Assert.Null(await App.Groups.EnterAsync(lived.Group.Host, lived.Group.Id, Cancellation));
        Assert.Null(await App.LookAsync(lived.InesLink));
    }

    [Theory]
    [InlineData("")]
    [InlineData("Thursday")]
    [InlineData("Thursday table!")]
    public async Task Another_name_deletes_nothing(string typed)
    {
        var lived = await LiveAsync();
        var before = await MentioningAsync(lived.Group.Id);

        Assert.IsType<GroupRemovalResult.OtherName>(await DeleteAsync(lived.Group.Access, typed));

        Assert.Equal(before, await MentioningAsync(lived.Group.Id));
    }

    [Fact]
    public async Task Twice_is_once()
    {
        var lived = await LiveAsync();
        await DeleteAsync(lived.Group.Access, "Thursday table");

        Assert.IsType<GroupRemovalResult.Gone>(await DeleteAsync(lived.Group.Access, "Thursday table"));
    }

    [Fact]
    public async Task Open_pages_of_its_nights_are_told()
    {
        var lived = await LiveAsync();
        var told = 0;
        using var listening = App.Changes.Listen(lived.Night, () => told++);

        await DeleteAsync(lived.Group.Access, "Thursday table");

        Assert.Equal(1, told);
        Assert.Null(await App.Nights.NightAsync(lived.Group.Access, lived.Night, Cancellation));
    }

    [Fact]
    public async Task Only_an_owner_may()
    {
        var lived = await LiveAsync();
        var organiser = new GroupAccess(lived.Group.Id, lived.Group.Host, HostRole.Organiser);

        await Assert.ThrowsAsync<RightMissingException>(() => DeleteAsync(organiser, "Thursday table"));
    }

    private Task<GroupRemovalResult> DeleteAsync(GroupAccess access, string typed) =>
        App.Get<GroupRemoval>().DeleteAsync(access, typed, Cancellation);

    private Task InviteHostAsync(FoundedGroup group) => InSessionAsync(group.Access, session =>
    {
        var invitation = new HostInvitation(
            group.Id, HostInvitationId.New(), "Somebody", HostRole.Cook, seesNotes: false, group.Host,
            App.Clock.GetCurrentInstant() + Duration.FromDays(7));
        session.Db.HostInvitations.Add(invitation);
        App.Get<LinkDirectory>().List(session, invitation);
        return Task.CompletedTask;
    });

    private async Task<List<string>> MentioningAsync(GroupId group) =>
        [.. (await Rows.EverythingAsync(Database)).Where(row =>
            row.Contains(group.Value.ToString(), StringComparison.Ordinal) || row.Contains(group.ToString(), StringComparison.Ordinal))];
}
