using System.Globalization;
using GameNight.Planning.Timeline;

namespace GameNight.Reference.Tests.Timeline;

/// <summary>
/// The schedule model against published projects: PSPLIB (Kolisch and Sprecher, 1996) and projects with greatest lags
/// (Kolisch, Schwindt and Sprecher, 1999; Franck, Neumann and Schwindt, 2001). The files are read where they lie and are no
/// part of this project: <c>GAMENIGHT_SCHEDULING_INSTANCES</c> names their folder.
/// </summary>
public class PublishedProjectTests
{
    private const string Folder = "GAMENIGHT_SCHEDULING_INSTANCES";

    /// <summary>Deterministic solver time for one of them: about ten seconds of one core at the most.</summary>
    private const double Limit = 10;

    /// <summary>For sets of which some stay open anyway.</summary>
    private const double ShortLimit = 3;

    private const string NoSchedule = "unsat";

    /// <summary>Small enough to be decided within the limit, as published tables of solvers say.</summary>
    private static readonly string[] AlwaysDecided = ["j30", "smj10", "smj20", "smj30", "ubo10", "ubo20"];

    /// <summary>Each way of searching proves the same; the sets that stay open in part are long enough to wait for once.</summary>
    public static TheoryData<string, string> Sets =>
    [
        .. AlwaysDecided.SelectMany(set => Enum.GetNames<SearchWay>().Select(way => (set, way))),
        ("j60", nameof(SearchWay.Relaxed)), ("ubo50", nameof(SearchWay.Relaxed)),
    ];

    [Theory]
    [MemberData(nameof(Sets))]
    public void The_model_reaches_every_published_optimum_and_contradicts_no_bound(string set, string way)
    {
        var folder = Environment.GetEnvironmentVariable(Folder);
        Assert.SkipWhen(string.IsNullOrEmpty(folder), $"Published projects skipped: {Folder} names no folder.");
        var rows = File.ReadLines(Path.Combine(folder!, "instances.csv")).Skip(1).Select(line => line.Split(',')).Where(row => row[1] == set).ToList();
        Assert.NotEmpty(rows);

        Assert.All(rows, row =>
        {
            var instance = ProjectInstance.Read(Path.Combine(folder!, row[0]));
            var found = instance.Solve(Enum.Parse<SearchWay>(way), AlwaysDecided.Contains(set) ? Limit : ShortLimit, TestContext.Current.CancellationToken);

            Assert.True(found.Starts is null || instance.IsKeptBy(found.Starts), $"{row[0]}: a lag or a capacity does not hold");
            if (row[2] == NoSchedule)
            {
                Assert.True(found.Starts is null, $"{row[0]} has no schedule");
                Assert.True(found.IsProved, $"{row[0]}: not proved that there is none");
                return;
            }

            Assert.False(found is { Starts: null, IsProved: true }, $"{row[0]} has a schedule");
            var (low, high) = Interval(row[2]);
            if (found.Starts is { } starts)
            {
                Assert.True(starts[^1] >= low, $"{row[0]}: {starts[^1]} is below the published bound {low}");
                Assert.True(!found.IsProved || starts[^1] <= high, $"{row[0]}: {starts[^1]} is proved, published is {high}");
            }

            if (AlwaysDecided.Contains(set))
            {
                Assert.True(found.IsProved, $"{row[0]} was not decided");
                Assert.InRange(found.Starts![^1], low, high);
            }
        });
    }

    /// <summary>"43"; "194..216", or "..69", where only so much is known.</summary>
    private static (int Low, int High) Interval(string published)
    {
        var ends = published.Split("..");
        return (ends[0].Length == 0 ? 0 : int.Parse(ends[0], CultureInfo.InvariantCulture), int.Parse(ends[^1], CultureInfo.InvariantCulture));
    }
}
