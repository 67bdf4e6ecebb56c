using GameNight.Planning.Timeline;
using NodaTime;

namespace GameNight.Planning.Dates;

/// <summary>Whether a dough for an evening can still be made, in the host's own hours.</summary>
internal static class DoughWindow
{
    /// <summary>Starts are looked for so far apart.</summary>
    private static readonly Duration Step = Duration.FromMinutes(15);

    public static DateObstacle? Obstacle(DateOption option, DoughLead lead, Instant now, IReadOnlyList<HostAway> away)
    {
        var around = lead.Mixing + lead.Rest + lead.Balling + lead.Tempering + lead.FirstPie;
        var last = option.ServeAt - around - lead.Cold.Shortest;
        var first = Instant.Max(now, option.ServeAt - around - lead.Cold.Longest);
        if (last < now)
        {
            return new DateObstacle.DoughTooLate(last, lead.Cold.Shortest);
        }

        var near = away.Where(window => window.Until > first && window.From < last + around).ToList();
        for (var start = last; start >= first; start -= Step)
        {
            if (Fits(start, last, lead, near))
            {
                return null;
            }
        }

        return Fits(first, last, lead, near) ? null : new DateObstacle.NoHandsForDough(first, last);
    }

    /// <summary>A dough may rest a little longer until there are hands to ball it; that time is then not in the cold.</summary>
    private static bool Fits(Instant start, Instant last, DoughLead lead, IReadOnlyList<HostAway> away)
    {
        if (!AreFree(start, lead.Mixing, away))
        {
            return false;
        }

        var balling = start + lead.Mixing + lead.Rest;
        for (var longer = Duration.Zero; longer <= TimelineLimits.RestedBeforeBalled && start + longer <= last; longer += Step)
        {
            if (AreFree(balling + longer, lead.Balling, away))
            {
                return true;
            }
        }

        return false;
    }

    private static bool AreFree(Instant from, Duration length, IReadOnlyList<HostAway> away) =>
        away.All(window => window.Until <= from || window.From >= from + length);
}
