using System.Globalization;
using GameNight.Nights.Messages;
using GameNight.Nights.Records;
using GameNight.Web.Wording;
using MailKit.Net.Smtp;
using MailKit.Security;
using MimeKit;
using NodaTime;

namespace GameNight.Web.Mail;

/// <summary>Hands each message to the mail server on a connection of its own.</summary>
internal sealed class SmtpCarrier(MailSettings settings, IClock clock) : IMessageCarrier
{
    private readonly MailWriter _writer = new(settings.From, settings.PublicAddress);

    public bool CanCarry => true;

    /// <summary>For all that comes before the mail itself: a server that hangs must not hold up everything.</summary>
    public TimeSpan BeforeTheMail { get; init; } = TimeSpan.FromSeconds(30);

    /// <summary>
    /// For the server's last word, as RFC 5321 (4.5.3.2.6) asks: who gives up earlier makes it likely that the mail was accepted
    /// all the same, and sends it twice.
    /// </summary>
    public TimeSpan UntilAccepted { get; init; } = TimeSpan.FromMinutes(10);

    public Task<CarryResult> CarryAsync(Letter letter, CancellationToken cancellation) =>
        CarryAsync(() => _writer.Write(letter, clock.GetCurrentInstant()), cancellation);

    public Task<CarryResult> CarryAsync(QuestionLetter letter, CancellationToken cancellation) =>
        CarryAsync(() => _writer.Write(letter, clock.GetCurrentInstant()), cancellation);

    public Task<CarryResult> CarryAsync(WorkLetter letter, CancellationToken cancellation) =>
        CarryAsync(() => _writer.Write(letter, clock.GetCurrentInstant()), cancellation);

    private async Task<CarryResult> CarryAsync(Func<MimeMessage> write, CancellationToken cancellation)
    {
        // No page is open whose language could be taken.
        CultureInfo.CurrentCulture = CultureInfo.CurrentUICulture = Language.English;
        using var mail = write();
        using var deadline = new CancellationTokenSource();
        using var client = new PatientClient(deadline, UntilAccepted);
        try
        {
            await GreetAsync(client, deadline, cancellation);
        }
        catch (AuthenticationException)
        {
            return new CarryResult.TryLater(MessageFault.SenderRefused, IsForAll: true);
        }
        catch (Exception fault) when (!cancellation.IsCancellationRequested && fault is not ArgumentException)
        {
            // Whatever stands between us and the server, another message would meet it too.
            return new CarryResult.TryLater(MessageFault.ServerAway, IsForAll: true);
        }

        try
        {
            await client.SendAsync(mail, deadline.Token);
        }
        catch (SmtpCommandException refusal)
        {
            return Meaning(refusal);
        }
        catch (Exception fault) when (fault is not ArgumentException)
        {
            // It may have been accepted, or not: it is sent again, with the same Message-ID.
            return new CarryResult.TryLater(MessageFault.ServerAway, IsForAll: true);
        }

        await LeaveAsync(client);
        return new CarryResult.Accepted();
    }

    /// <summary>RFC 5321: 4yz is for now, 5yz is for good. Not being let in is a setting, and never the guest's doing.</summary>
    internal static CarryResult Meaning(SmtpCommandException refusal) => (refusal.ErrorCode, (int)refusal.StatusCode) switch
    {
        (SmtpErrorCode.RecipientNotAccepted, >= 500) => new CarryResult.Refused(MessageFault.AddressRefused),
        (SmtpErrorCode.RecipientNotAccepted, _) => new CarryResult.TryLater(MessageFault.ServerAway, IsForAll: false),
        (SmtpErrorCode.SenderNotAccepted, _) => new CarryResult.TryLater(MessageFault.SenderRefused, IsForAll: true),
        (SmtpErrorCode.MessageNotAccepted, >= 500) => new CarryResult.Refused(MessageFault.MessageRefused),
        (SmtpErrorCode.MessageNotAccepted, _) => new CarryResult.TryLater(MessageFault.ServerAway, IsForAll: false),
        _ => new CarryResult.TryLater(MessageFault.ServerAway, IsForAll: true),
    };

    private async Task GreetAsync(PatientClient client, CancellationTokenSource deadline, CancellationToken cancellation)
    {
        deadline.CancelAfter(BeforeTheMail);
        using var either = CancellationTokenSource.CreateLinkedTokenSource(deadline.Token, cancellation);
        await client.ConnectAsync(settings.Host, settings.Port, settings.Security, either.Token);
        if (settings.Password is { } password)
        {
            await client.AuthenticateAsync(settings.User, password, either.Token);
        }
    }

    /// <summary>The mail is theirs already, however we part.</summary>
    private static async Task LeaveAsync(SmtpClient client)
    {
        using var soon = new CancellationTokenSource(TimeSpan.FromSeconds(2));
        try
        {
            await client.DisconnectAsync(quit: true, soon.Token);
        }
        catch (Exception)
        {
            // Closed with the client.
        }
    }

    /// <summary>Waits longer once the recipient is accepted, for then the mail is on its way.</summary>
    private sealed class PatientClient : SmtpClient
    {
        private readonly CancellationTokenSource _deadline;
        private readonly TimeSpan _untilAccepted;

        public PatientClient(CancellationTokenSource deadline, TimeSpan untilAccepted)
        {
            _deadline = deadline;
            _untilAccepted = untilAccepted;
            Timeout = (int)untilAccepted.TotalMilliseconds;
        }

        protected override void OnRecipientAccepted(MimeMessage message, MailboxAddress mailbox, SmtpResponse response)
        {
            _deadline.CancelAfter(_untilAccepted);
            base.OnRecipientAccepted(message, mailbox, response);
        }
    }
}
