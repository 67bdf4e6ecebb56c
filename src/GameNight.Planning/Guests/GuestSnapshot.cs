namespace GameNight.Planning.Guests;

/// <summary>
/// One answer and the people it stands for: the guest first, then the companions. They come together or not at all.
/// </summary>
/// <param name="Household">Guests of one household who gave the same answer come together or not at all.</param>
/// <param name="Past">What past nights say of the guest; of companions nothing is known.</param>
/// <param name="HasOpenNote">They left a private note that no host has made a rule of or set aside; null for no.</param>
/// <param name="Stay">Who comes late or leaves early; null for the whole evening. Companions come and go along.</param>
public sealed record GuestSnapshot(
    string Id,
    AnswerState Answer,
    IReadOnlyList<Eater> Eaters,
    string? Household = null,
    IReadOnlyList<PastEvening>? Past = null,
    Stay? Stay = null,
    bool? HasOpenNote = null);
