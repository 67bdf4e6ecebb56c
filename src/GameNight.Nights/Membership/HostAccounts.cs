using GameNight.Nights.Records;
using GameNight.Nights.Storage;
using Microsoft.EntityFrameworkCore;

namespace GameNight.Nights.Membership;

/// <summary>What the sign-in pages need to know of accounts beyond what the identity services tell.</summary>
public sealed class HostAccounts
{
    private readonly GroupSessions _sessions;

    internal HostAccounts(GroupSessions sessions)
    {
        _sessions = sessions;
    }

    /// <summary>True on a fresh installation: then the first account is made with the code printed at start.</summary>
    public async Task<bool> AreNoneAsync(CancellationToken cancellation)
    {
        await using var db = await _sessions.OpenGlobalAsync(cancellation);
        return !await db.Users.AnyAsync(cancellation);
    }

    public async Task<string?> NameOfAsync(HostId host, CancellationToken cancellation)
    {
        await using var db = await _sessions.OpenGlobalAsync(cancellation);
        return await db.Users.AsNoTracking().Where(account => account.Id == host.Value)
            .Select(account => account.DisplayName).SingleOrDefaultAsync(cancellation);
    }
}
