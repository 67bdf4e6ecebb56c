using GameNight.Planning.Guests;
using GameNight.Web.Wording;
using GameNight.Web.Wording.Texts;

namespace GameNight.Web.Host.GuestList;

/// <summary>Must-nots in words, for the host's eyes only.</summary>
internal static class NeedsText
{
    /// <param name="items">Menu item id to name.</param>
    public static string Say(IReadOnlyList<DietaryNeeds> needs, IReadOnlyDictionary<string, string>? items = null) => WordText.ListOuter(needs
        .Select((one, index) => (Text: Say(one, items), Index: index))
        .Where(row => row.Text.Length > 0)
        .Select(row => row.Index == 0 ? row.Text : Phrase.Fill(MemberPages.NeedsOfCompanion, row.Index, row.Text)));

    public static string Say(DietaryNeeds needs, IReadOnlyDictionary<string, string>? items = null) => WordText.List(
    [
        .. needs.Diets.Select(WordText.Say),
        .. needs.Avoids.Select(allergen => Phrase.Fill(MemberPages.Avoids, WordText.Say(allergen))),
        .. needs.MustNotTouch.Select(allergen => Phrase.Fill(MemberPages.MustNotTouch, WordText.Say(allergen))),
        .. (needs.KeptOff ?? []).Select(id => Phrase.Fill(NotePages.WithoutItem, items?.GetValueOrDefault(id) ?? Words.Something)),
    ]);
}
