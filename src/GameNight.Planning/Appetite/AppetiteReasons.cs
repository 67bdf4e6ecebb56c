using GameNight.Planning.Guests;
using GameNight.Planning.Quantities;

namespace GameNight.Planning.Appetite;

/// <summary>So many people of a portion class, each expected to eat so many slices when they come.</summary>
public sealed record EatersCounted(PortionClass Portion, int Eaters, double SlicesEach) : Reason;

/// <summary>Guests with this answer come with this chance; their companions with them.</summary>
public sealed record AnswersCounted(AnswerState Answer, int Guests, int Companions, Share Chance) : Reason;

/// <summary>People who join remotely eat nothing here.</summary>
public sealed record RemoteNotCounted(int People) : Reason;

/// <summary>The host accepts this chance of running out; so many pies reach the chance given, one fewer would not.</summary>
public sealed record RunOutChanceAsked(Share Asked, Share Reached, PieCount Pies) : Reason;
