using GameNight.Planning.Quantities;

namespace GameNight.Planning.Guests;

/// <summary>What a past night says of a guest, as far as it was written down.</summary>
/// <param name="NightsAgo">1 is the last one.</param>
/// <param name="Answer">As it was known when the dough was begun.</param>
/// <param name="Came">Null when nobody noted it.</param>
/// <param name="Slices">Eaten by the guest; null when they did not say.</param>
/// <param name="Slice">Dough of one slice of that night; null for slices as large as tonight's.</param>
/// <param name="RanOut">Nothing was left: the guest may have wanted more.</param>
/// <param name="Hunger">As the guest said then; null for as usual.</param>
/// <param name="Served">How near what was planned for them came to the best they could have had; null when nobody knows.</param>
/// <param name="Appetite">What courses and the length of that evening left of the usual appetite; null for all of it.</param>
public sealed record PastEvening(
    int NightsAgo,
    AnswerState Answer,
    bool? Came = null,
    double? Slices = null,
    Grams? Slice = null,
    bool? RanOut = null,
    Hunger? Hunger = null,
    Share? Appetite = null,
    Share? Served = null);
