using GameNight.Nights.Records;
using GameNight.Planning.Guests;
using GameNight.Planning.Toppings;

namespace GameNight.Web.Drawings;

/// <summary>Bases that are drawn pale: those made of milk.</summary>
internal static class WhiteBases
{
    public static IReadOnlySet<string> Of(IEnumerable<PantryItem> menu) => menu
        .Where(item => item.Role == MenuRole.Base && item.Composition.Contains.Contains(Allergen.Milk))
        .Select(item => item.Id.ToString())
        .ToHashSet();
}
