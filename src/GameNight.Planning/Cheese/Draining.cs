using GameNight.Planning.Quantities;

namespace GameNight.Planning.Cheese;

/// <summary>What draining, salting or cooking first does to the water of cheese or vegetables.</summary>
public static class Draining
{
    /// <summary>Share of water that is left after a share of the mass has gone, all of it water.</summary>
    /// <exception cref="ArgumentOutOfRangeException">More is to go than the water there is, or all of the food.</exception>
    public static Share WaterAfter(Share water, Share lost)
    {
        if (!(lost.Value < 1 && lost <= water))
        {
            throw new ArgumentOutOfRangeException(
                nameof(lost), lost.Value, FormattableString.Invariant($"No more than the water there is can go: 0 to {water.Value:0.###} of the mass."));
        }

        return new Share((water.Value - lost.Value) / (1 - lost.Value));
    }
}
