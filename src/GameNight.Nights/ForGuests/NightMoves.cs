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

    /// <returns>Null when the guest's answer was given for the night as it is.</returns>
    public static MovedSince? Since(Night night, Instant answeredAt)
    {
        var since = night.Moves.Where(move => move.At > answeredAt).ToList();
        if (since is not [var first, ..])
        {
            return null;
        }

        // Moved away and back again, the answer fits as it did.
        var takesPlaceAgain = since.Any(move => move.From == move.To && move.FromZone == move.ToZone);
        var isElsewhere = first.From != night.Facts.ServeAt || first.FromZone != night.Facts.Zone;
        return isElsewhere || takesPlaceAgain
            ? new MovedSince(first.From, first.FromZone, night.Facts.ServeAt, night.Facts.Zone, takesPlaceAgain)
            : null;
    }

    /// <summary>Rises with everything that a calendar must take over: moves, calling off, and taking place again.</summary>
    public static int Sequence(Night night) => (2 * night.Moves.Count) + (night.CancelledAt is null ? 0 : 1);
}
