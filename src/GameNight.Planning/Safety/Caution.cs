using GameNight.Planning.Guests;

namespace GameNight.Planning.Safety;

/// <summary>A safety note with whom to defer to. It names allergens, never people.</summary>
/// <param name="Allergens">What the caution is about, empty where it is not about allergens.</param>
public sealed record Caution(CautionKind Kind, string Authority, IReadOnlyList<Allergen> Allergens);
