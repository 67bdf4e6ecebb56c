using GameNight.Nights.ForHosts;
using GameNight.Nights.Records;
using GameNight.Web.Wording.Texts;

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

    public static string Say(MessageLine line, string zone)
    {
        var at = QuantityText.Moment(line.At, zone);
        return line.State switch
        {
            MessageState.Waiting => line.Fault is { } fault ? Phrase.Fill(MessagePages.WaitsAfter, Say(fault)) : MessagePages.Waits,
            MessageState.Sent => Phrase.Fill(MessagePages.SentAt, at),
            MessageState.GivenUp => Phrase.Fill(MessagePages.GivenUpAt, at, Say(line.Fault ?? MessageFault.Failed)),
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
