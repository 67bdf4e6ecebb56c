namespace GameNight.Planning.Timeline;

/// <summary>What can go wrong in a known way, with what to do about it.</summary>
public enum StepTrouble
{
    /// <summary>The yeast does not foam: the dough waits for a second try.</summary>
    NoFoam,

    /// <summary>The dough tears when it is stretched to a pane: it is kneaded on.</summary>
    TearsWhenStretched,

    /// <summary>The base springs back when it is shaped: it rests.</summary>
    SpringsBack,

    /// <summary>The pie sticks to the peel.</summary>
    SticksToPeel,

    /// <summary>The middle of the last pie was soggy: the next bake longer.</summary>
    SoggyMiddle,

    /// <summary>The last pie browned before it was done.</summary>
    BrownsTooSoon,
}

/// <summary>What a trouble does to the rest of the night.</summary>
public enum TroubleEffect
{
    /// <summary>The step begins so much later.</summary>
    Waits,

    /// <summary>The step takes so much longer.</summary>
    TakesLonger,

    /// <summary>So does every step of its kind that is still to come.</summary>
    AllTakeLonger,

    /// <summary>Nothing is timed anew: there is only something to do.</summary>
    Nothing,
}

/// <param name="Step">At which step it is seen.</param>
/// <param name="Minutes">0 to 60; what it costs by <paramref name="Effect"/>.</param>
public sealed record TroubleRow(StepTrouble Trouble, StepKind Step, TroubleEffect Effect, double Minutes, string Source);
