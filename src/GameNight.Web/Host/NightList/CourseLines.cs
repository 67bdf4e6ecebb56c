using GameNight.Planning.Appetite;
using GameNight.Web.Wording;
using GameNight.Web.Wording.Texts;

namespace GameNight.Web.Host.NightList;

/// <summary>Courses as a host types them: one on a line, with how much of the appetite it takes in front of it.</summary>
internal static class CourseLines
{
    public static string Write(IReadOnlyList<Course> courses) =>
        string.Join('\n', courses.Select(course => Phrase.Fill(NightPages.CourseLine, Say(course.Takes), course.Name)));

    /// <summary>A line that names no such word in front takes a little; what is too long or too much is refused later.</summary>
    public static IReadOnlyList<Course> Read(string text) =>
        [.. text.Split('\n', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries).Select(Line)];

    private static Course Line(string line)
    {
        foreach (var takes in Enum.GetValues<AppetiteTaken>())
        {
            var (before, after) = Phrase.Around(Phrase.Fill(NightPages.CourseLine, Say(takes), Phrase.Kept));
            if (line.Length > before.Length + after.Length && line.StartsWith(before.TrimEnd(), StringComparison.CurrentCultureIgnoreCase))
            {
                return new Course(line[before.TrimEnd().Length..].Trim(), takes);
            }
        }

        return new Course(line, AppetiteTaken.ALittle);
    }

    private static string Say(AppetiteTaken takes) => takes switch
    {
        AppetiteTaken.ALittle => NightPages.TakesALittle,
        AppetiteTaken.Some => NightPages.TakesSome,
        AppetiteTaken.ALot => NightPages.TakesALot,
    };
}
