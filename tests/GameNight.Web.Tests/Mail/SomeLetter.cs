using GameNight.Nights.ForGuests;
using GameNight.Nights.Links;
using GameNight.Nights.Messages;
using GameNight.Nights.Records;
using GameNight.Planning.Timeline;
using NodaTime;

namespace GameNight.Web.Tests.Mail;

/// <summary>Letters of one night, with links that lead nowhere.</summary>
internal static class SomeLetter
{
    public static readonly Instant Now = Instant.FromUtc(2026, 12, 9, 18, 0);

    private static readonly Instant Evening = Instant.FromUtc(2026, 12, 12, 17, 30);

    private static readonly (GroupId Group, NightId Night, GuestId Guest) Ids = (GroupId.New(), NightId.New(), GuestId.New());

    public static Letter Of(MessageKind kind) => new(
        MessageId.New(),
        kind,
        1,
        "rui@example.org",
        "Rui",
        "Inês",
        new CalendarNight(
            Ids.Group, Ids.Night, Ids.Guest, "Thursday table", "Pizza & <tiles>", new LocalDateTime(2026, 12, 12, 20, 30), null,
            "Europe/Berlin",
            kind is MessageKind.Change or MessageKind.Cancellation ? "4 Elm Street" : null,
            kind == MessageKind.Cancellation,
            kind is MessageKind.Change or MessageKind.Cancellation or MessageKind.Thanks ? Presence.Coming : null,
            3),
        "A game",
        Link('a'),
        Link('b'),
        Link('u'),
        kind == MessageKind.Change
            ? new MovedSince(new(2026, 12, 12, 19, 30), "Europe/Berlin", new(2026, 12, 12, 20, 30), "Europe/Berlin", false)
            : null,
        kind == MessageKind.Change,
        Instant.FromUtc(2026, 12, 11, 10, 0));

    /// <summary>The question for a date, to the same guest.</summary>
    public static QuestionLetter Question() => new(
        AskedGuestId.New(), 2, "rui@example.org", "Rui", "Thursday table", "Inês", "Pizza & <tiles>",
        [new(2026, 12, 12, 20, 30), new(2026, 12, 19, 20, 30)], "Europe/Berlin", new(2026, 12, 8, 20, 0), Link('d'), Link('u'));

    /// <summary>Work of the evening of that night, with a step of the host's own among it.</summary>
    public static WorkLetter Work()
    {
        TimelineStep At(StepKind kind, int number, int fromMinute, int minutes, bool hands = true) => new(
            $"{kind}{number}", kind, number, Evening + Duration.FromMinutes(fromMinute), Evening + Duration.FromMinutes(fromMinute + minutes), hands, Duration.Zero);

        return new WorkLetter(
            WorkReminderId.New(), "ines@example.org", "Inês", Ids.Group, "Thursday table", Ids.Night, "Pizza & <tiles>", "Europe/Berlin",
            WorkStretch.Of([
                At(StepKind.Temper, 1, 0, 90, hands: false), At(StepKind.Preheat, 0, 30, 25, hands: false), At(StepKind.Own, 1, 40, 10),
                At(StepKind.Shape, 1, 95, 3), At(StepKind.Top, 1, 98, 4), At(StepKind.Shape, 2, 110, 3), At(StepKind.Top, 2, 113, 4)])[0]);
    }

    private static LinkToken Link(char letter) => LinkToken.TryParse(new string(letter, LinkToken.Length))!.Value;
}
