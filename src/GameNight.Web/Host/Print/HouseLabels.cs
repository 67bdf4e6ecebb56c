using GameNight.Nights.Records;
using GameNight.Planning;
using GameNight.Planning.Guests;

namespace GameNight.Web.Host.Print;

/// <summary>What the labels say, with what sauce and cheese that are made here bring: wine its sulphites, above all.</summary>
public static class HouseLabels
{
    /// <param name="menu">Also what is not offered any more.</param>
    public static IReadOnlyDictionary<string, Composition> Of(
        NightSnapshot night, IEnumerable<PantryItem> menu, ReferenceTables tables)
    {
        var all = night.Menu with
        {
            Items = [.. menu.Select(item => item.ForPlanning())],
        };
        return NightSauceAndCheese.MenuOf(night with { Menu = all }, tables).Items.ToDictionary(item => item.Id, item => item.Composition);
    }
}
