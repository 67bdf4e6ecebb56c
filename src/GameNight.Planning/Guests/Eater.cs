using GameNight.Planning.Quantities;

namespace GameNight.Planning.Guests;

/// <summary>One person who may eat: a guest, the host, or a companion. Ids only; names stay out of plans.</summary>
/// <param name="Id">1 to 64 characters, unique in the night.</param>
/// <param name="EatsHere">False for people who only join remotely and eat nothing.</param>
/// <param name="Likes">Topping id to liking; a topping that is not named is <see cref="Liking.Fine"/>.</param>
/// <param name="Stays">
/// Who comes late or leaves early eats this share of their appetite; null for what the guest's <see cref="Stay"/> makes of it.
/// </param>
public sealed record Eater(
    string Id,
    PortionClass Portion,
    Hunger Hunger,
    bool EatsHere,
    DietaryNeeds Needs,
    IReadOnlyDictionary<string, Liking> Likes,
    Share? Stays = null)
{
    public Liking Of(string toppingId) => Likes.GetValueOrDefault(toppingId, Liking.Fine);
}
