namespace GameNight.Planning.Toppings;

/// <summary>A set of toppings on a base and a cheese. The letter names it everywhere for the night: A, B, … Z, AA, …</summary>
public sealed record Combination(string Letter, string BaseId, string CheeseId, IReadOnlyList<string> ToppingIds)
{
    public IEnumerable<string> ItemIds => [BaseId, CheeseId, .. ToppingIds];
}

/// <summary>A part of a pie (or the whole of it) with its own combination.</summary>
public sealed record Sector(string Letter, int Slices);

/// <summary>One pie: one sector is a whole pie; several stand beside one another, the largest first.</summary>
/// <param name="Number">From 1, in the order of baking: own pies come first, then other pies of the second dough.</param>
/// <param name="OwnPieFor">Ids of the eaters with a must-not-touch allergy this pie is kept apart for; empty otherwise.</param>
/// <param name="OnSecondDough">True for a pie of the second dough; null for the main one.</param>
public sealed record PieOrder(int Number, IReadOnlyList<Sector> Sectors, IReadOnlyList<string> OwnPieFor, bool? OnSecondDough = null)
{
    public bool IsOwnPie => OwnPieFor.Count > 0;

    public bool IsOnSecondDough => OnSecondDough == true;

    /// <summary>Baked before what it is kept apart from is handled.</summary>
    public bool IsKeptApart => IsOwnPie || IsOnSecondDough;
}

/// <summary>How many slices of which combination on which pie are planned for an eater.</summary>
public sealed record Serving(string EaterId, int PieNumber, string Letter, int Slices);

/// <summary>How well an eater is served: mean score of the planned slices and the best they could have, both 0 to 12.</summary>
public sealed record Satisfaction(string EaterId, double Score, double BestPossible);

/// <summary>How sure the solver is of its answer.</summary>
public enum SplitQuality
{
    /// <summary>Feasible, made by a simple rule at once; a better one may follow.</summary>
    Quick,

    /// <summary>The best found within the effort, not proved.</summary>
    BestFound,

    /// <summary>Proved: nobody who is served worst could be served better within the catalogue of combinations.</summary>
    Proved,
}

/// <summary>Which combination goes on which sector of which pie, and whose slices are where.</summary>
/// <param name="Combinations">What is on the table, in the order of the letters.</param>
/// <param name="Servings">By eater, then pie. An eater who gets nothing has none.</param>
/// <param name="Satisfactions">By eater id; only eaters who are planned at least one slice.</param>
/// <param name="GapPercent">The widest proven distance from the best possible value of any objective, 0 to 100; 0 when proved.</param>
/// <param name="SolverSlices">The smallest effort that gives this very answer again; 0 when no solver was asked.</param>
public sealed record ToppingSplit(
    IReadOnlyList<Combination> Combinations,
    IReadOnlyList<PieOrder> Pies,
    IReadOnlyList<Serving> Servings,
    IReadOnlyList<Satisfaction> Satisfactions,
    SplitQuality Quality,
    double GapPercent,
    int SolverSlices,
    IReadOnlyList<Conflict> Conflicts)
{
    /// <summary>Numbers of the pies that lie on the second dough.</summary>
    public IReadOnlySet<int> OnSecondDough => Pies.Where(pie => pie.IsOnSecondDough).Select(pie => pie.Number).ToHashSet();
}
