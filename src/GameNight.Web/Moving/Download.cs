using System.Globalization;
using System.Text;
using NodaTime;
using NodaTime.Text;

namespace GameNight.Web.Moving;

/// <summary>Says of an answer that it is a file to keep, under a name that is safe everywhere.</summary>
internal static class Download
{
    private const int LongestName = 60;

    /// <summary>Kept by nobody on the way, and never shown as a page.</summary>
    public static void Declare(HttpResponse response, string contentType, string about, Instant at, string ending)
    {
        response.ContentType = contentType;
        response.Headers.ContentDisposition =
            $"attachment; filename=\"{Plain(about)}-{LocalDatePattern.Iso.Format(at.InUtc().Date)}.{ending}\"";
        response.Headers.CacheControl = "no-store";
        response.Headers["X-Download-Options"] = "noopen";
    }

    /// <summary>Letters and digits without their accents, and single dashes: nothing that a header, shell or disk reads otherwise.</summary>
    public static string Plain(string text)
    {
        var plain = new StringBuilder();
        foreach (var letter in text.Normalize(NormalizationForm.FormD))
        {
            if (char.IsAsciiLetterOrDigit(letter))
            {
                plain.Append(char.ToLowerInvariant(letter));
            }
            else if (CharUnicodeInfo.GetUnicodeCategory(letter) != UnicodeCategory.NonSpacingMark && plain.Length > 0 && plain[^1] != '-')
            {
                plain.Append('-');
            }
        }

        var name = plain.ToString(0, Math.Min(plain.Length, LongestName)).Trim('-');
        return name.Length > 0 ? name : "group";
    }
}
