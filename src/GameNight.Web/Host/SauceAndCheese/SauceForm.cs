using System.Globalization;
using GameNight.Planning;
using GameNight.Planning.Foods;
using GameNight.Planning.Quantities;
using GameNight.Planning.Sauce;
using GameNight.Web.Wording;
using GameNight.Web.Wording.Texts;
using NodaTime;

namespace GameNight.Web.Host.SauceAndCheese;

/// <summary>A sauce formula as text fields. Its parts are grams in all measures: it is weighed.</summary>
/// <param name="shown">What the fields showed.</param>
public sealed class SauceForm(SauceFormula shown, SauceTable table, Measures measures)
{
    private static readonly char[] BetweenTins = [' ', ',', ';'];

    public string BaseId { get; set; } = "";
    public TomatoTin Tin { get; set; }
    public string Tomato { get; set; } = "";
    public Dictionary<Food, string> Parts { get; } = [];
    public string Simmer { get; set; } = "";
    public string Salt { get; set; } = "";
    public string TinSalt { get; set; } = "";
    public SauceKeeps Keeps { get; set; }
    public bool WineIsVegan { get; set; }
    public string PotDiameter { get; set; } = "";
    public string PotHolds { get; set; } = "";
    public string Evaporates { get; set; } = "";
    public string Tins { get; set; } = "";

    /// <summary>What may go in, in the order of the fields.</summary>
    public IEnumerable<Food> Foods => table.Parts.Select(part => part.Food);

    /// <summary>Key of a part's field among the problems.</summary>
    public static string FieldOf(Food food) => $"part{food}";

    public static SauceForm Of(HouseSauce sauce, SauceTable table, Measures measures)
    {
        var formula = sauce.Formula;
        var form = new SauceForm(formula, table, measures)
        {
            BaseId = sauce.BaseId,
            Tin = formula.Tin,
            Tomato = TypedNumbers.Text(formula.Tomato.Value),
            Simmer = TypedNumbers.Text(formula.Simmer.TotalMinutes),
            Salt = TypedNumbers.Text(formula.Salt.Percent),
            TinSalt = formula.TinSalt is { } label ? TypedNumbers.Text(label.Percent) : "",
            Keeps = formula.Keeps,
            WineIsVegan = formula.WineIsVegan,
            PotDiameter = measures.Length.Typed(formula.Pot.Diameter.Value),
            PotHolds = measures.Mass.Typed(formula.Pot.Holds.Value),
            Evaporates = Rate(formula.Pot),
            Tins = string.Join(", ", (sauce.Tins ?? []).Select(tin => TypedNumbers.Text(tin.Value))),
        };
        foreach (var food in form.Foods)
        {
            form.Parts[food] = formula.Parts.FirstOrDefault(part => part.Food == food) is { } part ? TypedNumbers.Text(part.Grams.Value) : "";
        }

        return form;
    }

    /// <returns>The sauce, or the fields that cannot be read with what would be right and why.</returns>
    public (HouseSauce? Sauce, IReadOnlyDictionary<string, string> Problems) Read()
    {
        var (numbers, ranges) = (new TypedNumbers("sauce.formula"), table.Ranges);
        var foodOf = table.Parts.ToDictionary(row => FieldOf(row.Food), row => row.Food);
        var tomato = numbers.Read("tomatoGrams", Tomato, ranges.TomatoGrams.Low, ranges.TomatoGrams.High);
        var partsFor = numbers.Problems.Count == 0 ? tomato : shown.Tomato.Value;
        var parts = new List<FoodPart>();
        foreach (var row in table.Parts)
        {
            var text = Parts.GetValueOrDefault(row.Food, "");
            var grams = text.Trim().Length == 0 ? 0 : numbers.Read(FieldOf(row.Food), text, 0, Math.Round(row.MostPerTomato * partsFor, 2));
            if (grams > 0)
            {
                parts.Add(new FoodPart(row.Food, new Grams(grams)));
            }
        }

        var formula = new SauceFormula(
            Tin,
            new Grams(tomato),
            parts,
            Percent("salt", Salt, ranges.Salt.High),
            Duration.FromMinutes(numbers.Read("simmerMinutes", Simmer, ranges.SimmerMinutes.Low, ranges.SimmerMinutes.High)),
            ReadPot(numbers),
            Keeps,
            TinSalt.Trim().Length == 0 ? null : Percent("tinSalt", TinSalt, ranges.TinSalt.High),
            WineIsVegan);
        var problems = numbers.Problems.ToDictionary(
            problem => problem.Key,
            problem => foodOf.TryGetValue(problem.Key, out var food) ? ProblemText.WithReason(problem.Value, $"sauce.formula.parts[{food}].grams") : problem.Value);
        var tins = ReadTins(problems);
        if (BaseId.Length == 0)
        {
            problems["baseId"] = SaucePages.ChooseBase;
        }

        return (problems.Count == 0 ? new HouseSauce(BaseId, formula, tins) : null, problems);

        Share Percent(string field, string text, double high) => new(Math.Round(numbers.Read(field, text, 0, Math.Round(high * 100, 6)) / 100, 8));
    }

    private static string Rate(SaucePot pot) => TypedNumbers.Text(Math.Round(pot.EvaporationGramsPerMinute, 1));

    /// <summary>What simmers off goes with the mouth of the pot: an untouched figure keeps its share of the area.</summary>
    private SaucePot ReadPot(TypedNumbers numbers)
    {
        var ranges = table.Ranges;
        var diameter = numbers.Read(
            "diameterCentimetres", PotDiameter, ranges.PotDiameterCentimetres.Low, ranges.PotDiameterCentimetres.High, measures.Length, shown.Pot.Diameter.Value);
        var holds = numbers.Read("holdsGrams", PotHolds, ranges.PotHoldsGrams.Low, ranges.PotHoldsGrams.High, measures.Mass, shown.Pot.Holds.Value);
        var area = Math.PI * diameter * diameter / 4;
        var perCm2 = Evaporates == Rate(shown.Pot)
            ? shown.Pot.EvaporationGramsPerMinutePerCm2
            : numbers.Read("evaporates", Evaporates, 0, Math.Floor(ranges.EvaporationGramsPerMinutePerCm2.High * area)) / area;
        return new SaucePot(new Centimetres(diameter), new Grams(holds), perCm2);
    }

    private List<Grams>? ReadTins(Dictionary<string, string> problems)
    {
        var range = table.Ranges.TinGrams;
        var tins = new List<Grams>();
        foreach (var text in Tins.Split(BetweenTins, StringSplitOptions.RemoveEmptyEntries))
        {
            if (!int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var grams) || !range.Holds(grams))
            {
                problems["tins"] = ProblemText.WithReason(Phrase.Fill(SaucePages.TinsUnread, QuantityText.Exact(range.Low), QuantityText.Exact(range.High)), "sauce.tins");
                return null;
            }

            tins.Add(new Grams(grams));
        }

        return tins.Count == 0 ? null : tins;
    }
}
