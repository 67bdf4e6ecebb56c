using GameNight.Planning.Appetite;
using GameNight.Planning.Guests;
using GameNight.Planning.Quantities;
using static GameNight.Planning.SnapshotCheck;

namespace GameNight.Planning;

/// <summary>Ranges of what only the forecast reads: past nights, households, courses, length of the evening, weights.</summary>
internal static class ForecastCheck
{
    private const int MostPastNights = 60;
    private const int LongestAgo = 1000;
    private const double MostSlices = 60;
    private const double LongestHours = 24;

    public static IEnumerable<SnapshotProblem> Problems(NightSnapshot night, AppetiteTable table)
    {
        SnapshotProblem?[] all =
        [
            night.ShortageWeight is { } weight
                ? Range("shortageWeight", weight, table.ShortageWeight.Low, table.ShortageWeight.High)
                : null,
            night.Length is { } length ? Range("lengthMinutes", length.TotalMinutes, 0, LongestHours * 60) : null,
            night.Players?.Fewest is { } fewest ? Range("players.fewest", fewest, 1, PlayersWanted.MostPlayers) : null,
            night.Players?.Most is { } most ? Range("players.most", most, 1, PlayersWanted.MostPlayers) : null,
            night.Players is { } players && players.Fewest > players.Most ? new("players", SnapshotFault.BackToFront) : null,
            .. Courses(night.Courses ?? []),
            .. Late(night.Late),
            .. night.Guests.SelectMany(Guest),
        ];
        return all.OfType<SnapshotProblem>();
    }

    private static IEnumerable<SnapshotProblem?> Courses(IReadOnlyList<Course> courses) =>
    [
        courses.Count > EveningAppetite.MostCourses
            ? new("courses", SnapshotFault.WrongCount, courses.Count, 0, EveningAppetite.MostCourses)
            : null,
        courses.Any(course => course.Name.Length is 0 or > LongestId) ? new("courses.name", SnapshotFault.BadId, 0, 1, LongestId) : null,
    ];

    internal static IEnumerable<SnapshotProblem> Late(LateChoices? late)
    {
        SnapshotProblem?[] all =
        [
            late?.BallsKept is { } kept ? Range("late.ballsKept", kept, 1, PieCount.Highest) : null,
            late?.Redivided is { } balls ? Range("late.redivided.balls", balls.Balls.Value, 1, PieCount.Highest) : null,
            late?.Redivided is { } size ? Range("late.redivided.diameterCentimetres", size.Diameter.Value, 5, 100) : null,
            late?.Redivided is { } dough ? Range("late.redivided.thicknessGramsPerCm2", dough.ThicknessGramsPerCm2, 0.05, 3) : null,
            late?.Rescue is { } rescue ? Range("late.rescue.balls", rescue.Balls.Value, 1, PieCount.Highest) : null,
            late?.Rescue is { } times && times.BallAt <= times.MixAt ? new("late.rescue.ballAt", SnapshotFault.BackToFront) : null,
            late?.Rescue is { } bowl ? AboveRange("late.rescue.minutesToBall", (bowl.BallAt - bowl.MixAt).TotalMinutes, 0, LongestHours * 60) : null,
            late?.Accepted is { } accepted ? Range("late.accepted", accepted.Value, 0, 1) : null,
        ];
        return all.OfType<SnapshotProblem>();
    }

    private static IEnumerable<SnapshotProblem?> Guest(GuestSnapshot guest)
    {
        var path = $"guests[{guest.Id}]";
        yield return guest.Household?.Length is 0 or > LongestId ? new($"{path}.household", SnapshotFault.BadId, 0, 1, LongestId) : null;
        yield return guest.Past?.Count > MostPastNights
            ? new($"{path}.past", SnapshotFault.WrongCount, guest.Past.Count, 0, MostPastNights)
            : null;
        yield return guest.Stay?.ComesAfter is { } comes ? Range($"{path}.stay.comesAfterMinutes", comes.TotalMinutes, 0, LongestHours * 60) : null;
        yield return guest.Stay?.LeavesAfter is { } leaves ? Range($"{path}.stay.leavesAfterMinutes", leaves.TotalMinutes, 0, LongestHours * 60) : null;
        yield return guest.Stay is { } stay && stay.LeavesAfter <= stay.ComesAfter ? new($"{path}.stay", SnapshotFault.BackToFront) : null;
        foreach (var eater in guest.Eaters)
        {
            yield return eater.Stays is { } stays ? Range($"{path}.eaters[{eater.Id}].stays", stays.Value, 0, 1) : null;
        }

        foreach (var past in guest.Past ?? [])
        {
            yield return Range($"{path}.past.nightsAgo", past.NightsAgo, 1, LongestAgo);
            yield return past.Slices is { } slices ? Range($"{path}.past.slices", slices, 0, MostSlices) : null;
            yield return past.Slice is { } slice ? Range($"{path}.past.sliceGrams", slice.Value, 1, 1000) : null;
            yield return past.Appetite is { } appetite ? Range($"{path}.past.appetite", appetite.Value, 0.05, 5) : null;
            yield return past.Served is { } served ? Range($"{path}.past.served", served.Value, 0, 1) : null;
        }
    }
}
