using System.Globalization;
using System.Text.RegularExpressions;
using GameNight.Planning.Timeline;

namespace GameNight.Reference.Tests.Timeline;

/// <summary>A published project with shared resources and time lags, and what is known of its shortest length.</summary>
/// <param name="Lengths">Of all tasks; the first and the last have none.</param>
/// <param name="Demands">Per task, of each resource.</param>
internal sealed partial record ProjectInstance(
    IReadOnlyList<int> Lengths, IReadOnlyList<Lag> Lags, IReadOnlyList<int> Capacities, IReadOnlyList<IReadOnlyList<int>> Demands)
{
    /// <summary>No schedule worth finding is longer: every task alone, every lag waited out.</summary>
    public int Horizon => Lengths.Select((length, task) => Math.Max(length, Lags.Where(lag => lag.From == task).Select(lag => lag.Minutes).DefaultIfEmpty(0).Max())).Sum();

    public static ProjectInstance Read(string file) =>
        file.EndsWith(".sch", StringComparison.Ordinal) ? ReadLags(File.ReadAllLines(file)) : ReadPrecedence(File.ReadAllLines(file));

    /// <summary>The shortest length found within the limit, and whether nothing is shorter.</summary>
    public FoundStarts Solve(SearchWay way, double limit, CancellationToken cancellation)
    {
        var last = Lengths.Count - 1;
        var model = new ScheduleModel(
            Lengths,
            [.. Lengths.Select((_, task) => new[] { (0, task == 0 ? 0 : Horizon) })],
            [.. Lags, .. Lengths.Select((length, task) => new Lag(task, last, length)).Where(lag => lag.From != last)],
            Capacities.Select((capacity, resource) => new SharedResource(capacity, [.. Demands.Select((demand, task) => (task, demand[resource]))])));
        model.MinimizeStart(last);
        return model.Run(null, limit, cancellation, way);
    }

    /// <summary>By plain code: every lag and every capacity in every minute.</summary>
    public bool IsKeptBy(IReadOnlyList<int> starts) =>
        Lags.All(lag => starts[lag.To] - starts[lag.From] >= lag.Minutes)
        && Capacities.Select((capacity, resource) => (capacity, resource)).All(one => starts.Distinct().All(minute =>
            Enumerable.Range(0, starts.Count).Where(task => starts[task] <= minute && minute < starts[task] + Lengths[task]).Sum(task => Demands[task][one.resource]) <= one.capacity));

    /// <summary>Least and greatest lags: numbers of tasks and resources, successors with bracketed lags from start to start, demands, capacities.</summary>
    private static ProjectInstance ReadLags(string[] lines)
    {
        var rows = lines.Where(line => line.Trim().Length > 0).ToList();
        var tasks = Numbers(rows[0])[0] + 2;
        var lags = new List<Lag>();
        for (var task = 0; task < tasks; task++)
        {
            var plain = Numbers(Bracketed().Replace(rows[1 + task], ""));
            var minutes = Bracketed().Matches(rows[1 + task]).Select(match => Number(match.Groups[1].Value)).ToList();
            lags.AddRange(plain.Skip(3).Zip(minutes, (to, lag) => new Lag(task, to, lag)));
        }

        var work = rows.Skip(1 + tasks).Take(tasks).Select(Numbers).ToList();
        return new ProjectInstance(
            [.. work.Select(row => row[2])], lags, Numbers(rows[1 + 2 * tasks]), [.. work.Select(row => (IReadOnlyList<int>)[.. row.Skip(3)])]);
    }

    /// <summary>Each task after its predecessors: blocks under headings, tasks counted from 1.</summary>
    private static ProjectInstance ReadPrecedence(string[] lines)
    {
        var successors = After("PRECEDENCE RELATIONS", 2);
        var work = After("REQUESTS/DURATIONS", 3);
        var lengths = work.Select(row => row[2]).ToList();
        return new ProjectInstance(
            lengths,
            [.. successors.SelectMany(row => row.Skip(3).Select(to => new Lag(row[0] - 1, to - 1, lengths[row[0] - 1])))],
            After("RESOURCEAVAILABILITIES", 2)[0],
            [.. work.Select(row => (IReadOnlyList<int>)[.. row.Skip(3)])]);

        List<List<int>> After(string heading, int headLines) =>
        [
            .. lines.SkipWhile(line => !line.StartsWith(heading, StringComparison.Ordinal)).Skip(headLines)
                .TakeWhile(line => line.Length > 0 && !line.StartsWith('*')).Select(Numbers),
        ];
    }

    private static List<int> Numbers(string line) => [.. line.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries).Select(Number)];

    private static int Number(string text) => int.Parse(text, CultureInfo.InvariantCulture);

    [GeneratedRegex(@"\[(-?\d+)\]")]
    private static partial Regex Bracketed();
}
