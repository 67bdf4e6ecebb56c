using GameNight.Planning.Guests;

namespace GameNight.Planning;

/// <summary>
/// These guests left private notes that no host has made a rule of or set aside with a reason. Until then nobody knows what
/// the pies must not hold, and a dough is not committed.
/// </summary>
public sealed record NotesToSettle(IReadOnlyList<string> EaterIds) : Conflict
{
    /// <returns>Null when there is none; who stays away needs nothing settled.</returns>
    public static NotesToSettle? Of(NightSnapshot night) =>
        night.Guests.Where(guest => guest is { HasOpenNote: true, Answer: not AnswerState.NotComing }).Select(guest => guest.Id).ToList() is { Count: > 0 } ids
            ? new NotesToSettle(ids)
            : null;
}
