namespace GameNight.Planning.Guests;

/// <summary>
/// One answer and the people it stands for: the guest first, then the companions. They come together or not at all.
/// </summary>
public sealed record GuestSnapshot(string Id, AnswerState Answer, IReadOnlyList<Eater> Eaters);
