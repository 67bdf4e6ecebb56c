using GameNight.Planning.Quantities;
using NodaTime;

namespace GameNight.Planning.Appetite;

/// <summary>What other courses and the length of an evening make of everybody's appetite for pies.</summary>
public static class EveningAppetite
{
    public const int MostCourses = 12;

    /// <summary>1 is the appetite of a usual evening with nothing beside the pies.</summary>
    public static double Factor(IReadOnlyList<Course>? courses, Duration? length, AppetiteTable table) =>
        Left(courses, table) * OfLength(length, table);

    internal static IEnumerable<Reason> Reasons(IReadOnlyList<Course>? courses, Duration? length, AppetiteTable table)
    {
        if (courses is { Count: > 0 })
        {
            yield return new CoursesOnTheTable(courses.Count, new Share(Left(courses, table)));
        }

        if (length is { } lasts && OfLength(lasts, table) != 1)
        {
            yield return new EveningLasts(lasts, new Share(OfLength(lasts, table)));
        }
    }

    /// <summary>Each course takes its part of what the others leave: however many there are, some appetite stays.</summary>
    private static double Left(IReadOnlyList<Course>? courses, AppetiteTable table) =>
        (courses ?? []).Aggregate(1.0, (left, course) => left * (1 - table.Of(course.Takes).Share));

    /// <summary>Straight lines between the rows, level beyond them.</summary>
    private static double OfLength(Duration? length, AppetiteTable table)
    {
        if (length is not { } lasts)
        {
            return 1;
        }

        var rows = table.Evening.OrderBy(row => row.Hours).ToList();
        var hours = Math.Clamp(lasts.TotalHours, rows[0].Hours, rows[^1].Hours);
        var next = rows.FindIndex(1, row => row.Hours >= hours);
        var (from, to) = (rows[next - 1], rows[next]);
        return from.Factor + (to.Factor - from.Factor) * (hours - from.Hours) / (to.Hours - from.Hours);
    }
}
