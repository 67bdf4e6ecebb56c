namespace GameNight.Planning.Fermentation;

/// <summary>What a ball of dough looks like in its box, from just shaped to past its best.</summary>
public enum DoughLook
{
    /// <summary>As it was balled: round, tight, no larger.</summary>
    AsBalled,

    /// <summary>A little rounder, first small bubbles at the side of the box.</summary>
    Domed,

    /// <summary>A sixth to two thirds larger, soft, bubbles under the skin: ready.</summary>
    Airy,

    /// <summary>About double, wide and flat, large bubbles.</summary>
    Slack,

    /// <summary>Fallen in on itself, wrinkled, smells of alcohol.</summary>
    Fallen,
}
