using GameNight.Planning.Guests;

namespace GameNight.Planning.Toppings;

/// <summary>What a rule of a night is about.</summary>
public enum SplitRuleKind
{
    KeepsDiet,
    Avoids,
    MustNotTouch,
    KeptOff,

    /// <summary>What the host settled for a pie.</summary>
    Settled,

    /// <summary>How much there is of an item.</summary>
    OnHand,

    /// <summary>Nothing that leaves the middle soggy.</summary>
    Wetness,

    /// <summary>Two toppings that never meet.</summary>
    Apart,

    NumberOfPies,

    /// <summary>The main dough, with flour on the peel and oil in the box.</summary>
    Dough,

    /// <summary>The menu has no base that is none.</summary>
    NoPlainBase,

    /// <summary>The menu has no cheese that is none.</summary>
    NoPlainCheese,
}

/// <summary>One rule of a night, with what it needs to be said.</summary>
/// <param name="EaterId">Whose rule it is, of must-nots.</param>
/// <param name="ItemId">Of the menu, with <paramref name="OtherItemId"/> where two never meet.</param>
/// <param name="Number">Of the pie that is settled, or how many pies there are.</param>
public sealed record SplitRule(
    SplitRuleKind Rule,
    string? EaterId = null,
    Diet? Diet = null,
    Allergen? Allergen = null,
    string? ItemId = null,
    string? OtherItemId = null,
    int? Number = null)
{
    /// <summary>Diet and allergy are never up for discussion; everything else is the host's to change.</summary>
    public bool IsMustNot => Rule is SplitRuleKind.KeepsDiet or SplitRuleKind.Avoids or SplitRuleKind.MustNotTouch or SplitRuleKind.KeptOff;
}

/// <summary>
/// Somebody cannot be fed as planned, because these rules cannot all hold: leave out any one of them, and the others can.
/// </summary>
/// <param name="EaterIds">Who goes short.</param>
/// <param name="Rules">At least one.</param>
/// <param name="Nearest">Each alone would do, of what the host can change; empty where no single change is enough.</param>
public sealed record SplitRulesClash(
    IReadOnlyList<string> EaterIds, IReadOnlyList<SplitRule> Rules, IReadOnlyList<SplitRule> Nearest) : Conflict;
