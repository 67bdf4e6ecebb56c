namespace GameNight.Planning.Dough;

/// <summary>The form in which yeast is bought.</summary>
public enum YeastForm
{
    Fresh,
    ActiveDry,
    Instant,
}

/// <summary>How a batch is kneaded: by hand it takes a pair of hands, the mixer only has to be started, one bowl at a time.</summary>
public enum KneadingWay
{
    ByHand,
    Mixer,
}
