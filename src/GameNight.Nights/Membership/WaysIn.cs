using System.Security.Cryptography;
using GameNight.Nights.Records;
using GameNight.Nights.Storage;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;

namespace GameNight.Nights.Membership;

/// <summary>How taking away a way into an account went.</summary>
public enum WayInRemoval
{
    /// <summary>It is gone, now or before.</summary>
    Removed,

    /// <summary>Without it nobody could sign in any more.</summary>
    LastOne,
}

/// <summary>
/// Password and passkeys of an account, as far as one of them may go. Two that are taken away at once wait for each other, so
/// that one always stays; recovery codes do not count, for they run out.
/// </summary>
public sealed class WaysIn
{
    private const int StampBytes = 20;

    private readonly GroupSessions _sessions;

    internal WaysIn(GroupSessions sessions)
    {
        _sessions = sessions;
    }

    public async Task<WayInRemoval> RemovePasskeyAsync(HostId host, byte[] passkey, CancellationToken cancellation)
    {
        await using var db = await _sessions.OpenGlobalAsync(cancellation);
        await using var transaction = await db.Database.BeginTransactionAsync(cancellation);
        await db.LockAccountAsync(host, cancellation);
        var passkeys = await db.Set<IdentityUserPasskey<Guid>>().Where(row => row.UserId == host.Value).ToListAsync(cancellation);
        if (passkeys.SingleOrDefault(row => row.CredentialId.AsSpan().SequenceEqual(passkey)) is not { } going)
        {
            return WayInRemoval.Removed;
        }

        if (passkeys.Count == 1 && !await db.Users.AnyAsync(
            account => account.Id == host.Value && account.PasswordHash != null, cancellation))
        {
            return WayInRemoval.LastOne;
        }

        db.Remove(going);
        await db.SaveChangesAsync(cancellation);
        await transaction.CommitAsync(cancellation);
        return WayInRemoval.Removed;
    }

    /// <summary>Sign-ins made before end with the password.</summary>
    public async Task<WayInRemoval> RemovePasswordAsync(HostId host, CancellationToken cancellation)
    {
        await using var db = await _sessions.OpenGlobalAsync(cancellation);
        await using var transaction = await db.Database.BeginTransactionAsync(cancellation);
        await db.LockAccountAsync(host, cancellation);
        if (!await db.Set<IdentityUserPasskey<Guid>>().AnyAsync(row => row.UserId == host.Value, cancellation))
        {
            return WayInRemoval.LastOne;
        }

        var account = await db.Users.SingleAsync(row => row.Id == host.Value, cancellation);
        account.PasswordHash = null;
        account.SecurityStamp = RandomNumberGenerator.GetHexString(2 * StampBytes);
        account.ConcurrencyStamp = RandomNumberGenerator.GetHexString(2 * StampBytes);
        await db.SaveChangesAsync(cancellation);
        await transaction.CommitAsync(cancellation);
        return WayInRemoval.Removed;
    }
}
