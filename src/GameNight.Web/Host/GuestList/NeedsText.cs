using GameNight.Planning.Guests;
using GameNight.Web.Wording;

namespace GameNight.Web.Host.GuestList;

/// <summary>Must-nots in words, for the host's eyes only.</summary>
internal static class NeedsText
{
    public static string Say(IReadOnlyList<DietaryNeeds> needs) => string.Join("; ", needs
        .Select((one, index) => (Text: Say(one), Index: index))
        .Where(row => row.Text.Length > 0)
        .Select(row => row.Index == 0 ? row.Text : $"companion {row.Index}: {row.Text}"));

    public static string Say(DietaryNeeds needs) => WordText.List(
    [
        .. needs.Diets.Select(WordText.Say),
        .. needs.Avoids.Select(allergen => $"avoids {WordText.Say(allergen)}"),
        .. needs.MustNotTouch.Select(allergen => $"must not touch {WordText.Say(allergen)}"),
    ]);
}
