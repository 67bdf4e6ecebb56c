using GameNight.Nights.Records;
using GameNight.Planning;
using GameNight.Planning.Dough;
using GameNight.Planning.Quantities;
using GameNight.Planning.Toppings;
using GameNight.Web.Wording;
using GameNight.Web.Wording.Texts;
using NodaTime;

namespace GameNight.Web.Host.Members;

/// <summary>A dough beside the main one as fields: grams as everything that is weighed of a dough, the paper in the host's measure.</summary>
public sealed class SecondDoughForm(Measures measures)
{
    private SecondDoughRecipe? _shown;

    public string Name { get; set; } = OtherDough.UsualName;
    public string Mix { get; set; } = "";
    public string Water { get; set; } = "";
    public string Yeast { get; set; } = "";
    public string Oil { get; set; } = "0";
    public string Salt { get; set; } = "0";
    public string RiseHours { get; set; } = "1";
    public SecondDoughOn On { get; set; }
    public string PaperUpTo { get; set; } = "";
    public LabelForm Label { get; private init; } = new();

    public static SecondDoughForm Of(HouseSecondDough second, Measures measures)
    {
        var recipe = second.Dough.Recipe;
        return new SecondDoughForm(measures)
        {
            Name = second.Name,
            Mix = TypedNumbers.Text(recipe.Mix.Value),
            Water = TypedNumbers.Text(recipe.Water.Value),
            Yeast = TypedNumbers.Text(recipe.Yeast.Value),
            Oil = TypedNumbers.Text(recipe.Oil.Value),
            Salt = TypedNumbers.Text(recipe.Salt.Value),
            RiseHours = TypedNumbers.Text(recipe.Rise.TotalHours),
            On = recipe.On,
            PaperUpTo = recipe.PaperUpTo is { } limit ? measures.Temperature.Typed(limit.Value) : "",
            Label = LabelForm.Of(second.Dough.Composition),
            _shown = recipe,
        };
    }

    /// <returns>What was typed, or null with a problem for each field that is none.</returns>
    public (HouseSecondDough? Second, IReadOnlyDictionary<string, string> Problems) Read()
    {
        var numbers = new TypedNumbers("menu.secondDough.recipe");
        var recipe = new SecondDoughRecipe(
            Grams("mixGrams", Mix, MenuCheck.LeastMixGrams, MenuCheck.MostMixGrams),
            Grams("waterGrams", Water, 0, MenuCheck.MostMixGrams),
            Grams("yeastGrams", Yeast, 0, MenuCheck.MostYeastGrams),
            Grams("oilGrams", Oil, 0, MenuCheck.MostOilGrams),
            Grams("saltGrams", Salt, 0, MenuCheck.MostSaltGrams),
            Duration.FromMinutes(Math.Round(60 * numbers.Read("riseMinutes", RiseHours, 0, MenuCheck.LongestRise.TotalHours))),
            On,
            On == SecondDoughOn.BakingPaper
                ? new Celsius(numbers.Read(
                    "paperUpToCelsius", PaperUpTo, MenuCheck.LeastPaperCelsius, MenuCheck.MostPaperCelsius, measures.Temperature, _shown?.PaperUpTo?.Value))
                : null);
        if (Name.Trim().Length is 0 or > HouseSecondDough.LongestName)
        {
            numbers.Refuse("name", Phrase.Fill(MemberPages.TypeName, HouseSecondDough.LongestName));
        }

        return numbers.Problems.Count == 0
            ? (new HouseSecondDough(Name.Trim(), new SecondDough(Label.Composition, recipe)), numbers.Problems)
            : (null, numbers.Problems);

        Grams Grams(string field, string text, double low, double high) => new(numbers.Read(field, text, low, high));
    }
}
