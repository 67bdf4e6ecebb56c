using System.Security.Cryptography;
using GameNight.Nights.Membership;
using GameNight.Nights.Records;
using Microsoft.AspNetCore.Identity;

namespace GameNight.Web.SignIn;

/// <summary>What came of somebody showing that an account is theirs.</summary>
internal abstract record Proof
{
    private Proof()
    {
    }

    public sealed record Given(HostAccount Account) : Proof;

    /// <summary>Whether the account or what was shown is wrong is not told.</summary>
    public sealed record Refused : Proof;

    /// <summary>Too many wrong passwords; the right one does not count for a while.</summary>
    public sealed record LockedOut : Proof;
}

/// <summary>Checks what somebody shows, for signing in and for confirming that it is still them.</summary>
internal sealed class Proofs(
    SignInManager<HostAccount> signIn, UserManager<HostAccount> users, IPasswordHasher<HostAccount> hasher, RecoveryCodes codes,
    SecurityLog log)
{
    private static readonly HostAccount Nobody = new();
    private static string? _nobodysHash;

    public async Task<Proof> ByPasswordAsync(string email, string password)
    {
        var account = await users.FindByNameAsync(email);
        if (account?.PasswordHash is null)
        {
            // As slow as a wrong password, so that the time does not tell who has an account.
            _nobodysHash ??= hasher.HashPassword(Nobody, RandomNumberGenerator.GetHexString(32));
            hasher.VerifyHashedPassword(Nobody, _nobodysHash, password);
            return Refuse(WayIn.Password, account);
        }

        var result = await signIn.CheckPasswordSignInAsync(account, password, lockoutOnFailure: true);
        if (!result.IsLockedOut)
        {
            return result.Succeeded ? new Proof.Given(account) : Refuse(WayIn.Password, account);
        }

        log.LockedOut(account.Id);
        return new Proof.LockedOut();
    }

    /// <param name="credential">What the browser answered to the options it was sent.</param>
    public async Task<Proof> ByPasskeyAsync(string credential)
    {
        PasskeyAssertionResult<HostAccount> shown;
        try
        {
            shown = await signIn.PerformPasskeyAssertionAsync(credential);
        }
        catch (InvalidOperationException)
        {
            // No question is open: the cookie with it is gone, or the answer was made up.
            return Refuse(WayIn.Passkey, null);
        }

        if (!shown.Succeeded)
        {
            return Refuse(WayIn.Passkey, null);
        }

        // Keeps the counter, by which a copied passkey is noticed.
        var kept = await users.AddOrUpdatePasskeyAsync(shown.User, shown.Passkey);
        return kept.Succeeded ? new Proof.Given(shown.User) : Refuse(WayIn.Passkey, shown.User);
    }

    /// <param name="code">As it was typed.</param>
    /// <param name="of">Whose it must be, or null.</param>
    /// <param name="cancellation">Of the request.</param>
    public async Task<Proof> ByCodeAsync(string code, HostId? of, CancellationToken cancellation)
    {
        if (await codes.UseAsync(code, of, cancellation) is not { } host
            || await users.FindByIdAsync(host.Value.ToString()) is not { } account)
        {
            return Refuse(WayIn.RecoveryCode, null);
        }

        log.CodeUsed(account.Id);
        return new Proof.Given(account);
    }

    private Proof.Refused Refuse(WayIn way, HostAccount? account)
    {
        log.Refused(way, account?.Id);
        return new Proof.Refused();
    }
}
