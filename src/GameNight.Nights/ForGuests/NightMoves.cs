using GameNight.Nights.Records;
using NodaTime;

namespace GameNight.Nights.ForGuests;

/// <summary>What happened to the serving time since a guest answered.</summary>
/// <param name="TakesPlaceAgain">It was called off in between, and takes place after all.</param>
public sealed record MovedSince(LocalDateTime From, string FromZone, LocalDateTime To, string ToZone, bool TakesPlaceAgain);

/// <summary>Compares a night with the one that a guest answered for.</summary>
public static class NightMoves
{
    public static bool IsMove(NightFacts before, NightFacts after) =>
        before.ServeAt != after.ServeAt || before.Zone != after.Zone;

    public static bool IsElsewhere(NightFacts before, NightFacts after) => before.Address.Trim() != after.Address.Trim();

    /// <returns>Null when the guest's answer was given for the night as it is.</returns>
    public static MovedSince? Since(Night night, Instant answeredAt)
    {
        return Since(night, [.. night.Moves.Where(move => move.At > answeredAt)]);
    }

    /// <param name="since">The night's last moves, of which the guest does not know yet.</param>
    internal static MovedSince? Since(Night night, IReadOnlyList<NightMove> since)
    {
        if (since is not [var first, ..])
        {
            return null;
        }

        // Moved away and back again, the answer fits as it did.
        var takesPlaceAgain = since.Any(move => move is { IsElsewhen: false, FromPlace: null });
        var isElsewhere = first.From != night.Facts.ServeAt || first.FromZone != night.Facts.Zone;
        return isElsewhere || takesPlaceAgain
            ? new MovedSince(first.From, first.FromZone, night.Facts.ServeAt, night.Facts.Zone, takesPlaceAgain)
            : null;
    }

    /// <summary>Whether the place is another than it was before these moves.</summary>
    internal static bool IsElsewhereSince(Night night, IReadOnlyList<NightMove> since) =>
        since.FirstOrDefault(move => move.FromPlace is not null) is { } first
        && first.FromPlace!.Trim() != night.Facts.Address.Trim();

    /// <summary>Rises with everything that a calendar must take over: moves, calling off, and taking place again.</summary>
    public static int Sequence(Night night) => (2 * night.Moves.Count) + (night.CancelledAt is null ? 0 : 1);
}
