using GameNight.Nights.Records;
using Microsoft.EntityFrameworkCore;

namespace GameNight.Nights.Storage;

internal static class AccountLock
{
    /// <summary>Two changes of one account wait for each other until the transaction ends.</summary>
    public static Task LockAccountAsync(this GameNightDb db, HostId host, CancellationToken cancellation) =>
        db.Database.ExecuteSqlAsync($"select 1 from accounts where id = {host.Value} for update", cancellation);
}
