using GameNight.Planning.Guests;

namespace GameNight.Planning;

/// <summary>What a guest did after the dough was begun.</summary>
public enum LateChangeKind
{
    /// <summary>Said for the first time whether they come.</summary>
    Answered,
    Changed,
    Withdrew,

    /// <summary>Was invited only then.</summary>
    Invited,

    /// <summary>The host took the invitation back.</summary>
    TakenOff,
}

/// <summary>How a guest and their companions are counted at a moment.</summary>
/// <param name="Answer">Null when the guest was not invited then.</param>
/// <param name="Heads">People who eat here if they come; 0 for those who do not come.</param>
/// <param name="ExpectedSlices">With the chance that they come counted in.</param>
public sealed record GuestCount(AnswerState? Answer, int Heads, double ExpectedSlices);

/// <summary>Must-nots of an eater that were not known when the dough was begun.</summary>
public sealed record NewMustNot(string EaterId, DietaryNeeds Needs);

/// <summary>One guest's late change, as counted then and now. Ids only.</summary>
public sealed record LateChange(
    string GuestId, LateChangeKind Kind, GuestCount Then, GuestCount Now, IReadOnlyList<NewMustNot> MustNots);
