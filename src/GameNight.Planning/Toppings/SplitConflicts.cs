namespace GameNight.Planning.Toppings;

/// <summary>What stands in the way of serving an eater anything.</summary>
public enum NothingPermittedBecause
{
    /// <summary>The dough (with peel flour and box oil) is itself not permitted: only another dough would help.</summary>
    Dough,

    /// <summary>No base is permitted, "none" included.</summary>
    Base,

    /// <summary>No cheese choice is permitted, "none" included.</summary>
    Cheese,

    /// <summary>What must not touch their slices is in the main dough, and so in the kitchen: another dough would not help.</summary>
    Kitchen,
}

/// <summary>No combination is permitted for this eater; they get no slices in the split.</summary>
public sealed record NothingPermitted(string EaterId, NothingPermittedBecause Because) : Conflict;

/// <summary>The own pies of must-not-touch eaters need more pies than the night has; <paramref name="PiesNeeded"/> would do.</summary>
public sealed record OwnPiesDoNotFit(IReadOnlyList<string> EaterIds, int PiesNeeded, int Pies) : Conflict;

/// <summary>
/// The slices permitted for a group of must-nots stay below what the group eats nine times in ten; one pie more, or more
/// of a permitted combination, closes the gap.
/// </summary>
public sealed record GroupShortOfSlices(IReadOnlyList<string> EaterIds, int Permitted, int Wanted) : Conflict;

/// <summary>Every topping choice left for this eater is one they asked never to get (a wish, so it is not a rule).</summary>
public sealed record OnlyUnwantedLeft(string EaterId) : Conflict;

/// <summary>A rule of the menu or of the request cannot hold, for example no base at all on the menu.</summary>
public sealed record MenuIncomplete(MenuRole Missing) : Conflict;

/// <summary>The pies hold fewer slices than the eaters want together; <see cref="ContestedShares"/> says whose are fewer.</summary>
public sealed record TooFewSlices(int Wanted, int Slices, int PiesNeeded) : Conflict;

/// <summary>There are slices enough, but too few of them are permitted for this eater: one more pie would do.</summary>
public sealed record EaterShortOfSlices(string EaterId, int Planned, int Wanted) : Conflict;
