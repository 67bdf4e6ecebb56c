using GameNight.Planning.Quantities;
using NodaTime;

namespace GameNight.Planning.Sauce;

/// <summary>What to look for while the sauce is made. Each has a row in shared/reference/sauces.json.</summary>
public enum SauceCue
{
    GarlicGently,
    WeighThePot,
    SaltLast,
    TinsOverUnripe,
}

/// <summary>An open pot loses so much a minute at this simmer, give or take; its mass says when it is done.</summary>
public sealed record SimmeredOff(double GramsPerMinute, Grams Evaporated, int Pots) : Reason;

/// <summary>So much of the salt that the sauce is to have is in it before any is added.</summary>
/// <param name="FromLabel">The tins' salt is what their label says; otherwise a usual salted tin was taken.</param>
public sealed record SaltInTheTins(Grams AlreadyIn, bool FromLabel) : Reason;

/// <summary>So much of the wine's alcohol is still there, by the published table; baking drives off a little more.</summary>
public sealed record AlcoholLeft(Share Retained, Grams PerPie) : Reason;

/// <summary>
/// So little sauce would be as thick as paste before its time is over: it is planned to simmer no longer than
/// <paramref name="Longest"/>.
/// </summary>
public sealed record SimmersTooThick(Duration Asked, Duration Longest) : Conflict;

/// <summary>What the tins bring is more salt than the sauce is to have: none is added.</summary>
public sealed record SaltierThanAsked(Share Asked, Share Already) : Conflict;

/// <summary>All pots of an evening do not take the sauce; it is planned as if they did.</summary>
public sealed record PotTooSmall(Grams PerPot, Grams Holds, int Pots) : Conflict;
