using GameNight.Planning.Guests;
using GameNight.Planning.Quantities;

namespace GameNight.Planning.Toppings;

/// <summary>What there is of an item tonight, and how it is packed.</summary>
/// <param name="PerPie">What a whole pie takes of it.</param>
/// <param name="OnHand">All there is; null where as much as it takes will be bought.</param>
/// <param name="Pack">What a pack holds; null where nobody said.</param>
public sealed record ItemStock(Grams PerPie, Grams? OnHand = null, Grams? Pack = null)
{
    public bool IsGone => PerPie > default(Grams) && OnHand is { } there && there <= default(Grams);
}

/// <summary>There is none of these tonight, and somebody would have had them.</summary>
public sealed record NoneOnHand(IReadOnlyList<string> ItemIds) : Conflict;

/// <summary>Everything else is gone too, so the pies take more of this than there is.</summary>
public sealed record MoreThanOnHand(string ItemId, Grams Needed, Grams OnHand) : Conflict;

/// <summary>An item of which there is not enough for every pie: so many units of these supplies at most.</summary>
internal sealed record StockLimit(string ItemId, ItemStock Stock, IReadOnlyList<int> Supplies, int MostUnits);

/// <summary>An item that is bought or opened by the pack.</summary>
/// <param name="UnitTenths">Tenths of a gram on a unit, at least 1.</param>
/// <param name="PackTenths">Tenths of a gram in a pack, at least 1.</param>
internal sealed record PackedItem(IReadOnlyList<int> Supplies, long UnitTenths, long PackTenths)
{
    public long Packs(IReadOnlyList<int> units) => ((Supplies.Sum(supply => (long)units[supply]) * UnitTenths) + PackTenths - 1) / PackTenths;
}

/// <summary>What is gone is no choice tonight; what is short limits, and what is packed is counted.</summary>
internal static class StockRules
{
    /// <summary>The request without what is gone, and a word on it where somebody misses it.</summary>
    public static (SplitRequest Offered, IReadOnlyList<Conflict> Conflicts) Offered(SplitRequest request)
    {
        var gone = (request.Stock ?? new Dictionary<string, ItemStock>()).Where(row => row.Value.IsGone).Select(row => row.Key).ToHashSet();
        if (gone.Count == 0)
        {
            return (request, []);
        }

        var missed = request.Menu.Items.Where(item => gone.Contains(item.Id) && IsMissed(request, item)).Select(item => item.Id).ToList();
        return (
            request with { Menu = request.Menu with { Items = [.. request.Menu.Items.Where(item => !gone.Contains(item.Id))] } },
            missed.Count > 0 ? [new NoneOnHand(missed)] : []);
    }

    public static IReadOnlyList<StockLimit> Limits(SplitRequest request, SplitBasis basis) =>
    [
        .. from item in request.Menu.Items
        where request.Stock?.GetValueOrDefault(item.Id) is { OnHand: not null } stock && stock.PerPie > default(Grams)
        let stock = request.Stock![item.Id]
        let most = (int)Math.Floor((stock.OnHand!.Value / stock.PerPie * basis.UnitsPerPie) + 1e-9)
        where most < basis.Sets.Sum(set => set.Units)
        select new StockLimit(item.Id, stock, basis.SuppliesWith(item), most),
    ];

    public static IReadOnlyList<PackedItem> Packed(SplitRequest request, SplitBasis basis) =>
    [
        .. from item in request.Menu.Items
        let stock = request.Stock?.GetValueOrDefault(item.Id)
        where stock is { Pack: not null } && stock.PerPie > default(Grams) && stock.Pack > default(Grams)
        select new PackedItem(
            basis.SuppliesWith(item),
            Math.Max(1, (long)Math.Ceiling(stock.PerPie.Value * 10 / basis.UnitsPerPie)),
            Math.Max(1, (long)Math.Floor(stock.Pack!.Value.Value * 10))),
    ];

    public static IEnumerable<Conflict> Overdrawn(SplitBasis basis, IReadOnlyList<int> units) =>
        from limit in basis.Limits
        let used = limit.Supplies.Sum(supply => units[supply])
        where used > limit.MostUnits
        select new MoreThanOnHand(limit.ItemId, limit.Stock.PerPie * ((double)used / basis.UnitsPerPie), limit.Stock.OnHand!.Value);

    private static bool IsMissed(SplitRequest request, MenuItem item) =>
        item.Role != MenuRole.Topping
        || (request.Pins ?? []).Any(pin => pin.ToppingIds.Contains(item.Id))
        || request.Eaters.Any(eater => eater.Slices > 0 && eater.Likes.GetValueOrDefault(item.Id, Liking.Fine) >= Liking.Like
            && item.IsPermittedFor(eater.Needs));
}
