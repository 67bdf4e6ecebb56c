using NodaTime;
using NodaTime.TimeZones;

namespace GameNight.Nights.Records;

/// <summary>How a local time became a moment: as it stands, or moved because the clock skips or repeats it.</summary>
public enum ClockChange
{
    None,

    /// <summary>The clock skips this hour; the moment is that much later.</summary>
    Skipped,

    /// <summary>The clock shows this hour twice; the earlier one is meant.</summary>
    Doubled,
}

/// <summary>From what the host meant (local time and zone) to a moment.</summary>
public static class NightTime
{
    public static DateTimeZone? Zone(string id) => DateTimeZoneProviders.Tzdb.GetZoneOrNull(id);

    /// <exception cref="ArgumentException">The zone is not known.</exception>
    public static (ZonedDateTime At, ClockChange Change) Resolve(LocalDateTime local, string zoneId)
    {
        var zone = Zone(zoneId) ?? throw new ArgumentException($"Unknown time zone '{zoneId}'.", nameof(zoneId));
        var change = zone.MapLocal(local).Count switch
        {
            0 => ClockChange.Skipped,
            1 => ClockChange.None,
            _ => ClockChange.Doubled,
        };
        return (zone.ResolveLocal(local, Resolvers.LenientResolver), change);
    }

    public static Instant ToInstant(LocalDateTime local, string zoneId) => Resolve(local, zoneId).At.ToInstant();
}
