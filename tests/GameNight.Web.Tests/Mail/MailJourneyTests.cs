using System.Net;
using GameNight.Nights.Records;
using GameNight.TestKit.Running;
using GameNight.Web.Tests.Pages;
using MimeKit;

namespace GameNight.Web.Tests.Mail;

/// <summary>The app with a mail server, from the invitation to the last message.</summary>
public sealed class MailJourneyTests
{
    private const string Marker = "Zirbelmark in the left cupboard";

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_guest_is_invited_told_of_a_move_and_stops_with_what_a_mail_program_sends()
    {
        await using var sink = MailSink.Open();
        await using var app = await RunningApp.StartAsync(Cancellation, solverSlices: 0, sink.Settings);
        using var visitor = new Visitor(app.Address);
        var founded = await visitor.FoundAsync(app.FirstAccountCode, SharedApp.Email, SharedApp.Password);
        await using var host = await HostAtWork.EnterAsync(app, founded.GroupId(), Cancellation);
        var guest = await host.KnowAsync("Xanthippe", Cancellation);
        await host.ReachAsync(guest, "xanthippe@example.org", Cancellation);
        var night = await host.OpenNightAsync([guest], Cancellation);
        await host.SendInvitationsAsync(night, Cancellation);

        var invitation = await MailAsync(sink, 1);
        var link = new Uri(Assert.Single(Links(invitation), one => one.Contains("/i/", StringComparison.Ordinal))).AbsolutePath;
        Assert.Equal(await host.LinkAsync(night, guest, Cancellation), link);
        await (await AnswerPage.OpenAsync(app.Client, link, Cancellation)).SendAsync(
            Cancellation, ("presence", "Coming"), ("consent", "on"), ("note", Marker), ("must0-Lupin", "t"));

        await host.ChangeAsync(night, facts => facts with { ServeAt = facts.ServeAt.PlusHours(1) }, Cancellation);
        var change = await MailAsync(sink, 2);
        Assert.Equal(invitation.References, change.References);
        Assert.All(sink.Mails, mail => Assert.DoesNotMatch("(?i)zirbelmark|lupin", mail.ToString()));

        // RFC 8058: a POST without cookie, from nowhere, and no redirect.
        var stop = new Uri(change.Headers[HeaderId.ListUnsubscribe]!.Trim('<', '>')).AbsolutePath;
        Assert.Equal(HttpStatusCode.OK, (await app.Client.GetAsync(stop, Cancellation)).StatusCode);
        Assert.DoesNotContain((await host.MessagesAsync(night, Cancellation)).Lines, line => line.State == MessageState.ForHand);
        var stopped = await app.Client.PostAsync(
            stop, new FormUrlEncodedContent([new("List-Unsubscribe", "One-Click")]), Cancellation);
        Assert.Equal(HttpStatusCode.OK, stopped.StatusCode);

        await host.CancelAsync(night, Cancellation);
        var left = Assert.Single((await host.MessagesAsync(night, Cancellation)).Lines, line => line.State == MessageState.ForHand);
        Assert.Equal(MessageKind.Cancellation, left.Kind);
        Assert.Equal(2, sink.Mails.Count);
        foreach (var secret in new[] { "xanthippe", link["/i/".Length..], stop["/u/".Length..], Marker })
        {
            Assert.DoesNotContain(secret, app.Log, StringComparison.OrdinalIgnoreCase);
        }
    }

    private static async Task<MimeMessage> MailAsync(MailSink sink, int number)
    {
        for (var giveUp = DateTime.UtcNow + TimeSpan.FromSeconds(30); sink.Mails.Count < number && DateTime.UtcNow < giveUp;)
        {
            await Task.Delay(50, Cancellation);
        }

        return sink.Mails[number - 1];
    }

    private static IEnumerable<string> Links(MimeMessage mail) =>
        mail.TextBody!.Split((char[]?)null).Where(word => word.StartsWith("http", StringComparison.Ordinal));
}
