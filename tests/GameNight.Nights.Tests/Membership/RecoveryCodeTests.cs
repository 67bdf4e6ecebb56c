using GameNight.Nights.Membership;
using GameNight.Nights.Tests.Storage;
using GameNight.TestKit.Postgres;

namespace GameNight.Nights.Tests.Membership;

public sealed class RecoveryCodeTests(ClassDatabase database) : NightsTest(database)
{
    private RecoveryCodes Codes => App.Get<RecoveryCodes>();

    [Fact]
    public async Task Ten_long_codes_are_made_and_none_is_kept_readable()
    {
        var host = await App.SignUpAsync("Hana");

        var codes = await Codes.RenewAsync(host, Cancellation);

        Assert.Equal(10, codes.Distinct().Count());
        Assert.All(codes, code => Assert.Matches("^[A-HJ-NP-Z2-9]{4}(-[A-HJ-NP-Z2-9]{4}){5}$", code));
        Assert.Equal(10, await Codes.LeftAsync(host, Cancellation));
        var kept = await Rows.SeenFromAsync(
            Database.AppConnectionString, null, $"select encode(code_hash, 'hex') from recovery_codes where account_id = '{host.Value}'");
        Assert.All(kept, hash => Assert.Equal(64, hash.Length));
    }

    [Fact]
    public async Task A_code_opens_its_account_once_however_it_is_typed()
    {
        var host = await App.SignUpAsync("Hana");
        var code = (await Codes.RenewAsync(host, Cancellation))[3];

        Assert.Equal(host, await Codes.UseAsync($" {code.ToLowerInvariant().Replace('-', ' ')}\n", null, Cancellation));
        Assert.Null(await Codes.UseAsync(code, null, Cancellation));
        Assert.Equal(9, await Codes.LeftAsync(host, Cancellation));
    }

    [Fact]
    public async Task Of_many_who_use_one_code_at_once_exactly_one_gets_in()
    {
        var host = await App.SignUpAsync("Hana");
        var code = (await Codes.RenewAsync(host, Cancellation))[0];

        var used = await Task.WhenAll(Enumerable.Range(0, 6).Select(_ => Codes.UseAsync(code, null, Cancellation)));

        Assert.Equal(host, Assert.Single(used, owner => owner is not null));
    }

    [Fact]
    public async Task New_codes_end_the_old_ones_even_when_two_make_them_at_once()
    {
        var host = await App.SignUpAsync("Hana");
        var old = await Codes.RenewAsync(host, Cancellation);

        await Task.WhenAll(Codes.RenewAsync(host, Cancellation), Codes.RenewAsync(host, Cancellation));

        Assert.Null(await Codes.UseAsync(old[0], null, Cancellation));
        Assert.Equal(10, await Codes.LeftAsync(host, Cancellation));
    }

    [Fact]
    public async Task A_code_of_somebody_else_confirms_nothing_and_stays()
    {
        var (hana, sam) = (await App.SignUpAsync("Hana"), await App.SignUpAsync("Sam"));
        var code = (await Codes.RenewAsync(hana, Cancellation))[0];

        Assert.Null(await Codes.UseAsync(code, sam, Cancellation));
        Assert.Equal(hana, await Codes.UseAsync(code, hana, Cancellation));
    }

    [Theory]
    [InlineData("")]
    [InlineData("AAAA-AAAA-AAAA-AAAA-AAAA-AAAA")]
    [InlineData("' or true --")]
    public async Task What_is_no_code_opens_nothing(string typed)
    {
        await Codes.RenewAsync(await App.SignUpAsync("Hana"), Cancellation);

        Assert.Null(await Codes.UseAsync(typed, null, Cancellation));
    }
}
