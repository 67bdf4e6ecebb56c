using GameNight.Planning.Guests;
using GameNight.Planning.Quantities;
using NodaTime;

namespace GameNight.Planning.Appetite;

/// <summary>So many people of a portion class, each expected to eat so many slices when they come.</summary>
public sealed record EatersCounted(PortionClass Portion, int Eaters, double SlicesEach) : Reason;

/// <summary>Guests with this answer come with this chance; their companions with them.</summary>
public sealed record AnswersCounted(AnswerState Answer, int Guests, int Companions, Share Chance) : Reason;

/// <summary>People who join remotely eat nothing here.</summary>
public sealed record RemoteNotCounted(int People) : Reason;

/// <summary>The host accepts this chance of running out; so many pies reach the chance given, one fewer would not.</summary>
public sealed record RunOutChanceAsked(Share Asked, Share Reached, PieCount Pies) : Reason;

/// <summary>Guests who share a household and gave the same answer come together or not at all.</summary>
public sealed record HouseholdsTogether(int Households, int Guests) : Reason;

/// <summary>So many come late or leave early and eat their part.</summary>
public sealed record PartOfTheEvening(int People) : Reason;

/// <summary>So many come late or leave early; over the hours in which pies are eaten they eat this much of their appetite.</summary>
public sealed record LateAndEarlyCounted(int Late, int Early, Duration EatingTime, Share OfUsual) : Reason;

/// <summary>What is served beside the pies leaves this much of the appetite for them.</summary>
public sealed record CoursesOnTheTable(int Courses, Share Left) : Reason;

/// <summary>An evening of that length makes this of the appetite.</summary>
public sealed record EveningLasts(Duration Length, Share OfUsual) : Reason;

/// <summary>Past nights of so many guests move what is believed of everybody with this answer.</summary>
public sealed record ChanceFromPastNights(AnswerState Answer, int Guests, Share Before, Share After) : Reason;

/// <summary>Past nights of so many guests move what everybody is believed to eat: by this factor.</summary>
public sealed record AppetiteFromPastNights(int Guests, Share OfUsual) : Reason;

/// <summary>A missing pie is as bad as so many left over, which accepts this run-out chance.</summary>
public sealed record ShortageWeighed(double Weight, Share Asked, Share Reached, PieCount Pies) : Reason;
