using System.Collections.Concurrent;
using GameNight.Nights.Records;

namespace GameNight.Nights.Moving;

/// <summary>Work that takes memory and time: one at a time for each host, and only a few in all.</summary>
internal sealed class OnePerHost(int mostInAll)
{
    private readonly ConcurrentDictionary<HostId, bool> _busy = new();

    /// <returns>To be disposed when the work is done; null when it has to wait.</returns>
    public IDisposable? TryTake(HostId host)
    {
        if (_busy.Count >= mostInAll || !_busy.TryAdd(host, true))
        {
            return null;
        }

        return new Turn(() => _busy.TryRemove(host, out _));
    }

    private sealed class Turn(Action end) : IDisposable
    {
        public void Dispose() => end();
    }
}
