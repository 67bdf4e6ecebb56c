using GameNight.Planning.Cheese;
using GameNight.Planning.Foods;
using GameNight.Planning.Guests;
using GameNight.Planning.Quantities;
using GameNight.Planning.Sauce;
using GameNight.Web.Wording.Texts;
using static GameNight.Web.Wording.Phrase;

namespace GameNight.Web.Wording;

/// <summary>The words of sauce and cheese.</summary>
public static class FoodText
{
    public static string Say(Food food) => food switch
    {
        Food.CannedTomatoes => FoodWords.CannedTomatoes,
        Food.CrushedTomatoes => FoodWords.CrushedTomatoes,
        Food.TomatoPaste => FoodWords.TomatoPaste,
        Food.Onion => FoodWords.Onion,
        Food.Garlic => FoodWords.Garlic,
        Food.OliveOil => FoodWords.OliveOil,
        Food.Sugar => FoodWords.Sugar,
        Food.Salt => FoodWords.Salt,
        Food.DriedOregano => FoodWords.DriedOregano,
        Food.DriedBasil => FoodWords.DriedBasil,
        Food.RedWine => FoodWords.RedWine,
        Food.WineVinegar => FoodWords.WineVinegar,
        Food.LowMoistureMozzarella => FoodWords.LowMoistureMozzarella,
        Food.FreshMozzarella => FoodWords.FreshMozzarella,
        Food.Parmesan => FoodWords.Parmesan,
        Food.BreadFlour => FoodWords.BreadFlour,
    };

    public static string Say(TomatoTin tin) => tin switch
    {
        TomatoTin.InJuice => FoodWords.TinInJuice,
        TomatoTin.Crushed => FoodWords.TinCrushed,
    };

    public static string Say(SauceKeeps keeps) => keeps switch
    {
        SauceKeeps.ForTonight => FoodWords.ForTonight,
        SauceKeeps.ForDays => FoodWords.ForDays,
    };

    public static string Say(CheeseKind kind) => kind switch
    {
        CheeseKind.LowMoisture => FoodWords.LowMoisture,
        CheeseKind.Hard => FoodWords.Hard,
        CheeseKind.Fresh => FoodWords.Fresh,
    };

    public static string Say(SauceCue cue) => cue switch
    {
        SauceCue.GarlicGently => FoodWords.GarlicGently,
        SauceCue.WeighThePot => FoodWords.WeighThePot,
        SauceCue.SaltLast => FoodWords.SaltLast,
        SauceCue.TinsOverUnripe => FoodWords.TinsOverUnripe,
    };

    public static string Say(CheeseCue cue) => cue switch
    {
        CheeseCue.KeptCold => FoodWords.KeptCold,
        CheeseCue.ReadyGratedCarriesStarch => FoodWords.ReadyGrated,
        CheeseCue.FreshInStrips => FoodWords.InStrips,
    };

    /// <summary>A starting formula or blend of the tables.</summary>
    public static string Start(string id) => id switch
    {
        "bright-tin" => FoodWords.BrightTin,
        "deep-pot" => FoodWords.DeepPot,
        "house-blend" => FoodWords.HouseBlend,
        "fresh-strips" => FoodWords.FreshStrips,
        _ => id,
    };

    /// <summary>Why no more of it goes into a sauce.</summary>
    /// <returns>Null for what is no part of one.</returns>
    public static string? WhyNoMore(Food food) => food switch
    {
        Food.Garlic => FoodWords.MostGarlic,
        Food.Onion => FoodWords.MostOnion,
        Food.OliveOil => FoodWords.MostOil,
        Food.TomatoPaste => FoodWords.MostPaste,
        Food.RedWine => FoodWords.MostWine,
        Food.WineVinegar => FoodWords.MostVinegar,
        Food.Sugar => FoodWords.MostSugar,
        Food.DriedOregano or Food.DriedBasil => FoodWords.MostHerbs,
        _ => null,
    };

    /// <summary>Cloves, bulbs or spoons beside the grams that are weighed, and ounces for those who read them.</summary>
    /// <returns>Empty when nothing is known to say.</returns>
    public static string Beside(SauceShare share, Measures measures) => WordText.List(
        new[] { measures.OuncesBeside(share.Grams), Pieces(share), share.Teaspoons is { } spoons ? Household.Spoons(spoons) : null }.OfType<string>());

    /// <summary>What goes in, and what that means for who must not have it.</summary>
    public static string Say(Composition composition) => string.Join(' ', new[]
    {
        composition.Contains.Count > 0 ? Fill(FoodWords.Contains, WordText.And([.. composition.Contains.Select(WordText.Say)])) : FoodWords.ContainsNothing,
        composition.Suits.Count > 0 ? Fill(FoodWords.Keeps, WordText.List(composition.Suits.Select(WordText.Say))) : FoodWords.KeepsNothing,
        FoodWords.ReadLabels,
    });

    /// <summary>A mass that hand and kitchen move by a sixth: no more than two digits of it are known.</summary>
    public static string Rough(Grams mass, Measures measures)
    {
        var digits = mass.Value > 0 ? Math.Clamp(1 - (int)Math.Floor(Math.Log10(mass.Value)), 0, 3) : 0;
        var grams = Fill(Amounts.Grams, QuantityText.Exact(Math.Round(mass.Value, digits)));
        return measures.OuncesBeside(mass) is { } ounces ? Fill(Amounts.Beside, grams, ounces) : grams;
    }

    private static string? Pieces(SauceShare share) => (share.Food, share.Pieces) switch
    {
        (Food.Garlic, >= 0.5 and var cloves) => Count(FoodWords.ResourceManager, nameof(FoodWords.CloveOther), Math.Round(cloves)),
        (Food.Onion, >= 0.5 and var bulbs) => Count(FoodWords.ResourceManager, nameof(FoodWords.OnionPieceOther), Math.Round(bulbs)),
        _ => null,
    };
}
