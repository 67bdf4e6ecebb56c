using GameNight.Nights.Records;
using MimeKit;

namespace GameNight.Nights.Messages;

/// <summary>Whether what somebody typed is one plain e-mail address.</summary>
public static class MailAddressCheck
{
    /// <returns>The address without blanks around it; null when it is none.</returns>
    public static string? Plain(string typed)
    {
        var address = typed.Trim();

        // A name, a comment or a second address beside it would parse too, but is not what a host sees in the list.
        return address.Length is > 0 and <= Contact.LongestAddress
            && !address.Any(letter => char.IsControl(letter) || char.IsWhiteSpace(letter))
            && MailboxAddress.TryParse(address, out var mailbox)
            && mailbox.Address == address
            && string.IsNullOrEmpty(mailbox.Name)
            && mailbox.Route.Count == 0
            && IsWhole(mailbox)
            ? address
            : null;
    }

    private static bool IsWhole(MailboxAddress mailbox) =>
        mailbox.LocalPart is { Length: > 0 and <= 64 } && mailbox.Domain is { Length: > 0 } domain
            && !domain.StartsWith('.') && !domain.EndsWith('.') && !domain.Contains("..", StringComparison.Ordinal);
}
