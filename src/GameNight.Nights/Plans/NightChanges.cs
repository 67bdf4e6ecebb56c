using System.Collections.Concurrent;
using GameNight.Nights.Records;

namespace GameNight.Nights.Plans;

/// <summary>Tells open pages of this process that a night, its answers or its plan changed.</summary>
public sealed class NightChanges
{
    private readonly ConcurrentDictionary<NightId, ConcurrentDictionary<Guid, Action>> _listeners = new();

    /// <param name="changed">Called on any thread; must return at once and not throw.</param>
    public IDisposable Listen(NightId night, Action changed)
    {
        var key = Guid.NewGuid();
        _listeners.GetOrAdd(night, _ => new()).TryAdd(key, changed);
        return new Subscription(() =>
        {
            if (_listeners.TryGetValue(night, out var listeners))
            {
                listeners.TryRemove(key, out _);
            }
        });
    }

    public void Publish(NightId night)
    {
        if (_listeners.TryGetValue(night, out var listeners))
        {
            foreach (var changed in listeners.Values)
            {
                changed();
            }
        }
    }

    private sealed class Subscription(Action end) : IDisposable
    {
        public void Dispose() => end();
    }
}
