namespace GameNight.Planning.Dough;

/// <summary>The form in which yeast is bought.</summary>
public enum YeastForm
{
    Fresh,
    ActiveDry,
    Instant,
}

/// <summary>How a batch is kneaded.</summary>
public enum KneadingWay
{
    ByHand,
    Mixer,
}
