using GameNight.Planning.Quantities;

namespace GameNight.Planning.Dough;

/// <summary>The wheat a flour is milled from.</summary>
public enum WheatKind
{
    Hard,
    Soft,
    Durum,
}

/// <summary>How flour is kept: paper follows the room in weeks, a sealed tub does not.</summary>
public enum FlourKept
{
    Paper,
    Sealed,
}

/// <summary>The flour of a kitchen, as far as its moisture goes.</summary>
/// <param name="RoomHumidity">Relative humidity of the room over weeks, 0.1 to 0.9; null when not known.</param>
/// <param name="Moisture">From the label or a dried sample, wet basis, 0.08 to 0.16; it overrules the room.</param>
public sealed record KitchenFlour(WheatKind Wheat, FlourKept Kept, Share? RoomHumidity = null, Share? Moisture = null);
