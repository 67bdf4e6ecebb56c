using System.Net;
using GameNight.Nights.Records;
using GameNight.TestKit.Running;
using Microsoft.AspNetCore.Identity;

namespace GameNight.Web.Tests.Pages;

/// <summary>The account's own pages, each test with an account of its own.</summary>
public class AccountPageTests(SharedApp site)
{
    private const string Password = "a loaf of rye on mondays";

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData("/account")]
    [InlineData("/account/mail")]
    [InlineData("/account/password")]
    [InlineData("/account/passkeys")]
    [InlineData("/account/codes")]
    [InlineData("/account/remove")]
    [InlineData("/confirm")]
    public async Task Pages_of_an_account_are_open_to_its_host_only_and_are_not_kept(string path)
    {
        using var stranger = new Visitor((await site.AppAsync()).Address);
        var (host, _) = await SignedInAsync();
        using (host)
        {
            var closed = await stranger.Client.GetAsync(path, Cancellation);
            var open = await host.Client.GetAsync(path, Cancellation);

            Assert.StartsWith("/sign-in", closed.Headers.Location!.PathAndQuery, StringComparison.Ordinal);
            Assert.Equal(HttpStatusCode.OK, open.StatusCode);
            Assert.True(open.Headers.CacheControl!.NoStore);
        }
    }

    [Fact]
    public async Task Name_and_measures_are_kept()
    {
        var (host, id) = await SignedInAsync();
        using (host)
        {
            var saved = await host.SendAsync("/account", ("name", " Maximiliane "), ("measures", "UsCustomary"));
            var page = await (await host.Client.GetAsync(saved.Headers.Location, Cancellation)).DocumentAsync();

            Assert.Equal("Maximiliane", page.QuerySelector("#name")!.GetAttribute("value"));
            Assert.True(page.QuerySelector("input[value=UsCustomary]")!.HasAttribute("checked"));
            Assert.Equal("Maximiliane", await AskAsync($"select display_name from accounts where id = '{id}'"));

            var refused = await host.SendAsync("/account", ("name", new string('x', 61)), ("measures", "Metric"));

            Assert.Equal(HttpStatusCode.BadRequest, refused.StatusCode);
            Assert.Contains("Say your name", await refused.TextAsync(), StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task A_recovery_code_signs_in_once_and_says_how_many_are_left()
    {
        var (host, _) = await SignedInAsync();
        using (host)
        {
            var codes = await CodesAsync(host);
            using var finder = new Visitor((await site.AppAsync()).Address);

            var entered = await finder.SendAsync("/sign-in/code", ("code", codes[0].ToLowerInvariant()));
            var account = await (await finder.Client.GetAsync(entered.Headers.Location, Cancellation)).TextAsync();
            using var second = new Visitor((await site.AppAsync()).Address);
            var again = await second.SendAsync("/sign-in/code", ("code", codes[0]));

            Assert.Contains("9 are left", account, StringComparison.Ordinal);
            Assert.Equal(HttpStatusCode.BadRequest, again.StatusCode);
            Assert.Contains("does not open an account", await again.TextAsync(), StringComparison.Ordinal);

            await CodesAsync(host);
            using var third = new Visitor((await site.AppAsync()).Address);
            Assert.Equal(HttpStatusCode.BadRequest, (await third.SendAsync("/sign-in/code", ("code", codes[1]))).StatusCode);
        }
    }

    [Fact]
    public async Task Signing_out_everywhere_ends_every_other_sign_in()
    {
        var (host, id) = await SignedInAsync();
        using (host)
        {
            using var other = await SignInAsync(id);

            var ended = await host.PostAsync(
                "/account/sign-out-everywhere", [("__RequestVerificationToken", await host.TokenAsync("/account"))]);
            var here = await host.Client.GetAsync("/account", Cancellation);
            var there = await other.Client.GetAsync("/account", Cancellation);

            Assert.Equal("/sign-in", ended.Headers.Location!.ToString());
            Assert.StartsWith("/sign-in", here.Headers.Location!.PathAndQuery, StringComparison.Ordinal);
            Assert.Equal("/sign-in", there.Headers.Location!.ToString());
        }
    }

    [Theory]
    [InlineData("short", "12 to 128 characters")]
    [InlineData("password1234", "one of the first that would be tried")]
    [InlineData("aaaaaaaaaaaaaaaaaaaa", "one of the first that would be tried")]
    public async Task A_weak_password_is_refused(string password, string sentence)
    {
        var (host, _) = await SignedInAsync();
        using (host)
        {
            var refused = await host.SendAsync("/account/password", ("password", password));

            Assert.Equal(HttpStatusCode.BadRequest, refused.StatusCode);
            Assert.Contains(sentence, await refused.TextAsync(), StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task A_new_password_of_128_characters_counts_and_ends_other_sign_ins_but_not_this_one()
    {
        var (host, id) = await SignedInAsync();
        using (host)
        {
            using var other = await SignInAsync(id);
            var longest = string.Concat(Enumerable.Repeat("öffne dich! ", 11))[..128];

            var changed = await host.SendAsync("/account/password", ("password", longest));

            Assert.Equal("/account?done=password", changed.Headers.Location!.ToString());
            Assert.Equal(HttpStatusCode.OK, (await host.Client.GetAsync("/account", Cancellation)).StatusCode);
            Assert.Equal(HttpStatusCode.Found, (await other.Client.GetAsync("/account", Cancellation)).StatusCode);
            using var again = await SignInAsync(id, longest);
            using var old = new Visitor((await site.AppAsync()).Address);
            Assert.Equal(HttpStatusCode.BadRequest, (await old.SignInAsync(EmailOf(id), Password)).StatusCode);
        }
    }

    [Fact]
    public async Task A_password_cannot_be_removed_while_it_is_the_only_way_in()
    {
        var (host, id) = await SignedInAsync();
        using (host)
        {
            var refused = await host.PostAsync(
                "/account/password/remove", [("__RequestVerificationToken", await host.TokenAsync("/account/password"))]);

            Assert.Contains("the only way in", await refused.TextAsync(), StringComparison.Ordinal);
            using var again = await SignInAsync(id);
        }
    }

    [Fact]
    public async Task A_new_address_is_the_one_to_sign_in_with_and_one_that_is_taken_is_refused()
    {
        var (host, id) = await SignedInAsync();
        using (host)
        {
            var refused = await host.SendAsync("/account/mail", ("email", SharedApp.Email.ToUpperInvariant()));
            var changed = await host.SendAsync("/account/mail", ("email", $"o'brien+{id:N}@example.org"));

            Assert.Contains("cannot be taken", await refused.TextAsync(), StringComparison.Ordinal);
            Assert.Equal("/account?done=mail", changed.Headers.Location!.ToString());
            using var visitor = new Visitor((await site.AppAsync()).Address);
            Assert.Equal(HttpStatusCode.Found, (await visitor.SignInAsync($"o'brien+{id:N}@example.org", Password)).StatusCode);
        }
    }

    [Fact]
    public async Task An_account_is_removed_with_its_sign_ins()
    {
        var (host, id) = await SignedInAsync();
        using (host)
        {
            using var other = await SignInAsync(id);

            var removed = await host.SendAsync("/account/remove", []);

            Assert.Contains("Your account is removed", await removed.TextAsync(), StringComparison.Ordinal);
            Assert.Equal(HttpStatusCode.Found, (await other.Client.GetAsync("/account", Cancellation)).StatusCode);
            using var again = new Visitor((await site.AppAsync()).Address);
            Assert.Equal(HttpStatusCode.BadRequest, (await again.SignInAsync(EmailOf(id), Password)).StatusCode);
        }
    }

    [Fact]
    public async Task The_only_owner_of_a_group_reads_which_group_is_in_the_way()
    {
        using var owner = new Visitor((await site.AppAsync()).Address);
        await owner.SignInAsync(SharedApp.Email, SharedApp.Password);

        var page = await (await owner.Client.GetAsync("/account/remove", Cancellation)).DocumentAsync();
        var token = await owner.TokenAsync("/account");
        var refused = await owner.PostAsync("/account/remove", [("__RequestVerificationToken", token)]);

        Assert.Equal("Thursday table", page.QuerySelector(".notice a")!.TextContent);
        Assert.Null(page.QuerySelector("form"));
        Assert.Equal(HttpStatusCode.Conflict, refused.StatusCode);
    }

    [Theory]
    [InlineData("/account/password", "password")]
    [InlineData("/account/codes", "x")]
    [InlineData("/account/remove", "x")]
    [InlineData("/account/passkeys/options", "x")]
    [InlineData("/account/sign-out-everywhere", "x")]
    [InlineData("/confirm", "password")]
    public async Task A_form_without_its_token_changes_nothing(string path, string field)
    {
        var (host, id) = await SignedInAsync();
        using (host)
        {
            var refused = await host.PostAsync(path, [(field, "a sentence of my own")]);

            Assert.Equal(HttpStatusCode.BadRequest, refused.StatusCode);
            Assert.Equal(HttpStatusCode.OK, (await host.Client.GetAsync("/account", Cancellation)).StatusCode);
            using var again = await SignInAsync(id);
        }
    }

    [Fact]
    public async Task A_made_up_passkey_is_refused_with_and_without_a_question()
    {
        using var visitor = new Visitor((await site.AppAsync()).Address);

        var unasked = await visitor.PostAsync(
            "/sign-in/passkey", [("__RequestVerificationToken", await visitor.TokenAsync("/sign-in")), ("credential", "{}")]);
        var options = await visitor.PostAsync(
            "/sign-in/passkey/options", [("__RequestVerificationToken", await visitor.TokenAsync("/sign-in"))]);
        var madeUp = await visitor.PostAsync(
            "/sign-in/passkey", [("__RequestVerificationToken", await visitor.TokenAsync("/sign-in")), ("credential", "{\"id\":\"AA\"}")]);

        Assert.Contains("\"rpId\":\"localhost\"", await options.TextAsync(), StringComparison.Ordinal);
        Assert.Contains("\"userVerification\":\"required\"", await options.TextAsync(), StringComparison.Ordinal);
        foreach (var refused in new[] { unasked, madeUp })
        {
            Assert.Equal(HttpStatusCode.BadRequest, refused.StatusCode);
            Assert.Contains("That passkey was not accepted", await refused.TextAsync(), StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task Too_many_wrong_passwords_lock_the_account_for_a_while_and_the_log_names_nobody()
    {
        var app = await site.AppAsync();
        var (host, id) = await SignedInAsync();
        host.Dispose();
        using var guesser = new Visitor(app.Address);
        var token = await guesser.TokenAsync("/sign-in");
        for (var tries = 0; tries < 10; tries++)
        {
            await guesser.PostAsync("/sign-in", [("__RequestVerificationToken", token), ("email", EmailOf(id)), ("password", $"a wrong guess {tries}")]);
        }

        using var visitor = new Visitor(app.Address);
        var locked = await visitor.SignInAsync(EmailOf(id), Password);

        Assert.Contains("Too many tries.", await locked.TextAsync(), StringComparison.Ordinal);
        Assert.True(SpinWait.SpinUntil(() => app.Log.Contains($"Account {id} is locked", StringComparison.Ordinal), TimeSpan.FromSeconds(10)));
        Assert.DoesNotContain(EmailOf(id), app.Log, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("a wrong guess", app.Log, StringComparison.Ordinal);
    }

    private static string EmailOf(Guid id) => $"{id:N}@example.org";

    private static async Task<IReadOnlyList<string>> CodesAsync(Visitor host) =>
        [.. (await (await host.SendAsync("/account/codes", [])).DocumentAsync()).QuerySelectorAll(".codes li").Select(code => code.TextContent)];

    private async Task<string> AskAsync(string question) =>
        await HostAtWork.AskAsync<string>(await site.AppAsync(), question, Cancellation);

    /// <summary>A host without a group, as one is who left it.</summary>
    private async Task<(Visitor Host, Guid Id)> SignedInAsync()
    {
        var id = Guid.NewGuid();
        var hash = new PasswordHasher<HostAccount>().HashPassword(new HostAccount(), Password);
        await HostAtWork.AskAsync<Guid>(
            await site.AppAsync(),
            $"""
             insert into accounts (id, display_name, measures, user_name, normalized_user_name, email, normalized_email, email_confirmed,
                 password_hash, security_stamp, concurrency_stamp, phone_number_confirmed, two_factor_enabled, lockout_enabled, access_failed_count)
             values ('{id}', 'Hana', 'Metric', '{EmailOf(id)}', '{EmailOf(id).ToUpperInvariant()}', '{EmailOf(id)}', '{EmailOf(id).ToUpperInvariant()}',
                 false, '{hash}', '{Guid.NewGuid():N}', '{Guid.NewGuid():N}', false, false, true, 0)
             returning id
             """,
            Cancellation);
        return (await SignInAsync(id), id);
    }

    private async Task<Visitor> SignInAsync(Guid id, string password = Password)
    {
        var visitor = new Visitor((await site.AppAsync()).Address);
        var answer = await visitor.SignInAsync(EmailOf(id), password);
        Assert.Equal(HttpStatusCode.Found, answer.StatusCode);
        return visitor;
    }
}
