using System.Globalization;
using System.Net;
using GameNight.Web.Startup;
using MailKit.Security;
using MimeKit;

namespace GameNight.Web.Mail;

/// <summary>The mail server that takes messages to guests, as an installation sets it.</summary>
/// <param name="Password">Null where the server asks for none.</param>
internal sealed record MailSettings(
    string Host, int Port, SecureSocketOptions Security, string User, string? Password, MailboxAddress From, Uri PublicAddress)
{
    private const string OnConnect = "on-connect";
    private const string StartTls = "start";
    private const string None = "none";

    /// <summary>Ports of RFC 8314 and RFC 6409.</summary>
    private static readonly Dictionary<string, int> UsualPorts = new() { [OnConnect] = 465, [StartTls] = 587, [None] = 25 };

    /// <returns>Null when no mail server is set.</returns>
    public static MailSettings? Of(GameNightOptions options) => options.SmtpHost.Length == 0 ? null : new MailSettings(
        options.SmtpHost,
        PortOf(options)!.Value,
        options.SmtpTls switch
        {
            OnConnect => SecureSocketOptions.SslOnConnect,
            StartTls => SecureSocketOptions.StartTls,
            _ => SecureSocketOptions.None,
        },
        options.SmtpUser,
        options.SmtpUser.Length > 0 ? File.ReadAllText(options.SmtpPasswordFile).TrimEnd('\r', '\n') : null,
        FromOf(options)!,
        new Uri(options.PublicAddress));

    /// <summary>One sentence for each setting that cannot be used; each names the key to fix.</summary>
    public static IEnumerable<string> Problems(GameNightOptions options)
    {
        if (options.SmtpHost.Length == 0)
        {
            yield break;
        }

        const string smtp = $"{GameNightOptions.Prefix}SMTP";
        if (options.PublicAddress.Length == 0)
        {
            yield return $"{smtp}_HOST is set, so {GameNightOptions.Prefix}PUBLIC_ADDRESS must be too: mails are sent while no host has a page open, and their links must lead to the app.";
        }

        if (!UsualPorts.ContainsKey(options.SmtpTls))
        {
            yield return $"{smtp}_TLS is {options.SmtpTls}; it can be {OnConnect}, {StartTls}, or {None} for a server on this machine.";
        }
        else if (options.SmtpTls == None && !IsLoopback(options.SmtpHost))
        {
            yield return $"{smtp}_TLS is {None}, but {options.SmtpHost} is not this machine: on the way, anybody could read the mails and the password. Use {OnConnect} or {StartTls}.";
        }

        if (PortOf(options) is null)
        {
            yield return $"{smtp}_PORT is {options.SmtpPort}; it can be 1 to 65535.";
        }

        if (FromOf(options) is null)
        {
            yield return $"{smtp}_FROM is no address to send from, such as GameNight <night@example.org>.";
        }

        if (options.SmtpUser.Length > 0 && !File.Exists(options.SmtpPasswordFile))
        {
            yield return $"{smtp}_USER is set, but {smtp}_PASSWORD_FILE names no file that is there.";
        }
    }

    private static int? PortOf(GameNightOptions options) =>
        options.SmtpPort.Length == 0 ? UsualPorts.GetValueOrDefault(options.SmtpTls, 1)
        : int.TryParse(options.SmtpPort, NumberStyles.None, CultureInfo.InvariantCulture, out var port) && port is > 0 and <= 65535 ? port
        : null;

    private static MailboxAddress? FromOf(GameNightOptions options) =>
        MailboxAddress.TryParse(options.SmtpFrom, out var mailbox) && mailbox.Domain.Length > 0 ? mailbox : null;

    private static bool IsLoopback(string host) =>
        host == "localhost" || (IPAddress.TryParse(host, out var address) && IPAddress.IsLoopback(address));
}
