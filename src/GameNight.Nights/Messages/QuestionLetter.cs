using GameNight.Nights.Links;
using GameNight.Nights.Records;
using NodaTime;

namespace GameNight.Nights.Messages;

/// <summary>What a guest is asked who is asked for a date, for the words that a mail says.</summary>
/// <param name="Id">With <paramref name="Generation"/> it makes the mail's own id.</param>
/// <param name="Generation">Of the link: another link is another mail.</param>
/// <param name="To">Mail address.</param>
/// <param name="Evenings">Local times of <paramref name="Zone"/>, the first one first.</param>
public sealed record QuestionLetter(
    AskedGuestId Id,
    int Generation,
    string To,
    string GuestName,
    string GroupName,
    string HostNames,
    string Title,
    IReadOnlyList<LocalDateTime> Evenings,
    string Zone,
    LocalDateTime OpenUntil,
    LinkToken Answer,
    LinkToken Unsubscribe);
