using System.Text.Json;
using System.Text.Json.Serialization;
using GameNight.Planning.Quantities;
using GameNight.Web.Wording.Texts;

namespace GameNight.Web.Wording;

/// <summary>Foods whose spoons and cups are known. Coarse salt, for one, is not among them.</summary>
public enum HouseholdFood
{
    TableSalt,
    ActiveDryYeast,
    InstantYeast,
    GranulatedSugar,
    Honey,
    OliveOil,
    Water,
    BreadFlour,
    AllPurposeFlour,
    WholeWheatFlour,
}

/// <summary>What one US teaspoon and cup of a food weigh; a measure that nobody has weighed is missing.</summary>
public sealed record HouseholdMeasure(HouseholdFood Food, string Source, double? GramsPerTeaspoon = null, double? GramsPerCup = null);

/// <summary>
/// Spoons and cups, rounded to those that lie in a drawer. Only for foods with a weight of their own in
/// <c>shared/reference/household.json</c>; a mass says nothing about a volume otherwise.
/// </summary>
public static class Household
{
    public const string Table = "household.json";
    private const double TeaspoonsPerTablespoon = 3;
    private const double FluidOuncesPerCup = 8;
    private const double SmallestCup = 0.25;
    private const double SmallestSpoon = 0.125;

    /// <summary>A spoon that is further off than this from what is weighed misleads (our own choice).</summary>
    private const double SpoonsMayBeOff = 0.1;

    /// <summary>Water is read off a jug more closely, and a dough feels it (our own choice).</summary>
    private const double WaterMayBeOff = 0.02;

    private static readonly string[] Eighths = ["", "⅛", "¼", "⅜", "½", "⅝", "¾", "⅞"];

    private static readonly JsonSerializerOptions Json = new(JsonSerializerDefaults.Web)
    {
        Converters = { new JsonStringEnumConverter(JsonNamingPolicy.CamelCase, allowIntegerValues: false) },
    };

    private static readonly Dictionary<HouseholdFood, HouseholdMeasure> ByFood = Read();

    public static HouseholdMeasure Of(HouseholdFood food) => ByFood[food];

    /// <summary>"2¼ teaspoons of instant yeast".</summary>
    /// <returns>Null when it is too little for a spoon, its measure is not known, or no measure comes near enough.</returns>
    public static string? Say(Grams mass, HouseholdFood food, string name) =>
        Measure(mass, food) is { } measure ? Phrase.Fill(Amounts.OfFood, measure, name) : null;

    /// <summary>The spoons or cups alone: "2¼ teaspoons".</summary>
    public static string? Measure(Grams mass, HouseholdFood food)
    {
        var known = Of(food);
        if (known.GramsPerCup is { } gramsPerCup && mass.Value / gramsPerCup >= SmallestCup)
        {
            return Near(nameof(Amounts.CupsOther), mass.Value / gramsPerCup, 0.25);
        }

        if (known.GramsPerTeaspoon is not { } gramsPerTeaspoon)
        {
            return null;
        }

        return Spoons(mass.Value / gramsPerTeaspoon);
    }

    /// <returns>Null when it is too little for a spoon, or when no spoon comes near enough.</returns>
    public static string? Spoons(double teaspoons) =>
        teaspoons < SmallestSpoon / 2 ? null
            : teaspoons < 1 ? Near(nameof(Amounts.TeaspoonsOther), teaspoons, SmallestSpoon)
            : teaspoons < TeaspoonsPerTablespoon ? Near(nameof(Amounts.TeaspoonsOther), teaspoons, 0.25)
            : Near(nameof(Amounts.TablespoonsOther), teaspoons / TeaspoonsPerTablespoon, 0.5);

    /// <summary>Water as a measuring jug shows it: whole fluid ounces, halves below eight.</summary>
    /// <returns>Null when no mark of a jug comes near enough.</returns>
    public static string? FluidOuncesOfWater(Grams water)
    {
        var ounces = water.Value / Of(HouseholdFood.Water).GramsPerCup!.Value * FluidOuncesPerCup;
        var marked = ounces < FluidOuncesPerCup ? Round(ounces, 0.5) : Math.Round(ounces);
        return IsNear(marked, ounces, WaterMayBeOff) ? Phrase.Fill(Amounts.FluidOunces, Fraction(marked)) : null;
    }

    private static string? Near(string other, double number, double step) =>
        IsNear(Round(number, step), number, SpoonsMayBeOff) ? Counted(other, number, step) : null;

    private static bool IsNear(double rounded, double meant, double off) => Math.Abs(rounded - meant) <= off * meant;

    private static string Counted(string other, double number, double step)
    {
        var rounded = Round(number, step);

        // A part of a spoon is spoken of as one: "¼ teaspoon", "1¼ teaspoons".
        return Phrase.Count(Amounts.ResourceManager, other, Math.Ceiling(rounded), Fraction(rounded), []);
    }

    private static double Round(double number, double step) =>
        Math.Max(step, Math.Round(number / step, MidpointRounding.AwayFromZero) * step);

    private static string Fraction(double eighths)
    {
        var (whole, part) = Math.DivRem((int)Math.Round(eighths * 8), 8);
        return whole == 0 && part > 0 ? Eighths[part] : QuantityText.Whole(whole) + Eighths[part];
    }

    private static Dictionary<HouseholdFood, HouseholdMeasure> Read()
    {
        using var stream = typeof(Household).Assembly.GetManifestResourceStream(Table)!;
        return JsonSerializer.Deserialize<Foods>(stream, Json)!.Rows.ToDictionary(row => row.Food);
    }

    private sealed record Foods([property: JsonPropertyName("foods")] IReadOnlyList<HouseholdMeasure> Rows);
}
