using GameNight.TestKit.Running;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace GameNight.Browser.Tests;

/// <summary>
/// Passkeys with the browser's virtual authenticator, on an app of its own opened as localhost: passkeys know no other plain
/// address.
/// </summary>
public class PasskeyTests(Site site)
{
    [Fact]
    public async Task A_passkey_is_added_renamed_signs_in_alone_and_when_lost_a_recovery_code_does()
    {
        await site.Chromium.BrowserAsync();
        await using var app = await RunningApp.StartAsync(TestContext.Current.CancellationToken, solverSlices: 0);
        await using var host = await Screen.OpenAsync(site.Chromium, new Uri($"http://localhost:{app.Address.Port}"), Screen.Phone);
        var authenticator = await PlugInAsync(host.Page);
        await FirstAccount.MakeAsync(host, app.FirstAccountCode);

        // Added and renamed.
        await host.GoAsync("/account/passkeys");
        await host.Field("Name, such as the device").FillAsync("Tablet");
        await host.Button("Add a passkey").ClickAsync();
        await host.SeesAsync("The passkey is added.");
        await host.Field("Name of passkey 1").FillAsync("Old tablet beside the flour, pantry");
        await host.Button("Rename passkey 1").ClickAsync();
        await host.SeesAsync("The passkey has its new name.");
        await Expect(host.Page.Locator("#passkey-1")).ToHaveTextAsync("Old tablet beside the flour, pantry");
        await host.CheckLooksAsync("passkeys-one");

        // Recovery codes, shown once.
        await host.GoAsync("/account/codes");
        await host.Button("Make recovery codes").ClickAsync();
        await Expect(host.Page.Locator(".codes li")).ToHaveCountAsync(10);
        var codes = await host.Page.Locator(".codes li").AllTextContentsAsync();
        await host.CheckLooksAsync("codes-made");

        // The password goes, the passkey stays: it is the last way in.
        await host.GoAsync("/account/password");
        await host.Button("Remove the password").ClickAsync();
        await host.SeesAsync("The password is gone");
        await host.GoAsync("/account/passkeys");
        await host.Button("Remove passkey 1").ClickAsync();
        await host.SeesAsync("This passkey is the only way in.");

        // In with the passkey alone, and once more to confirm.
        await SignOutAsync(host);
        await host.GoAsync("/sign-in?to=/account");
        await host.CheckLooksAsync("sign-in-passkey");
        await host.Button("Sign in with a passkey").ClickAsync();
        await host.SeesAsync("Your account");
        await host.GoAsync("/confirm?to=/account/codes");
        await host.CheckLooksAsync("confirm-passkey");
        await host.Button("Use a passkey").ClickAsync();
        await host.SeesAsync("10 are left.");

        // Lost: nothing answers any more, and a code opens the account.
        await SignOutAsync(host);
        await authenticator.SendAsync("WebAuthn.disable");
        await host.GoAsync("/sign-in");
        await host.Page.GetByRole(AriaRole.Link, new() { Name = "Use a recovery code" }).ClickAsync();
        await host.Field("Recovery code").FillAsync(codes[0].ToLowerInvariant());
        await host.Button("Sign in").ClickAsync();
        await host.SeesAsync("9 are left");
        await host.GoAsync("/account/password");
        await host.Field("New password").FillAsync(FirstAccount.Password);
        await host.Button("Set the password").ClickAsync();
        await host.SeesAsync("The new password is set.");
        await host.GoAsync("/account/passkeys");
        await host.Button("Remove passkey 1").ClickAsync();
        await host.SeesAsync("The passkey is removed.");

        Assert.DoesNotContain(host.Faults, fault => !fault.Contains("400", StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_circuit_that_outlives_its_sign_out_ends_on_the_next_action()
    {
        await site.Chromium.BrowserAsync();
        await using var app = await RunningApp.StartAsync(TestContext.Current.CancellationToken, solverSlices: 0);
        await using var open = await Screen.OpenAsync(site.Chromium, app.Address, Screen.Desk);
        var group = await FirstAccount.MakeAsync(open, app.FirstAccountCode);
        await open.GoLiveAsync($"/g/{group}/people");
        await using var other = await Screen.OpenAsync(site.Chromium, app.Address, Screen.Phone);
        await other.GoAsync("/sign-in?to=/account");
        await other.Field("E-mail").FillAsync(FirstAccount.Email);
        await other.Field("Password").FillAsync(FirstAccount.Password);
        await other.Button("Sign in").ClickAsync();

        await other.Button("Sign out on every device").ClickAsync();
        await other.SeesAsync("Sign in");
        await open.Field("Name").FillAsync("Somebody");
        await open.Button("Add to the group").ClickAsync();

        await Expect(open.Page.GetByRole(AriaRole.Heading, new() { Name = "Sign in" })).ToBeVisibleAsync();
        Assert.Equal(1, await HostAtWork.AskAsync<long>(app, "select count(*) from guests", TestContext.Current.CancellationToken));
        Assert.Empty(open.Faults);
    }

    private static async Task SignOutAsync(Screen host)
    {
        await host.GoAsync("/sign-out");
        await host.Button("Sign out").ClickAsync();
        await host.Page.WaitForURLAsync("**/sign-in");
    }

    /// <summary>A device that unlocks without being touched.</summary>
    private static async Task<ICDPSession> PlugInAsync(IPage page)
    {
        var session = await page.Context.NewCDPSessionAsync(page);
        await session.SendAsync("WebAuthn.enable");
        await session.SendAsync("WebAuthn.addVirtualAuthenticator", new Dictionary<string, object>
        {
            ["options"] = new
            {
                protocol = "ctap2",
                transport = "internal",
                hasResidentKey = true,
                hasUserVerification = true,
                isUserVerified = true,
                automaticPresenceSimulation = true,
            },
        });
        return session;
    }
}
