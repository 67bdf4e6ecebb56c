using System.Diagnostics;
using GameNight.Planning;
using GameNight.Planning.Dough;
using GameNight.Planning.Fermentation;
using GameNight.Planning.Timeline;
using GameNight.Planning.Toppings;
using static GameNight.Web.Wording.QuantityText;

namespace GameNight.Web.Wording;

/// <summary>Says each conflict, and the nearest thing that would work. A test demands a sentence for every conflict.</summary>
/// <param name="zone">IANA zone of the night.</param>
/// <param name="nameOf">From an eater's id to a name.</param>
public sealed class ConflictText(string zone, Func<string, string> nameOf)
{
    /// <summary>True for what is worth knowing although the night works.</summary>
    public static bool IsNotice(Conflict conflict) => conflict is LastPieIsLate or OnlyUnwantedLeft;

    public string Say(Conflict conflict) => conflict switch
    {
        BallLargerThanBowl c => $"One ball of {Grams(c.Ball)} is more than your bowl or mixer takes ({Grams(c.Capacity)}). Use a larger bowl or a smaller pie.",
        NoSensibleDose c => $"No sensible amount of yeast makes this dough ready in its hours; the nearest is {Percent(c.NearestFresh)} fresh yeast. Change the hours or the temperature.",
        BegunDoughOffItsHours c => $"The dough that is begun is cold for {Length(c.Cold)} now, and you set {Whole(c.Shortest.TotalHours)} to {Whole(c.Longest.TotalHours)} hours. {Rises(c)}",
        NothingPermitted c => $"Nothing on the menu is permitted for {nameOf(c.EaterId)}: {Because(c.Because)}",
        OwnPiesDoNotFit c => $"{Names(c.EaterIds)} need pies of their own; {c.PiesNeeded} pies would do, the night has {c.Pies}. Set the pies to {c.PiesNeeded}.",
        GroupShortOfSlices c => $"{Names(c.EaterIds)} may want {c.Wanted} slices, and {c.Permitted} are permitted for them. One pie more, or another topping for everybody on one half, would do.",
        OnlyUnwantedLeft c => $"{nameOf(c.EaterId)} asked never to get what is left for them. Another topping on the menu would help.",
        TooFewSlices c => $"Everybody together may want {Slices(c.Wanted)}, and the pies hold {c.Slices}: everybody's were cut in proportion. {Pies(c.PiesNeeded)} would do.",
        EaterShortOfSlices c => $"{nameOf(c.EaterId)} may want {Slices(c.Wanted)}, and {c.Planned} are permitted for them. One pie more would do.",
        MenuIncomplete c => $"The menu has no {WordText.Say(c.Missing)} on offer. Add one; “no {WordText.Say(c.Missing)}” counts too.",
        TooLateForColdFerment c => $"It is too late for the cold ferment: mixing would have begun {Moment(c.NeededMixAt, zone)}. Serve from {Moment(c.EarliestServeAt, zone)}, or shorten the cold ferment: {Length(c.HoursPossible)} are left from mixing to serving.",
        ServingTimeHasPassed c => $"The serving time, {Moment(c.ServeAt, zone)}, has passed.",
        NoFreeHands c => NoFree(c),
        RulesClash c => $"These steps contradict each other by {Length(c.By)}: {WordText.And([.. c.Steps.Select(WordText.Say)])}. Change one of their times.",
        ChosenMixTimeDoesNotFit c => $"Mixing at {Moment(c.MixAt, zone)} does not fit; it can start from {Moment(c.EarliestMixAt, zone)} to {Moment(c.LatestMixAt, zone)}. The plan below goes without it.",
        LastPieIsLate c => $"The last pie is on the table {Length(c.AfterFirst)} after the first. {Bakes(c)}",
        _ => throw new UnreachableException($"No wording for {conflict.GetType().Name}."),
    };

    private static string Rises(BegunDoughOffItsHours conflict) => conflict.GasOfWanted switch
    {
        > 1.05 => $"It rises to about {Percent(Math.Round(conflict.GasOfWanted, 1))} of what is wanted: handle it gently, or bake it earlier.",
        < 0.95 => $"It rises to about {Percent(Math.Round(conflict.GasOfWanted, 1))} of what is wanted: take the balls out earlier, so that they can go on in the warm.",
        _ => "It still rises about as far as it should.",
    };

    private string NoFree(NoFreeHands conflict)
    {
        var step = conflict.Number > 0 ? $"{WordText.Say(conflict.Step)} {conflict.Number}" : WordText.Say(conflict.Step);
        var window = $"between {Moment(conflict.WindowFrom, zone)} and {Moment(conflict.WindowUntil, zone)}";
        var fixes = new List<string>();
        if (conflict.NearestFree is { } free)
        {
            fixes.Add($"you are free at {Moment(free, zone)}");
        }

        if (conflict.ServeAtThen is { } serve)
        {
            fixes.Add($"serving at {Moment(serve, zone)} would work");
        }

        return fixes.Count == 0
            ? $"You have no free hands for “{step}” {window}. Free some time, or find a helper."
            : $"You have no free hands for “{step}” {window}; {string.Join(", and ", fixes)}.";
    }

    private string Names(IReadOnlyList<string> ids) => WordText.And([.. ids.Select(nameOf)]);

    private static string Because(NothingPermittedBecause cause) => cause switch
    {
        NothingPermittedBecause.Dough => "the dough itself is not. Only another dough would help, and talk with them about your kitchen.",
        NothingPermittedBecause.Base => "no base is, not even going without. Add “no sauce” to the menu.",
        NothingPermittedBecause.Cheese => "no cheese is, not even going without. Add “no cheese” to the menu.",
    };

    private static string Bakes(LastPieIsLate conflict) => conflict switch
    {
        { PiesPerBakeNeeded: { } pies, HandsNeeded: { } hands } =>
            $"Baking {pies} at a time with {(hands == 1 ? "one pair of hands" : $"{hands} pairs of hands")} would bring it within an hour and a half.",
        _ => "No kitchen setting brings it within an hour and a half: fewer pies, or a longer table.",
    };
}
