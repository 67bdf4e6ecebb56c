using GameNight.Nights.ForHosts;
using GameNight.Nights.Records;
using GameNight.Web.Wording.Texts;
using NodaTime;

namespace GameNight.Web.Wording;

/// <summary>What became of a message, for hosts.</summary>
internal static class MessageText
{
    public static string Say(MessageKind kind) => kind switch
    {
        MessageKind.Invitation => MessagePages.Invitation,
        MessageKind.Reminder => MessagePages.Reminder,
        MessageKind.Change => MessagePages.Change,
        MessageKind.Cancellation => MessagePages.Cancellation,
        MessageKind.Reinstatement => MessagePages.Reinstatement,
        MessageKind.Thanks => MessagePages.Thanks,
        MessageKind.Seat => MessagePages.Seat,
    };

    public static string Say(MessageLine line, string zone) => Say(line.State, line.Fault, line.At, zone);

    /// <param name="moment">When it was queued or settled.</param>
    public static string Say(MessageState state, MessageFault? why, Instant moment, string zone)
    {
        var at = QuantityText.Moment(moment, zone);
        return state switch
        {
            MessageState.Waiting => why is { } fault ? Phrase.Fill(MessagePages.WaitsAfter, Say(fault)) : MessagePages.Waits,
            MessageState.Sent => Phrase.Fill(MessagePages.SentAt, at),
            MessageState.GivenUp => Phrase.Fill(MessagePages.GivenUpAt, at, Say(why ?? MessageFault.Failed)),
            MessageState.ForHand => MessagePages.IsForHand,
            MessageState.PassedOn => Phrase.Fill(MessagePages.PassedOnAt, at),
            MessageState.Dropped => Phrase.Fill(MessagePages.DroppedAt, at),
        };
    }

    private static string Say(MessageFault fault) => fault switch
    {
        MessageFault.AddressRefused => MessagePages.AddressRefused,
        MessageFault.MessageRefused => MessagePages.MessageRefused,
        MessageFault.ServerAway => MessagePages.ServerAway,
        MessageFault.SenderRefused => MessagePages.SenderRefused,
        MessageFault.Failed => MessagePages.Failed,
    };
}
