using System.Security.Cryptography;
using System.Text;
using GameNight.Nights.Records;
using GameNight.Nights.Storage;
using Microsoft.EntityFrameworkCore;

namespace GameNight.Nights.Membership;

/// <summary>
/// Ways in when passkey and password are lost. Each works once; only its hash is kept, which is enough: a code is long and
/// random, so that it cannot be found by trying.
/// </summary>
public sealed class RecoveryCodes
{
    public const int Count = 10;

    /// <summary>Without letters and digits that are easily confused: 32 of them, 5 bits each.</summary>
    private const string Alphabet = "ABCDEFGHJKLMNPQRSTUVWXYZ23456789";

    /// <summary>Six groups of four: 120 bits.</summary>
    private const int Length = 24;
    private const int GroupLength = 4;

    private readonly GroupSessions _sessions;

    internal RecoveryCodes(GroupSessions sessions)
    {
        _sessions = sessions;
    }

    /// <summary>New codes, to be shown this once; those made before end.</summary>
    public async Task<IReadOnlyList<string>> RenewAsync(HostId host, CancellationToken cancellation)
    {
        var codes = Enumerable.Range(0, Count).Select(_ => RandomNumberGenerator.GetString(Alphabet, Length)).ToList();
        await using var db = await _sessions.OpenGlobalAsync(cancellation);
        await using var transaction = await db.Database.BeginTransactionAsync(cancellation);
        await db.LockAccountAsync(host, cancellation);
        await db.RecoveryCodes.Where(code => code.AccountId == host.Value).ExecuteDeleteAsync(cancellation);
        db.RecoveryCodes.AddRange(codes.Select(code => new RecoveryCode(host.Value, HashOf(code))));
        await db.SaveChangesAsync(cancellation);
        await transaction.CommitAsync(cancellation);
        return [.. codes.Select(code => string.Join('-', code.Chunk(GroupLength).Select(letters => new string(letters))))];
    }

    public async Task<int> LeftAsync(HostId host, CancellationToken cancellation)
    {
        await using var db = await _sessions.OpenGlobalAsync(cancellation);
        return await db.RecoveryCodes.CountAsync(code => code.AccountId == host.Value, cancellation);
    }

    /// <summary>Uses a code up. Of two who use it at once, one gets in.</summary>
    /// <param name="typed">As it was typed: hyphens, blanks and capitals do not matter.</param>
    /// <param name="of">Whose code it must be; null when the code is to tell.</param>
    /// <returns>Whose it was, or null when there is no such code (any more).</returns>
    public async Task<HostId?> UseAsync(string typed, HostId? of, CancellationToken cancellation)
    {
        var hash = HashOf(new string([.. typed.Where(char.IsAsciiLetterOrDigit).Select(char.ToUpperInvariant)]));
        var account = of?.Value;
        await using var db = await _sessions.OpenGlobalAsync(cancellation);
        var owners = await db.Database.SqlQuery<Guid>(
            $"""
             delete from recovery_codes where code_hash = {hash} and ({account}::uuid is null or account_id = {account})
             returning account_id as "Value"
             """).ToListAsync(cancellation);
        return owners is [var owner] ? new HostId(owner) : null;
    }

    private static byte[] HashOf(string code) => SHA256.HashData(Encoding.ASCII.GetBytes(code));
}
