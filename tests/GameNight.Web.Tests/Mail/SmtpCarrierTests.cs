using System.Net;
using System.Net.Sockets;
using GameNight.Nights.Messages;
using GameNight.Nights.Records;
using GameNight.TestKit.Running;
using GameNight.Web.Mail;
using MailKit.Security;
using MimeKit;
using NodaTime.Testing;
using SmtpServer.Protocol;

namespace GameNight.Web.Tests.Mail;

/// <summary>Against a mail server from outside the project (the package SmtpServer), and against ones that hang or are not there.</summary>
public sealed class SmtpCarrierTests
{
    private static readonly Letter Letter = SomeLetter.Of(MessageKind.Invitation);

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_mail_arrives_whole()
    {
        await using var sink = MailSink.Open();

        Assert.IsType<CarryResult.Accepted>(await Carrier(sink.Port).CarryAsync(Letter, Cancellation));

        var mail = Assert.Single(sink.Mails);
        Assert.Equal($"{Letter.Id}@example.org", mail.MessageId);
        Assert.Contains("Thursday table", mail.TextBody!, StringComparison.Ordinal);
        Assert.Contains(mail.BodyParts, part => part.ContentType.MimeType == "text/calendar");
    }

    [Fact]
    public async Task An_address_that_is_refused_for_good_is_told_apart_from_everything_else()
    {
        await using var sink = MailSink.Open();
        sink.Refused.Add("rui@example.org");

        Assert.Equal(
            new CarryResult.Refused(MessageFault.AddressRefused), await Carrier(sink.Port).CarryAsync(Letter, Cancellation));
        Assert.Empty(sink.Mails);
    }

    [Theory]
    [InlineData(452, false)]
    [InlineData(550, true)]
    public async Task What_the_server_says_to_the_mail_is_for_now_or_for_good(int code, bool isForGood)
    {
        await using var sink = MailSink.Open();
        sink.Says = _ => new SmtpResponse((SmtpReplyCode)code, "no");

        CarryResult meant = isForGood
            ? new CarryResult.Refused(MessageFault.MessageRefused)
            : new CarryResult.TryLater(MessageFault.ServerAway, IsForAll: false);
        Assert.Equal(meant, await Carrier(sink.Port).CarryAsync(Letter, Cancellation));
    }

    [Fact]
    public async Task A_server_that_is_not_there_is_tried_later() => Assert.Equal(
        new CarryResult.TryLater(MessageFault.ServerAway, IsForAll: true),
        await Carrier(RunningApp.FreePort()).CarryAsync(Letter, Cancellation));

    [Fact]
    public async Task A_server_that_takes_the_connection_and_says_nothing_does_not_hold_up_everything()
    {
        using var silent = new TcpListener(IPAddress.Loopback, 0);
        silent.Start();

        var carrying = Carrier(((IPEndPoint)silent.LocalEndpoint).Port).CarryAsync(Letter, Cancellation);

        Assert.Equal(
            new CarryResult.TryLater(MessageFault.ServerAway, IsForAll: true),
            await carrying.WaitAsync(TimeSpan.FromSeconds(20), Cancellation));
    }

    [Fact]
    public async Task A_server_that_takes_long_to_accept_is_waited_for_longer_than_one_that_takes_long_to_greet()
    {
        await using var sink = MailSink.Open();
        sink.Taken = _ => Task.Delay(TimeSpan.FromSeconds(3), Cancellation);

        Assert.IsType<CarryResult.Accepted>(await Carrier(sink.Port).CarryAsync(Letter, Cancellation));
    }

    [Fact]
    public async Task Encryption_that_is_asked_for_is_not_gone_without()
    {
        // The server offers none: no mail and no password goes to it.
        await using var sink = MailSink.Open();

        Assert.IsType<CarryResult.TryLater>(
            await Carrier(sink.Port, SecureSocketOptions.StartTls).CarryAsync(Letter, Cancellation));
        Assert.IsType<CarryResult.TryLater>(
            await Carrier(sink.Port, SecureSocketOptions.SslOnConnect).CarryAsync(Letter, Cancellation));
        Assert.Empty(sink.Mails);
    }

    private static SmtpCarrier Carrier(int port, SecureSocketOptions security = SecureSocketOptions.None) => new(
        new MailSettings(
            "127.0.0.1", port, security, "", null, new MailboxAddress("GameNight", "night@example.org"), new Uri("https://night.example")),
        new FakeClock(SomeLetter.Now))
    {
        BeforeTheMail = TimeSpan.FromSeconds(2),
        UntilAccepted = TimeSpan.FromSeconds(30),
    };
}
