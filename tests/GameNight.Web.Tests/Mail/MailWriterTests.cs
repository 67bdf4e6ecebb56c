using AngleSharp.Html.Parser;
using GameNight.Nights.Messages;
using GameNight.Nights.Records;
using GameNight.Web.Mail;
using MimeKit;

namespace GameNight.Web.Tests.Mail;

/// <summary>Mails as RFC 5322, 2046, 8058, 3834 and 6047 ask for them, read back from what goes over the wire.</summary>
public sealed class MailWriterTests
{
    private static readonly Uri Address = new("https://night.example");

    public static TheoryData<MessageKind> Kinds => [.. Enum.GetValues<MessageKind>()];

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Is_text_first_then_the_same_as_simple_html(MessageKind kind)
    {
        var mail = Read(SomeLetter.Of(kind));

        var body = Assert.IsAssignableFrom<MultipartAlternative>(
            mail.Body is MultipartAlternative alone ? alone : ((Multipart)mail.Body!)[0]);
        var (text, html) = (((TextPart)body[0]).Text, ((TextPart)body[1]).Text);
        Assert.Equal(("text/plain", "text/html"), (body[0].ContentType.MimeType, body[1].ContentType.MimeType));
        var page = new HtmlParser().ParseDocument(html);
        var words = string.Join(' ', page.Body!.TextContent.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
        foreach (var line in text.Split('\n').Select(line => line.Trim()).Where(line => line.Length > 0 && line != "--" && !line.StartsWith("http", StringComparison.Ordinal)))
        {
            Assert.Contains(line.TrimEnd(':'), words.Replace("Berlin time)Now", "Berlin time) Now", StringComparison.Ordinal), StringComparison.Ordinal);
        }

        foreach (var link in page.QuerySelectorAll("a").Select(link => link.GetAttribute("href")!))
        {
            Assert.Contains(link, text, StringComparison.Ordinal);
        }

        // Nothing is fetched and nothing tells that it was read.
        Assert.Empty(page.QuerySelectorAll("img, script, link, iframe, form"));
        Assert.Contains(kind == MessageKind.Thanks ? "/b/bbb" : "/i/aaa", text, StringComparison.Ordinal);
        Assert.DoesNotContain("<tiles>", page.Body.InnerHtml, StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Bears_the_headers_of_an_automatic_mail_that_can_be_stopped_with_one_click(MessageKind kind)
    {
        var letter = SomeLetter.Of(kind);

        var mail = Read(letter);

        Assert.Equal($"{letter.Id}@example.org", mail.MessageId);
        Assert.Equal("auto-generated", mail.Headers[HeaderId.AutoSubmitted]);
        Assert.Equal($"<https://night.example/u/{new string('u', 43)}>", mail.Headers[HeaderId.ListUnsubscribe]);
        Assert.Equal("List-Unsubscribe=One-Click", mail.Headers[HeaderId.ListUnsubscribePost]);
        Assert.Equal(SomeLetter.Now.ToDateTimeOffset(), mail.Date);
        var night = Assert.Single(mail.References);
        Assert.Equal(kind == MessageKind.Invitation ? null : night, mail.InReplyTo);
        Assert.NotEqual(mail.MessageId, night);
    }

    [Fact]
    public void The_same_message_bears_the_same_id_whenever_it_is_written()
    {
        var letter = SomeLetter.Of(MessageKind.Change);

        Assert.Equal(Read(letter).MessageId, Read(letter with { GuestName = "Another name by now" }).MessageId);
    }

    [Theory]
    [InlineData(MessageKind.Invitation, "PUBLISH")]
    [InlineData(MessageKind.Change, "PUBLISH")]
    [InlineData(MessageKind.Reinstatement, "PUBLISH")]
    [InlineData(MessageKind.Cancellation, "CANCEL")]
    [InlineData(MessageKind.Reminder, null)]
    [InlineData(MessageKind.Thanks, null)]
    public void Brings_the_night_for_the_calendar_with_the_method_that_its_content_has(MessageKind kind, string? method)
    {
        var calendar = Read(SomeLetter.Of(kind)).BodyParts.OfType<TextPart>().SingleOrDefault(part => part.ContentType.MimeType == "text/calendar");

        Assert.Equal(method, calendar?.ContentType.Parameters["method"]);
        if (calendar is not null)
        {
            Assert.Contains($"METHOD:{method}\r\n", calendar.Text.ReplaceLineEndings("\r\n"), StringComparison.Ordinal);
            Assert.Equal("utf-8", calendar.ContentType.Charset);
        }
    }

    [Theory]
    [InlineData("Rui\r\nBcc: everybody@example.org")]
    [InlineData("Rui\nX-Evil: 1\n\nBody")]
    [InlineData("Rui\u2028Bcc: everybody@example.org\u0000")]
    [InlineData("Rui\" <evil@example.org>, \"x")]
    public void What_people_typed_begins_no_header_of_its_own(string typed)
    {
        foreach (var kind in Enum.GetValues<MessageKind>())
        {
            var letter = SomeLetter.Of(kind);
            var mail = Read(letter with
            {
                GuestName = typed,
                HostNames = typed,
                Night = letter.Night with { Title = typed, GroupName = typed },
            });

            Assert.Equal(["rui@example.org"], mail.To.Mailboxes.Select(one => one.Address));
            Assert.Equal(["night@example.org"], mail.From.Mailboxes.Select(one => one.Address));
            Assert.Empty(mail.Cc.Concat(mail.Bcc));
            Assert.Null(mail.Headers["X-Evil"]);
            Assert.Single(mail.Headers, header => header.Id == HeaderId.Subject);
            Assert.DoesNotContain('\n', mail.Subject!);
        }
    }

    [Fact]
    public void Without_encryption_nobody_is_promised_one_click() => Assert.Null(Read(
        SomeLetter.Of(MessageKind.Invitation), new Uri("http://192.168.0.7:5080")).Headers[HeaderId.ListUnsubscribePost]);

    [Fact]
    public void A_change_says_what_was_and_what_is()
    {
        var text = Read(SomeLetter.Of(MessageKind.Change)).TextBody!;

        Assert.Matches("Before: .*19:30.*\n.*Now: .*20:30", text.ReplaceLineEndings("\n"));
        Assert.Contains("4 Elm Street", text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_question_says_which_evenings_and_by_when_and_another_link_is_another_mail()
    {
        var letter = SomeLetter.Question();

        var mail = Sent(Writer().Write(letter, SomeLetter.Now));

        var text = mail.TextBody!.ReplaceLineEndings("\n");
        Assert.Equal("Which evening? Pizza & <tiles>", mail.Subject);
        Assert.Contains("Saturday, 12 December, 20:30 (Europe/Berlin time)\nSaturday, 19 December, 20:30 (Europe/Berlin time)", text, StringComparison.Ordinal);
        Assert.Contains($"https://night.example/d/{new string('d', 43)}", text, StringComparison.Ordinal);
        Assert.DoesNotContain("<tiles>", mail.HtmlBody!, StringComparison.Ordinal);
        Assert.Equal($"<https://night.example/u/{new string('u', 43)}>", mail.Headers[HeaderId.ListUnsubscribe]);
        Assert.Equal($"{letter.Id}.2@example.org", mail.MessageId);
        Assert.DoesNotContain(mail.BodyParts, part => part.ContentType.MimeType == "text/calendar");
    }

    /// <summary>Nothing that was typed stands in it but the title: a step of the host's own may say who eats what.</summary>
    [Fact]
    public void A_reminder_of_work_lists_what_is_to_be_done_when_and_leads_to_the_timeline()
    {
        var letter = SomeLetter.Work();

        var mail = Sent(Writer().Write(letter, SomeLetter.Now));

        var text = mail.TextBody!.ReplaceLineEndings("\n");
        Assert.Equal("18:30: Take the balls out of the fridge (Pizza & <tiles>)", mail.Subject);
        Assert.Contains("Sat 12 Dec, 18:30 to 20:27", text, StringComparison.Ordinal);
        Assert.Contains(
            "18:30  Take the balls out of the fridge\n19:00  Oven on, as hot as it goes\n19:10  Step of your own\n20:05  The pies, one after the other\n", text, StringComparison.Ordinal);
        var page = $"https://night.example/g/{letter.Group}/n/{letter.Night}/timeline";
        Assert.Contains(page, text, StringComparison.Ordinal);
        Assert.Contains(page, mail.HtmlBody!, StringComparison.Ordinal);
        Assert.DoesNotContain("<tiles>", mail.HtmlBody!, StringComparison.Ordinal);
        Assert.Equal($"{letter.Id}@example.org", mail.MessageId);
        Assert.Equal("auto-generated", mail.Headers[HeaderId.AutoSubmitted]);
        Assert.DoesNotContain(mail.BodyParts, part => part.ContentType.MimeType == "text/calendar");
    }

    private static MailWriter Writer(Uri? address = null) => new(new MailboxAddress("GameNight", "night@example.org"), address ?? Address);

    private static MimeMessage Read(Letter letter, Uri? address = null) => Sent(Writer(address).Write(letter, SomeLetter.Now));

    /// <summary>Written, and read again as a mail server would get it.</summary>
    private static MimeMessage Sent(MimeMessage mail)
    {
        using var wire = new MemoryStream();
        mail.WriteTo(new FormatOptions { NewLineFormat = NewLineFormat.Dos }, wire);
        wire.Position = 0;
        return MimeMessage.Load(wire);
    }
}
