using GameNight.Nights.Membership;
using GameNight.Nights.Records;
using GameNight.Nights.Tests.Storage;
using GameNight.TestKit.Nights;
using GameNight.TestKit.Postgres;

namespace GameNight.Nights.Tests.Membership;

public sealed class AccountRemovalTests(ClassDatabase database) : NightsTest(database)
{
    private WaysIn Ways => App.Get<WaysIn>();

    [Fact]
    public async Task The_only_owner_is_refused_with_the_groups_in_the_way_and_nothing_changes()
    {
        var group = await App.FoundGroupAsync("Hana", "Thursday table");

        var refused = Assert.IsType<AccountRemoval.OnlyOwner>(await App.Accounts.RemoveAsync(group.Host, Cancellation));

        Assert.Equal(["Thursday table"], refused.Groups.Select(line => line.Name));
        Assert.NotNull(await App.Groups.EnterAsync(group.Host, group.Id, Cancellation));
        Assert.Equal("Hana", await App.Accounts.NameOfAsync(group.Host, Cancellation));
    }

    [Fact]
    public async Task An_account_goes_with_its_codes_and_stays_known_as_a_guest()
    {
        var group = await App.FoundGroupAsync("Hana");
        await JoinAsync(group, "Owner");
        await App.Get<RecoveryCodes>().RenewAsync(group.Host, Cancellation);
        await AddPasskeyAsync(group.Host, 1);

        Assert.IsType<AccountRemoval.Removed>(await App.Accounts.RemoveAsync(group.Host, Cancellation));

        Assert.Null(await App.Accounts.NameOfAsync(group.Host, Cancellation));
        Assert.Null(await App.Groups.EnterAsync(group.Host, group.Id, Cancellation));
        Assert.Equal(0, await App.Get<RecoveryCodes>().LeftAsync(group.Host, Cancellation));
        Assert.Empty(await PasskeysAsync(group.Host));
        var guests = await App.GuestList.GuestsAsync(group.Access, Cancellation);
        Assert.Contains(guests, guest => guest is { Name: "Hana", IsHost: false });
        Assert.IsType<AccountRemoval.Removed>(await App.Accounts.RemoveAsync(group.Host, Cancellation));
    }

    [Fact]
    public async Task A_cook_is_no_owner_who_could_keep_the_group()
    {
        var group = await App.FoundGroupAsync();
        var cook = await JoinAsync(group, "Cook");

        Assert.IsType<AccountRemoval.OnlyOwner>(await App.Accounts.RemoveAsync(group.Host, Cancellation));
        Assert.IsType<AccountRemoval.Removed>(await App.Accounts.RemoveAsync(cook, Cancellation));
    }

    [Fact]
    public async Task Of_two_owners_who_leave_at_once_one_stays()
    {
        var group = await App.FoundGroupAsync();
        var other = await JoinAsync(group, "Owner");

        var results = await Task.WhenAll(
            App.Accounts.RemoveAsync(group.Host, Cancellation), App.Accounts.RemoveAsync(other, Cancellation));

        Assert.Single(results, result => result is AccountRemoval.Removed);
        Assert.Single(results, result => result is AccountRemoval.OnlyOwner);
    }

    [Fact]
    public async Task A_sign_in_counts_until_its_stamp_is_changed()
    {
        var host = await App.SignUpAsync("Hana");
        var stamp = Assert.Single(await Rows.SeenFromAsync(
            Database.AppConnectionString, null, $"select security_stamp from accounts where id = '{host.Value}'"));

        Assert.True(await App.Accounts.IsStillSignedInAsync(host, stamp, Cancellation));
        Assert.False(await App.Accounts.IsStillSignedInAsync(host, "another", Cancellation));
        Assert.False(await App.Accounts.IsStillSignedInAsync(host, null, Cancellation));
        Assert.False(await App.Accounts.IsStillSignedInAsync(new HostId(Guid.NewGuid()), stamp, Cancellation));
    }

    [Fact]
    public async Task Of_two_passkeys_that_are_removed_at_once_without_a_password_one_stays()
    {
        var host = await App.SignUpAsync("Hana");
        await AddPasskeyAsync(host, 2);
        await AddPasskeyAsync(host, 3);

        var results = await Task.WhenAll(
            Ways.RemovePasskeyAsync(host, Id(host, 2), Cancellation), Ways.RemovePasskeyAsync(host, Id(host, 3), Cancellation));

        Assert.Equal([WayInRemoval.Removed, WayInRemoval.LastOne], results.Order());
        Assert.Single(await PasskeysAsync(host));
    }

    [Fact]
    public async Task A_password_may_go_only_beside_a_passkey_and_ends_the_sign_ins()
    {
        var host = await App.SignUpAsync("Hana");
        await Rows.TellAsync(
            Database.AdminConnectionString, $"update accounts set password_hash = 'x', security_stamp = 'old' where id = '{host.Value}'");

        Assert.Equal(WayInRemoval.LastOne, await Ways.RemovePasswordAsync(host, Cancellation));
        Assert.True(await App.Accounts.IsStillSignedInAsync(host, "old", Cancellation));
        await AddPasskeyAsync(host, 4);
        Assert.Equal(WayInRemoval.Removed, await Ways.RemovePasswordAsync(host, Cancellation));
        Assert.False(await App.Accounts.IsStillSignedInAsync(host, "old", Cancellation));
        Assert.Equal(WayInRemoval.LastOne, await Ways.RemovePasskeyAsync(host, Id(host, 4), Cancellation));
    }

    [Fact]
    public async Task Somebody_elses_passkey_is_not_removed()
    {
        var (hana, sam) = (await App.SignUpAsync("Hana"), await App.SignUpAsync("Sam"));
        await AddPasskeyAsync(hana, 5);
        await AddPasskeyAsync(hana, 6);

        await Ways.RemovePasskeyAsync(sam, Id(hana, 5), Cancellation);

        Assert.Equal(2, (await PasskeysAsync(hana)).Count);
    }

    /// <summary>A second host of the group.</summary>
    private async Task<HostId> JoinAsync(FoundedGroup group, string role)
    {
        var host = await App.SignUpAsync("Sam");
        await Rows.TellAsync(
            Database.AdminConnectionString,
            $"insert into memberships (group_id, host_id, role, sees_notes) values ('{group.Id.Value}', '{host.Value}', '{role}', false)");
        return host;
    }

    private static byte[] Id(HostId host, byte number) => [.. host.Value.ToByteArray(), number];

    private Task<int> AddPasskeyAsync(HostId host, byte number) => Rows.TellAsync(
        Database.AdminConnectionString,
        $$"""
          insert into account_passkeys (credential_id, user_id, data)
          values (decode('{{Convert.ToHexString(Id(host, number))}}', 'hex'), '{{host.Value}}',
              '{"PublicKey":"","CreatedAt":"2026-01-01T00:00:00Z","SignCount":0,"Transports":null,"IsUserVerified":true,"IsBackupEligible":false,"IsBackedUp":false,"AttestationObject":"","ClientDataJson":"","Name":"Phone"}')
          """);

    private Task<List<string>> PasskeysAsync(HostId host) => Rows.SeenFromAsync(
        Database.AppConnectionString, null, $"select encode(credential_id, 'hex') from account_passkeys where user_id = '{host.Value}'");
}
