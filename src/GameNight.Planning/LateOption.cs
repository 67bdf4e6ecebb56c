using GameNight.Planning.Appetite;
using GameNight.Planning.Quantities;
using NodaTime;

namespace GameNight.Planning;

/// <summary>
/// One thing that can still be done about late changes, with its effect. Nothing is done until a host chooses it; the family
/// is closed to this assembly.
/// </summary>
/// <param name="Outlook">What the night would be with it.</param>
public abstract record LateOption(PieChoice Outlook)
{
    /// <summary>What a slice of the outlook is of a slice of the committed dough: 1 unless the dough is divided anew.</summary>
    public double OfCommittedSlice { get; init; } = 1;

    /// <summary>The run-out chance is lower with it than without.</summary>
    public bool Helps { get; init; }

    /// <summary>Left over on average, in slices of the committed dough: what all options are compared in.</summary>
    public double LeftoverSlices => Outlook.ExpectedLeftoverSlices * OfCommittedSlice;

    /// <summary>Missing on average, in slices of the committed dough.</summary>
    public double ShortageSlices => Outlook.ExpectedShortageSlices * OfCommittedSlice;

    /// <summary>What stands chosen once this is chosen too.</summary>
    public abstract LateChoices Chosen(LateChoices before);
}

/// <summary>The same dough in other balls, for pies of another size or thickness.</summary>
/// <param name="Until">Divided later, the balls would not have relaxed by the time they are shaped.</param>
public sealed record RedivideOption(Redivided Anew, Grams Ball, Instant Until, PieChoice Outlook) : LateOption(Outlook)
{
    public override LateChoices Chosen(LateChoices before) => before with { Redivided = Anew };
}

/// <summary>Balls that are not needed are frozen or kept cold.</summary>
public sealed record KeepBallsOption(int Balls, Grams Ball, PieChoice Outlook) : LateOption(Outlook)
{
    public override LateChoices Chosen(LateChoices before) => before with { BallsKept = Balls };
}

/// <summary>One more course beside the pies.</summary>
public sealed record CourseOption(AppetiteTaken Takes, PieChoice Outlook) : LateOption(Outlook)
{
    public override LateChoices Chosen(LateChoices before) => before with { Course = Takes };
}

/// <summary>A second dough on the day.</summary>
public sealed record RescueOption(RescueDough Dough, RescuePlan Plan, PieChoice Outlook) : LateOption(Outlook)
{
    public override LateChoices Chosen(LateChoices before) => before with { Rescue = Dough };
}

/// <summary>Nothing is done: the chance of running out is higher than the host wanted, and that is accepted.</summary>
public sealed record AcceptOption(Share Wanted, PieChoice Outlook) : LateOption(Outlook)
{
    public override LateChoices Chosen(LateChoices before) => before with { Accepted = Outlook.RunOutChance };
}

/// <summary>Why there is no second dough among the options.</summary>
/// <param name="Left">From now to the first pie.</param>
/// <param name="Needed">At least, with hands free when they are needed.</param>
public sealed record NoTimeForRescue(Duration Left, Duration Needed);

/// <summary>What can still be done once the dough is begun.</summary>
/// <param name="NoRescue">Null when a second dough is possible, or not needed.</param>
public sealed record LateOptions(IReadOnlyList<LateOption> All, NoTimeForRescue? NoRescue)
{
    public static LateOptions None { get; } = new([], null);
}
