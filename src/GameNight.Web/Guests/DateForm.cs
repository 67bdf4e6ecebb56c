using System.Globalization;
using GameNight.Nights.Dates;
using GameNight.Planning.Dates;

namespace GameNight.Web.Guests;

/// <summary>What the page of a question shows and sends. Parsing never fails: what cannot be understood is left out.</summary>
/// <param name="Zone">The guest's own time zone as typed; empty for the host's alone.</param>
public sealed record DateForm(IReadOnlyDictionary<string, DateAnswer> Answers, int Revision, Guid Key, string Zone)
{
    /// <summary>Longer is no time zone.</summary>
    private const int LongestZone = 64;

    public static DateForm Of(DateQuestion question, string? zone) =>
        new(question.Answers, question.Revision, Guid.CreateVersion7(), Short(zone));

    public static DateForm Parse(IFormCollection form, DateQuestion question) => new(
        question.Evenings
            .Select(evening => (evening.Id, Said: Word(form[Field(evening.Id)].ToString())))
            .Where(row => row.Said is not null)
            .ToDictionary(row => row.Id, row => row.Said!.Value),
        int.TryParse(form["revision"], NumberStyles.None, CultureInfo.InvariantCulture, out var revision) ? revision : 0,
        Guid.TryParse(form["key"], out var key) ? key : Guid.CreateVersion7(),
        Short(form["zone"]));

    public DateReply ToReply() => new(Answers, Revision, Key);

    /// <summary>Name of the field for an evening.</summary>
    public static string Field(string evening) => $"evening-{evening}";

    internal static string Short(string? zone) => zone is { Length: <= LongestZone } ? zone.Trim() : "";

    private static DateAnswer? Word(string text) => text switch
    {
        nameof(DateAnswer.Works) => DateAnswer.Works,
        nameof(DateAnswer.AtAPinch) => DateAnswer.AtAPinch,
        nameof(DateAnswer.No) => DateAnswer.No,
        _ => null,
    };
}
