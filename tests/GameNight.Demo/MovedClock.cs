using NodaTime;

namespace GameNight.Demo;

/// <summary>Stands where it is put, so that nights of last month can be lived through in order.</summary>
internal sealed class MovedClock : IClock
{
    private long _ticks = SystemClock.Instance.GetCurrentInstant().ToUnixTimeTicks();

    public Instant GetCurrentInstant() => Instant.FromUnixTimeTicks(Interlocked.Read(ref _ticks));

    public void MoveTo(Instant moment) => Interlocked.Exchange(ref _ticks, moment.ToUnixTimeTicks());
}
