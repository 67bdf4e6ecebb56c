using GameNight.Nights.ForGuests;
using GameNight.Nights.Links;
using GameNight.Nights.Records;
using NodaTime;

namespace GameNight.Nights.Messages;

/// <summary>
/// Everything a message may say, as it stands when it is sent. There is no must-not and no note in it, and the address only for
/// who comes.
/// </summary>
/// <param name="To">Address of the guest; empty for a text to pass on by hand.</param>
/// <param name="Night">The night as the guest's calendar has it.</param>
/// <param name="Answer">Of the link to answer.</param>
/// <param name="Moved">What happened to the serving time since the guest was last told.</param>
/// <param name="IsElsewhere">The place is another than the guest was last told.</param>
/// <param name="OutOfEvenings">The guest was asked which of so many evenings, and this is the one; null when they were not asked.</param>
/// <param name="AnswerBy">Until then the answer moves the dough; null while no plan knows it, and when it has passed.</param>
public sealed record Letter(
    MessageId Id,
    MessageKind Kind,
    int About,
    string To,
    string GuestName,
    string HostNames,
    CalendarNight Night,
    string Bring,
    LinkToken Answer,
    LinkToken LookBack,
    LinkToken Unsubscribe,
    MovedSince? Moved,
    bool IsElsewhere,
    Instant? AnswerBy,
    int? OutOfEvenings = null);
