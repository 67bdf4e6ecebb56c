using GameNight.Planning.Dough;
using GameNight.Planning.Quantities;
using GameNight.Planning.Reference;
using GameNight.Web.Wording;
using GameNight.Web.Wording.Texts;
using NodaTime;

namespace GameNight.Web.Host.Members;

/// <summary>One row of typed text: a flour, a further ingredient, a preferment or a soaker. What it has no use for stays empty.</summary>
public sealed class DoughPartRow
{
    public string Name { get; set; } = "";
    public string OfFlour { get; set; } = "";
    public string Water { get; set; } = "";
    public string Protein { get; set; } = "";
    public string Hours { get; set; } = "";
    public string OfYeast { get; set; } = "";
}

/// <summary>The parts that only some doughs have, as text fields. Field names are those of the planner's check.</summary>
public sealed class DoughPartsForm(DoughRanges ranges)
{
    public const int MostFlours = 6;
    public const int MostExtras = 12;
    private const int LongestName = Planning.SnapshotCheck.LongestId;

    public List<DoughPartRow> Flours { get; } = [];
    public List<DoughPartRow> Extras { get; } = [];
    public DoughPartRow? Preferment { get; set; }
    public DoughPartRow? Soaker { get; set; }

    private IReadOnlyList<string>? _read;

    /// <summary>
    /// The host has read the labels of all the parts above that have a name of the host's own. Of a part that is added or
    /// named anew nobody has.
    /// </summary>
    public bool LabelsAreRead
    {
        get => _read is { } names && names.SequenceEqual(OwnNames);
        set => _read = value ? OwnNames : null;
    }

    public LabelForm Label { get; private init; } = new();

    /// <summary>There is something whose label only the host can read.</summary>
    public bool HasOwnParts => Flours.Count > 0 || Extras.Count > 0 || Soaker is not null;

    private List<string> OwnNames =>
        [.. Flours.Select(row => row.Name.Trim()), "", .. Extras.Select(row => row.Name.Trim()), "", .. Soaker is { } soaker ? [soaker.Name.Trim()] : Array.Empty<string>()];

    public bool IsEmpty => Flours.Count == 0 && Extras.Count == 0 && Preferment is null && Soaker is null;

    public static DoughPartsForm Of(DoughFormula formula, DoughRanges ranges)
    {
        var form = new DoughPartsForm(ranges)
        {
            Label = formula.PartsLabel is { } label ? LabelForm.Of(label) : new(),
            Preferment = formula.Preferment is { } preferment
                ? new DoughPartRow
                {
                    Name = preferment.Name,
                    OfFlour = Text(preferment.OfFlour),
                    Water = Text(preferment.WaterPerFlour),
                    Hours = TypedNumbers.Text(preferment.Before.TotalHours),
                    OfYeast = Text(preferment.OfYeast),
                }
                : null,
            Soaker = formula.Soaker is { } soaker
                ? new DoughPartRow { Name = soaker.Name, OfFlour = Text(soaker.OfFlour), Water = Text(soaker.WaterPerFlour) }
                : null,
        };
        form.Flours.AddRange((formula.Flours ?? []).Select(flour => new DoughPartRow
        {
            Name = flour.Name,
            OfFlour = Text(flour.OfFlour),
            Water = Text(flour.Absorption),
            Protein = Text(flour.Protein),
        }));
        form.Extras.AddRange((formula.Extras ?? []).Select(extra => new DoughPartRow
        {
            Name = extra.Name,
            OfFlour = Text(extra.OfFlour),
            Water = Text(extra.Water),
        }));
        form.LabelsAreRead = formula.PartsLabel is not null;
        return form;
    }

    /// <summary>A blend starts with what is left to a hundred.</summary>
    public void AddFlour()
    {
        var left = 100 - Flours.Sum(flour => double.TryParse(flour.OfFlour, System.Globalization.CultureInfo.InvariantCulture, out var share) ? share : 0);
        Flours.Add(new DoughPartRow { OfFlour = left is > 0 and <= 100 ? TypedNumbers.Text(left) : "" });
    }

    /// <summary>The formula with the parts that are typed here; what cannot be read is noted.</summary>
    public DoughFormula Onto(DoughFormula formula, TypedNumbers numbers) => formula with
    {
        Flours = Flours.Count == 0 ? null : [.. Flours.Select((row, index) => ReadFlour(row, $"flours[{index}]", numbers))],
        Extras = Extras.Count == 0 ? null : [.. Extras.Select((row, index) => ReadExtra(row, $"extras[{index}]", numbers))],
        Preferment = Preferment is null ? null : ReadPreferment(Preferment, numbers),
        Soaker = Soaker is null ? null : new Soaker(
            Name("soaker.name", Soaker.Name, numbers),
            Percent("soaker.ofFlour", Soaker.OfFlour, ranges.SoakerFlour, numbers),
            Percent("soaker.waterPerFlour", Soaker.Water, ranges.SoakerWater, numbers)),
        PartsLabel = HasOwnParts && LabelsAreRead ? Label.Composition : null,
    };

    private FlourPart ReadFlour(DoughPartRow row, string path, TypedNumbers numbers) => new(
        Name($"{path}.name", row.Name, numbers),
        new Share(numbers.Read($"{path}.ofFlour", row.OfFlour, 0, 100) / 100),
        Percent($"{path}.absorption", row.Water, ranges.Absorption, numbers),
        Percent($"{path}.protein", row.Protein, ranges.Protein, numbers));

    private ExtraIngredient ReadExtra(DoughPartRow row, string path, TypedNumbers numbers) => new(
        Name($"{path}.name", row.Name, numbers),
        Percent($"{path}.ofFlour", row.OfFlour, ranges.Extra, numbers),
        new Share(numbers.Read($"{path}.water", row.Water, 0, 100) / 100));

    private Preferment ReadPreferment(DoughPartRow row, TypedNumbers numbers) => new(
        Name("preferment.name", row.Name, numbers),
        Percent("preferment.ofFlour", row.OfFlour, ranges.PrefermentFlour, numbers),
        Percent("preferment.waterPerFlour", row.Water, ranges.PrefermentWater, numbers),
        Duration.FromHours(numbers.Read("preferment.beforeMinutes", row.Hours, ranges.PrefermentHours.Low, ranges.PrefermentHours.High)),
        new Share(numbers.Read("preferment.ofYeast", row.OfYeast, 0, 100) / 100));

    private static string Name(string field, string typed, TypedNumbers numbers)
    {
        var name = typed.Trim();
        if (name.Length is < 1 or > LongestName)
        {
            numbers.Refuse(field, Phrase.Fill(FormulaPages.NameNeeded, LongestName));
        }

        return name;
    }

    private static Share Percent(string field, string text, ValidRange range, TypedNumbers numbers) =>
        new(numbers.Read(field, text, Math.Round(range.Low * 100, 6), Math.Round(range.High * 100, 6)) / 100);

    private static string Text(Share share) => TypedNumbers.Text(share.Percent);
}
