using System.Globalization;
using GameNight.Nights.PastNights;
using GameNight.Nights.Records;
using Microsoft.Extensions.Primitives;

namespace GameNight.Web.Guests;

/// <summary>
/// What the look-back page shows and sends, as values of its fields. Everything typed is shown again when it is not kept.
/// </summary>
/// <param name="Slices">As typed.</param>
/// <param name="BestPies">Numbers that stand for kinds of pie.</param>
public sealed record LookBackForm(
    Enough? Enough, Evening? Evening, string Slices, IReadOnlyList<int> BestPies, string Words, bool Namelessly, int Revision,
    Guid Key)
{
    /// <summary>The form of what the guest said, or an empty one.</summary>
    public static LookBackForm Of(LookBackView view) => new(
        view.Said?.Enough,
        view.Said?.Evening,
        view.Said?.Slices?.ToString("0.##", CultureInfo.InvariantCulture) ?? "",
        view.Said?.BestPies ?? [],
        view.Said?.Words ?? "",
        view.Said?.Namelessly ?? false,
        view.Revision,
        Guid.CreateVersion7());

    public static LookBackForm Parse(IFormCollection form) => new(
        Word<Enough>(form["enough"]),
        Word<Evening>(form["evening"]),
        form["slices"].ToString().Trim(),
        [.. form["best"].Select(text => Whole(text)).OfType<int>()],
        // A browser sends line ends as two characters; counted is what was typed.
        form["words"].ToString().ReplaceLineEndings("\n"),
        form.ContainsKey("nameless"),
        Whole(form["revision"]) ?? 0,
        Guid.TryParse(form["key"], out var key) ? key : Guid.CreateVersion7());

    /// <summary>The same values with the newest revision and a key of their own: for sending after all.</summary>
    public LookBackForm Renewed(int revision) => this with { Revision = revision, Key = Guid.CreateVersion7() };

    /// <returns>Null when the slices are not a number.</returns>
    public GuestLookBack? ToLookBack()
    {
        double? slices = null;
        if (Slices.Length > 0)
        {
            if (!double.TryParse(Slices.Replace(',', '.'), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var typed))
            {
                return null;
            }

            slices = typed;
        }

        return new GuestLookBack(new LookBackFacts(Enough, Evening, slices, BestPies, Words, Namelessly), Revision, Key);
    }

    private static int? Whole(StringValues text) =>
        int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var number) ? number : null;

    private static T? Word<T>(StringValues text)
        where T : struct, Enum =>
        Enum.TryParse<T>(text, ignoreCase: false, out var value) && Enum.IsDefined(value) && !char.IsAsciiDigit(text.ToString()[0])
            ? value
            : null;
}
