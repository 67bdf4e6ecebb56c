using System.Globalization;
using System.Net;
using System.Text;
using GameNight.Nights.Links;
using GameNight.Nights.Messages;
using GameNight.Nights.Records;
using GameNight.Web.Guests;
using GameNight.Web.Startup;
using GameNight.Web.Wording;
using MimeKit;
using MimeKit.Text;
using NodaTime;

namespace GameNight.Web.Mail;

/// <summary>
/// From a letter to a mail: text first, the same as HTML, and the night for the calendar where it changed something there. No
/// picture and nothing that tells whether it was read.
/// </summary>
internal sealed class MailWriter(MailboxAddress from, Uri publicAddress)
{
    public MimeMessage Write(Letter letter, Instant now)
    {
        var words = LetterText.Say(letter, publicAddress);
        var mail = Addressed(words, letter.Night.GroupName, letter.GuestName, letter.To, now);
        mail.MessageId = $"{letter.Id}@{from.Domain}";

        // All mails of one night to one guest hang on one id, which no mail bears: whichever comes first, they stand together.
        var night = $"{letter.Night.Night}.{letter.Night.Guest}@{from.Domain}";
        mail.References.Add(night);
        if (letter.Kind != MessageKind.Invitation)
        {
            mail.InReplyTo = night;
        }

        var stop = MayStop(mail, letter.Unsubscribe);
        mail.Body = Body(letter, words, stop, now);
        mail.Prepare(EncodingConstraint.SevenBit);
        return mail;
    }

    public MimeMessage Write(QuestionLetter letter, Instant now)
    {
        var words = LetterText.Say(letter, publicAddress);
        var mail = Addressed(words, letter.GroupName, letter.GuestName, letter.To, now);
        mail.MessageId = $"{letter.Id}.{letter.Generation}@{from.Domain}";
        mail.Body = Body(words, MayStop(mail, letter.Unsubscribe));
        mail.Prepare(EncodingConstraint.SevenBit);
        return mail;
    }

    public MimeMessage Write(WorkLetter letter, Instant now)
    {
        var words = LetterText.Say(letter, publicAddress);
        var mail = Addressed(words, letter.GroupName, letter.HostName, letter.To, now);
        mail.MessageId = $"{letter.Id}@{from.Domain}";
        mail.Headers.Add(HeaderId.AutoSubmitted, "auto-generated");

        // A host ends it where they asked for it.
        mail.Body = Body(words, words.Link);
        mail.Prepare(EncodingConstraint.SevenBit);
        return mail;
    }

    private MimeMessage Addressed(LetterWords words, string group, string guest, string to, Instant now)
    {
        var mail = new MimeMessage();
        mail.From.Add(new MailboxAddress(LetterText.OneLine(group), from.Address));
        mail.To.Add(new MailboxAddress(LetterText.OneLine(guest), to));
        mail.Subject = words.Subject;
        mail.Date = now.ToDateTimeOffset();
        return mail;
    }

    /// <returns>Where the guest ends messages.</returns>
    private Uri MayStop(MimeMessage mail, LinkToken unsubscribe)
    {
        var stop = new Uri(publicAddress, $"{SecretPaths.Unsubscribe}/{unsubscribe.Text}");
        mail.Headers.Add(HeaderId.AutoSubmitted, "auto-generated");
        mail.Headers.Add(HeaderId.ListUnsubscribe, $"<{stop}>");
        if (publicAddress.Scheme == Uri.UriSchemeHttps)
        {
            // RFC 8058 speaks of https only.
            mail.Headers.Add(HeaderId.ListUnsubscribePost, "List-Unsubscribe=One-Click");
        }

        return stop;
    }

    private static MultipartAlternative Body(LetterWords words, Uri stop) => new()
    {
        new TextPart(TextFormat.Plain) { Text = $"{words.AsText()}\n\n-- \n{words.Stop}\n{stop}\n" },
        new TextPart(TextFormat.Html) { Text = Html(words, stop) },
    };

    private static MimeEntity Body(Letter letter, LetterWords words, Uri stop, Instant now)
    {
        var body = Body(words, stop);
        if (!HasCalendar(letter.Kind))
        {
            return body;
        }

        var calendar = new TextPart("calendar")
        {
            Text = NightCalendar.Write(letter.Night, now),
            ContentDisposition = new ContentDisposition(ContentDisposition.Attachment) { FileName = "night.ics" },
        };
        calendar.ContentType.Parameters.Add("method", NightCalendar.MethodOf(letter.Night));
        return new Multipart("mixed") { body, calendar };
    }

    private static bool HasCalendar(MessageKind kind) => kind is not (MessageKind.Reminder or MessageKind.Thanks);

    private static string Html(LetterWords words, Uri stop)
    {
        var html = new StringBuilder();
        html.Append(CultureInfo.InvariantCulture, $"<!DOCTYPE html><html lang=\"{Language.Current.Name}\"><head><meta charset=\"utf-8\"><title>{Safe(words.Subject)}</title></head>");
        html.Append("<body style=\"font-family:sans-serif;line-height:1.5;max-width:36em\">");
        foreach (var paragraph in words.Paragraphs)
        {
            html.Append(CultureInfo.InvariantCulture, $"<p>{Safe(paragraph).Replace("\n", "<br>", StringComparison.Ordinal)}</p>");
        }

        html.Append(CultureInfo.InvariantCulture, $"<p><a href=\"{Safe(words.Link.ToString())}\">{Safe(words.LinkLabel)}</a></p>");
        html.Append(CultureInfo.InvariantCulture, $"<p>{Safe(words.Closing)}</p>");
        html.Append(CultureInfo.InvariantCulture, $"<hr><p><small>{Safe(words.Stop)} <a href=\"{Safe(stop.ToString())}\">{Safe(words.StopLabel)}</a></small></p></body></html>");
        return html.ToString();
    }

    private static string Safe(string text) => WebUtility.HtmlEncode(text);
}
