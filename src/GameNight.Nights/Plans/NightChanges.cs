using System.Collections.Immutable;
using GameNight.Nights.Records;

namespace GameNight.Nights.Plans;

/// <summary>Tells open pages of this process that a night, its answers or its plan changed.</summary>
public sealed class NightChanges
{
    private ImmutableDictionary<NightId, ImmutableList<Subscription>> _listeners =
        ImmutableDictionary<NightId, ImmutableList<Subscription>>.Empty;

    /// <summary>How many nights somebody listens to.</summary>
    public int NightsListenedTo => _listeners.Count;

    /// <param name="changed">Called on any thread; must return at once and not throw.</param>
    public IDisposable Listen(NightId night, Action changed)
    {
        var subscription = new Subscription(this, night, changed);
        ImmutableInterlocked.AddOrUpdate(ref _listeners, night, [subscription], (_, others) => others.Add(subscription));
        return subscription;
    }

    /// <summary>The same for a question for a date, whose ids and those of nights never meet.</summary>
    public IDisposable Listen(DateChoiceId choice, Action changed) => Listen(new NightId(choice.Value), changed);

    public void Publish(DateChoiceId choice) => Publish(new NightId(choice.Value));

    public void Publish(NightId night)
    {
        foreach (var listener in _listeners.GetValueOrDefault(night, []))
        {
            listener.Changed();
        }
    }

    private void End(Subscription subscription) => ImmutableInterlocked.Update(ref _listeners, listeners =>
        listeners.GetValueOrDefault(subscription.Night, []).Remove(subscription) is { Count: > 0 } others
            ? listeners.SetItem(subscription.Night, others)
            : listeners.Remove(subscription.Night));

    private sealed class Subscription(NightChanges changes, NightId night, Action changed) : IDisposable
    {
        public NightId Night => night;

        public Action Changed => changed;

        public void Dispose() => changes.End(this);
    }
}
