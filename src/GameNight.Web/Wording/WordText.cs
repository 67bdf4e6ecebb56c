using GameNight.Nights.Records;
using GameNight.Planning.Dough;
using GameNight.Planning.Guests;
using GameNight.Planning.Timeline;
using GameNight.Planning.Toppings;

namespace GameNight.Web.Wording;

/// <summary>The words of the trade for every enumeration that reaches a screen.</summary>
public static class WordText
{
    public static string Say(PortionClass portion) => portion switch
    {
        PortionClass.Adult => "adult",
        PortionClass.Teen => "teen",
        PortionClass.Child => "child",
        PortionClass.Toddler => "toddler",
    };

    public static string Say(Hunger hunger) => hunger switch
    {
        Hunger.Less => "less than usual",
        Hunger.AsUsual => "as usual",
        Hunger.More => "more than usual",
    };

    public static string Say(Presence presence) => presence switch
    {
        Presence.Coming => "coming",
        Presence.Undecided => "undecided",
        Presence.NotComing => "not coming",
    };

    public static string Say(AnswerState answer) => answer switch
    {
        AnswerState.Host => "host",
        AnswerState.Coming => "coming",
        AnswerState.Undecided => "undecided",
        AnswerState.NoAnswer => "no answer yet",
        AnswerState.NotComing => "not coming",
    };

    public static string Say(Liking liking) => liking switch
    {
        Liking.Favourite => "favourite",
        Liking.Like => "like",
        Liking.Fine => "fine",
        Liking.RatherNot => "rather not",
        Liking.Never => "never",
    };

    public static string Say(Diet diet) => diet switch
    {
        Diet.Vegetarian => "vegetarian",
        Diet.Vegan => "vegan",
        Diet.NoPork => "no pork",
        Diet.NoAlcohol => "no alcohol",
    };

    public static string Say(Allergen allergen) => allergen switch
    {
        Allergen.GlutenCereals => "cereals with gluten",
        Allergen.Crustaceans => "crustaceans",
        Allergen.Eggs => "eggs",
        Allergen.Fish => "fish",
        Allergen.Peanuts => "peanuts",
        Allergen.Soybeans => "soybeans",
        Allergen.Milk => "milk",
        Allergen.Nuts => "nuts",
        Allergen.Celery => "celery",
        Allergen.Mustard => "mustard",
        Allergen.Sesame => "sesame",
        Allergen.Sulphites => "sulphites",
        Allergen.Lupin => "lupin",
        Allergen.Molluscs => "molluscs",
    };

    public static string Say(MenuRole role) => role switch
    {
        MenuRole.Base => "base",
        MenuRole.Cheese => "cheese",
        MenuRole.Topping => "topping",
    };

    public static string Say(YeastForm form) => form switch
    {
        YeastForm.Fresh => "fresh yeast",
        YeastForm.ActiveDry => "active dry yeast",
        YeastForm.Instant => "instant yeast",
    };

    public static string Say(KneadingWay kneading) => kneading switch
    {
        KneadingWay.ByHand => "by hand",
        KneadingWay.Mixer => "mixer",
    };

    public static string Say(StepKind step) => step switch
    {
        StepKind.Shop => "shopping",
        StepKind.Mix => "mix",
        StepKind.Knead => "knead",
        StepKind.BulkRest => "bulk ferment",
        StepKind.Ball => "ball",
        StepKind.ColdFerment => "cold ferment",
        StepKind.Temper => "temper",
        StepKind.Sauce => "sauce",
        StepKind.GrateCheese => "grate cheese",
        StepKind.PrepareToppings => "prepare toppings",
        StepKind.Preheat => "preheat",
        StepKind.Soak => "preheat soak",
        StepKind.Shape => "shape",
        StepKind.Top => "top",
        StepKind.Bake => "bake",
        StepKind.Rack => "cooling rack",
        StepKind.Serve => "serve",
    };

    public static string List(IEnumerable<string> words) => string.Join(", ", words);

    public static string Capital(string text) => text.Length == 0 ? text : char.ToUpperInvariant(text[0]) + text[1..];

    /// <summary>Ascending numbers, three or more in a row as a range: "1", "4 to 9", "12".</summary>
    public static IReadOnlyList<string> Ranges(IEnumerable<int> numbers)
    {
        var runs = new List<(int First, int Last)>();
        foreach (var number in numbers)
        {
            if (runs.Count > 0 && runs[^1].Last == number - 1)
            {
                runs[^1] = (runs[^1].First, number);
            }
            else
            {
                runs.Add((number, number));
            }
        }

        return
        [
            .. runs.SelectMany(run => run.Last - run.First < 2
                ? Enumerable.Range(run.First, run.Last - run.First + 1).Select(number => QuantityText.Whole(number))
                : [$"{QuantityText.Whole(run.First)} to {QuantityText.Whole(run.Last)}"]),
        ];
    }

    /// <summary>"a, b and c".</summary>
    public static string And(IReadOnlyList<string> words) => words.Count switch
    {
        0 => "",
        1 => words[0],
        _ => $"{List(words.Take(words.Count - 1))} and {words[^1]}",
    };
}
