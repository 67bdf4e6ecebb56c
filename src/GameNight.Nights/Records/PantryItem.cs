using GameNight.Planning.Guests;
using GameNight.Planning.Quantities;
using GameNight.Planning.Toppings;

namespace GameNight.Nights.Records;

/// <summary>A base, cheese or topping of the group's menu, with what its label says.</summary>
public sealed class PantryItem
{
    public const int LongestName = 60;

    public PantryItem(
        GroupId groupId, MenuItemId id, string name, MenuRole role, double gramsPerCm2, Composition composition, int order,
        double? waterShare)
    {
        GroupId = groupId;
        Id = id;
        Name = name;
        Role = role;
        GramsPerCm2 = gramsPerCm2;
        Composition = composition;
        Order = order;
        WaterShare = waterShare;
    }

    /// <summary>As the planner takes it.</summary>
    public MenuItem ForPlanning() => new(
        Id.ToString(), Role, GramsPerCm2, Composition, WaterShare is { } water ? new Share(water) : null,
        Stock?.OnHandGrams is { } there ? new Grams(there) : null, Stock?.PackGrams is { } pack ? new Grams(pack) : null);

    public GroupId GroupId { get; private set; }
    public MenuItemId Id { get; private set; }
    public string Name { get; private set; }
    public MenuRole Role { get; private set; }
    public double GramsPerCm2 { get; private set; }
    public Composition Composition { get; private set; }
    public int Order { get; private set; }

    /// <summary>Share of its mass that is water as it goes on the pie, 0 to 1; null where nobody said.</summary>
    public double? WaterShare { get; private set; }

    /// <summary>What there is of it and how it is packed; null where nobody said.</summary>
    public PantryStock? Stock { get; private set; }

    /// <summary>An item that is not offered any more stays known to past nights.</summary>
    public bool IsOffered { get; private set; } = true;

    public uint Version { get; private set; }

    public void Keep(PantryStock? stock) => Stock = stock is { OnHandGrams: null, PackGrams: null } ? null : stock;

    public void Set(string name, double gramsPerCm2, Composition composition, double? waterShare, bool isOffered)
    {
        WaterShare = waterShare;
        Name = name;
        GramsPerCm2 = gramsPerCm2;
        Composition = composition;
        IsOffered = isOffered;
    }
}

/// <param name="OnHandGrams">All there is, 0 for none; null where as much as it takes is bought.</param>
/// <param name="PackGrams">What a pack holds.</param>
public sealed record PantryStock(double? OnHandGrams = null, double? PackGrams = null);
