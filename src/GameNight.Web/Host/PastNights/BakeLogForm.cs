using System.Globalization;
using GameNight.Nights.PastNights;
using GameNight.Nights.Records;
using GameNight.Planning.Quantities;
using GameNight.Web.Wording;
using GameNight.Web.Wording.Texts;

namespace GameNight.Web.Host.PastNights;

/// <summary>A guest's line of the form.</summary>
public sealed class CameField(GuestId guest, string name, int heads, int expected)
{
    public GuestId Guest => guest;

    /// <summary>Empty for somebody who has left the group.</summary>
    public string Name => name;

    public int Heads { get; private set; } = heads;

    /// <summary>One tap: came as expected, or not.</summary>
    public void Toggle() => Heads = Heads > 0 ? 0 : Math.Max(1, expected);

    public void Add(int heads) => Heads = Math.Clamp(Heads + heads, 1, LogCheck.MostHeads);
}

/// <summary>A pie's line of the form.</summary>
public sealed class PieField(int number, string left, string remark, bool won)
{
    public int Number => number;
    public string Left { get; set; } = left;
    public string Remark { get; set; } = remark;
    public bool Won { get; set; } = won;
}

/// <summary>What a host writes down after a night, as text fields; who came is filled in from the answers.</summary>
public sealed class BakeLogForm
{
    public const string BakedField = "baked";
    public const string LeftField = "left";
    public const string ChangeField = "to-change";

    private BakeLogForm(IReadOnlyList<CameField> came, IReadOnlyList<PieField> pies)
    {
        Came = came;
        Pies = pies;
    }

    public IReadOnlyList<CameField> Came { get; }
    public IReadOnlyList<PieField> Pies { get; }
    public string Baked { get; set; } = "";
    public string Left { get; set; } = "";
    public string ToChange { get; set; } = "";

    public int People => Came.Sum(row => row.Heads);

    public static BakeLogForm Of(PastNightView night)
    {
        var written = night.Log?.Pies.ToDictionary(pie => pie.Number) ?? [];
        return new BakeLogForm(
            [.. night.Guests.Select(guest => new CameField(guest.Id, guest.Name, guest.Heads ?? guest.Expected, guest.Expected))],
            [.. night.Pies.Kinds.SelectMany(kind => kind.Numbers).Order().Select(number =>
                written.TryGetValue(number, out var pie) ? new PieField(number, Text(pie.SlicesLeft), pie.Remark, pie.Won)
                    : new PieField(number, "", "", won: false))])
        {
            // Most nights bake what was planned; the number stands there to be corrected.
            Baked = Text((night.Log is null ? night.Slices.PlannedPies : night.Log.Baked)?.Value),
            Left = Text(night.Log?.SlicesLeft),
            ToChange = night.Log?.ToChange ?? "",
        };
    }

    public static string LeftOf(int pie) => $"left-{pie.ToString(CultureInfo.InvariantCulture)}";

    public static string RemarkOf(int pie) => $"remark-{pie.ToString(CultureInfo.InvariantCulture)}";

    public static string HeadsOf(GuestId guest) => $"heads-{guest}";

    /// <returns>Null with the problems by field when something cannot be read.</returns>
    public (BakeLogFacts? Facts, IReadOnlyDictionary<string, string> Problems) Read(int slicesPerPie)
    {
        var numbers = new TypedNumbers("log");
        var baked = Baked.Trim().Length == 0 ? (PieCount?)null
            : new PieCount(numbers.ReadWhole(BakedField, Baked, 0, PieCount.Highest));
        var facts = new BakeLogFacts(
            [.. Came.Select(row => new CameFacts(row.Guest.Value, row.Heads))],
            baked,
            Number(LeftField, Left, (baked?.Value ?? PieCount.Highest) * slicesPerPie),
            [.. Pies.Select(pie => new PieOutcome(pie.Number, Number(LeftOf(pie.Number), pie.Left, slicesPerPie), pie.Remark, pie.Won))],
            ToChange);
        return (numbers.Problems.Count == 0 ? facts : null, numbers.Problems);

        double? Number(string field, string text, double high) =>
            text.Trim().Length == 0 ? null : numbers.Read(field, text, 0, high);
    }

    /// <summary>What the desk refused, beside the field it is about.</summary>
    public static Dictionary<string, string> ByField(IEnumerable<LogProblem> problems) => problems
        .GroupBy(problem => problem.Field switch
        {
            LogField.Heads => $"heads-{problem.Subject}",
            LogField.Baked => BakedField,
            LogField.Left => LeftField,
            LogField.LeftOfPie => $"left-{problem.Subject}",
            LogField.Remark => $"remark-{problem.Subject}",
            LogField.ToChange => ChangeField,
        })
        .ToDictionary(same => same.Key, same => LogProblemText.Say(same.First()));

    /// <summary>Where this form and that of another host differ, in words.</summary>
    public IReadOnlyList<string> DifferencesTo(BakeLogForm theirs)
    {
        var yours = Values().ToDictionary(row => row.Field, row => row.Value);
        return [.. theirs.Values()
            .Select(row => (row.Name, Theirs: row.Value, Yours: yours.GetValueOrDefault(row.Field, "")))
            .Where(row => row.Theirs != row.Yours)
            .Select(row => Phrase.Fill(PastNightPages.TheyHave, row.Name, Shown(row.Theirs), Shown(row.Yours)))];
    }

    private static string Shown(string value) => value.Length == 0 ? PastNightPages.Nothing : value;

    private IEnumerable<(string Field, string Name, string Value)> Values() =>
    [
        .. Came.Select(row => (HeadsOf(row.Guest), row.Name.Length > 0 ? row.Name : PastNightPages.SomebodyWhoLeft, Heads(row))),
        (BakedField, PastNightPages.PiesBaked, Baked),
        (LeftField, PastNightPages.SlicesLeft, Left),
        .. Pies.SelectMany(pie => new[]
        {
            (LeftOf(pie.Number), Phrase.Fill(PastNightPages.SlicesLeftOfPie, pie.Number), pie.Left),
            (RemarkOf(pie.Number), Phrase.Fill(PastNightPages.HowPieWent, pie.Number), pie.Remark),
            ($"won-{pie.Number}", Phrase.Fill(PastNightPages.Pie, pie.Number), pie.Won ? PastNightPages.PieWon : ""),
        }),
        (ChangeField, PastNightPages.NextTime, ToChange),
    ];

    private static string Heads(CameField row) => row.Heads switch
    {
        0 => PastNightPages.DidNotCome,
        1 => PastNightPages.CameAlone,
        var heads => Phrase.Fill(PastNightPages.CameInAll, heads),
    };

    private static string Text(double? value) => value is { } number ? TypedNumbers.Text(number) : "";
}
