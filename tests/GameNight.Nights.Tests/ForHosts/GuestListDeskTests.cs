using GameNight.Nights.ForHosts;
using GameNight.Nights.Records;
using GameNight.Nights.Tests.Storage;
using GameNight.Planning.Guests;
using GameNight.TestKit.Postgres;

namespace GameNight.Nights.Tests.ForHosts;

public sealed class GuestListDeskTests(ClassDatabase database) : NightsTest(database)
{
    [Fact]
    public async Task The_same_guest_added_many_times_is_one_guest()
    {
        var (group, id) = (await App.FoundGroupAsync(), GuestId.New());

        var results = await Task.WhenAll(Enumerable.Range(0, 8).Select(
            _ => App.GuestList.AddAsync(group.Access, id, " Ines ", PortionClass.Teen, Cancellation)));

        Assert.All(results, result => Assert.IsType<SaveResult.Saved>(result));
        Assert.Equal(
            new GuestLine(id, "Ines", PortionClass.Teen, IsHost: false, IsStanding: true),
            Assert.Single(await App.GuestList.GuestsAsync(group.Access, Cancellation), guest => guest.Id == id));
    }

    [Theory]
    [InlineData("")]
    [InlineData("   ")]
    [InlineData("xxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxx")]
    public async Task A_name_that_is_none_or_too_long_is_refused(string name)
    {
        var group = await App.FoundGroupAsync();

        Assert.IsType<SaveResult.Refused>(
            await App.GuestList.AddAsync(group.Access, GuestId.New(), name, PortionClass.Adult, Cancellation));

        Assert.Single(await App.GuestList.GuestsAsync(group.Access, Cancellation));
    }

    [Fact]
    public async Task A_guest_can_be_renamed_and_their_nights_are_planned_anew()
    {
        var night = await App.OpenNightForOneGuestAsync();
        await Rows.TellAsync(Database.AdminConnectionString, "delete from replan_queue");

        await App.GuestList.SetAsync(night.Group.Access, night.Guest, "Inês", PortionClass.Child, Cancellation);

        var row = await App.InvitedAsync(night.Group, night.Night, night.Guest);
        Assert.Equal(("Inês", PortionClass.Child), (row.Name, row.Portion));
        Assert.Equal(
            [$"{night.Night.Value}"], await Rows.ReadAsync(Database.AdminConnectionString, "select night_id from replan_queue"));
    }

    [Fact]
    public async Task A_guest_of_another_group_is_gone()
    {
        var (night, ours) = (await App.OpenNightForOneGuestAsync(), await App.FoundGroupAsync("Sam"));

        Assert.IsType<SaveResult.Gone>(
            await App.GuestList.SetAsync(ours.Access, night.Guest, "Taken", PortionClass.Adult, Cancellation));
        Assert.DoesNotContain(night.Guest, (await App.GuestList.GuestsAsync(ours.Access, Cancellation)).Select(guest => guest.Id));
    }
}
