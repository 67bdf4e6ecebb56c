using GameNight.Nights.Records;
using GameNight.Planning.Dough;
using GameNight.Planning.Guests;
using GameNight.Planning.Timeline;
using GameNight.Planning.Toppings;
using GameNight.Web.Wording.Texts;

namespace GameNight.Web.Wording;

/// <summary>The words of the trade for every enumeration that reaches a screen.</summary>
public static class WordText
{
    public static string Say(PortionClass portion) => portion switch
    {
        PortionClass.Adult => Words.Adult,
        PortionClass.Teen => Words.Teen,
        PortionClass.Child => Words.Child,
        PortionClass.Toddler => Words.Toddler,
    };

    public static string Say(Hunger hunger) => hunger switch
    {
        Hunger.Less => Words.HungerLess,
        Hunger.AsUsual => Words.HungerAsUsual,
        Hunger.More => Words.HungerMore,
    };

    public static string Say(Presence presence) => presence switch
    {
        Presence.Coming => Words.Coming,
        Presence.Undecided => Words.Undecided,
        Presence.NotComing => Words.NotComing,
    };

    public static string Say(AnswerState answer) => answer switch
    {
        AnswerState.Host => Words.AnswerHost,
        AnswerState.Coming => Words.Coming,
        AnswerState.Undecided => Words.Undecided,
        AnswerState.NoAnswer => Words.AnswerMissing,
        AnswerState.NotComing => Words.NotComing,
    };

    public static string Say(Liking liking) => liking switch
    {
        Liking.Favourite => Words.Favourite,
        Liking.Like => Words.Like,
        Liking.Fine => Words.Fine,
        Liking.RatherNot => Words.RatherNot,
        Liking.Never => Words.Never,
    };

    public static string Say(Enough enough) => enough switch
    {
        Enough.TooLittle => Words.TooLittle,
        Enough.Right => Words.RightAmount,
        Enough.TooMuch => Words.TooMuch,
    };

    public static string Say(Evening evening) => evening switch
    {
        Evening.Poor => Words.PoorEvening,
        Evening.Fine => Words.FineEvening,
        Evening.Lovely => Words.LovelyEvening,
    };

    public static string Say(PeelFlour flour) => flour switch
    {
        PeelFlour.Wheat => Words.PeelWheat,
        PeelFlour.Semolina => Words.PeelSemolina,
        PeelFlour.Maize => Words.PeelMaize,
        PeelFlour.Rice => Words.PeelRice,
    };

    public static string Say(BoxOil oil) => oil switch
    {
        BoxOil.Olive => Words.OilOlive,
        BoxOil.Rapeseed => Words.OilRapeseed,
        BoxOil.Sunflower => Words.OilSunflower,
        BoxOil.Peanut => Words.OilPeanut,
        BoxOil.Sesame => Words.OilSesame,
    };

    public static string Say(UsAllergen allergen) => allergen switch
    {
        UsAllergen.Milk => Words.Milk,
        UsAllergen.Eggs => Words.Eggs,
        UsAllergen.Fish => Words.Fish,
        UsAllergen.CrustaceanShellfish => Words.CrustaceanShellfish,
        UsAllergen.TreeNuts => Words.TreeNuts,
        UsAllergen.Peanuts => Words.Peanuts,
        UsAllergen.Wheat => Words.Wheat,
        UsAllergen.Soybeans => Words.Soybeans,
        UsAllergen.Sesame => Words.Sesame,
    };

    public static string Say(TreeNut nut) => nut switch
    {
        TreeNut.Almond => Words.Almonds,
        TreeNut.Hazelnut => Words.Hazelnuts,
        TreeNut.Walnut => Words.Walnuts,
        TreeNut.Cashew => Words.Cashews,
        TreeNut.Pecan => Words.Pecans,
        TreeNut.BrazilNut => Words.BrazilNuts,
        TreeNut.Pistachio => Words.Pistachios,
        TreeNut.Macadamia => Words.Macadamias,
        TreeNut.PineNut => Words.PineNuts,
        TreeNut.BlackWalnut => Words.BlackWalnuts,
    };

    public static string Say(Diet diet) => diet switch
    {
        Diet.Vegetarian => Words.Vegetarian,
        Diet.Vegan => Words.Vegan,
        Diet.NoPork => Words.NoPork,
        Diet.NoAlcohol => Words.NoAlcohol,
    };

    public static string Say(Allergen allergen) => allergen switch
    {
        Allergen.GlutenCereals => Words.GlutenCereals,
        Allergen.Crustaceans => Words.Crustaceans,
        Allergen.Eggs => Words.Eggs,
        Allergen.Fish => Words.Fish,
        Allergen.Peanuts => Words.Peanuts,
        Allergen.Soybeans => Words.Soybeans,
        Allergen.Milk => Words.Milk,
        Allergen.Nuts => Words.Nuts,
        Allergen.Celery => Words.Celery,
        Allergen.Mustard => Words.Mustard,
        Allergen.Sesame => Words.Sesame,
        Allergen.Sulphites => Words.Sulphites,
        Allergen.Lupin => Words.Lupin,
        Allergen.Molluscs => Words.Molluscs,
    };

    public static string Say(MenuRole role) => role switch
    {
        MenuRole.Base => Words.RoleBase,
        MenuRole.Cheese => Words.RoleCheese,
        MenuRole.Topping => Words.RoleTopping,
    };

    public static string Say(YeastForm form) => form switch
    {
        YeastForm.Fresh => Words.FreshYeast,
        YeastForm.ActiveDry => Words.ActiveDryYeast,
        YeastForm.Instant => Words.InstantYeast,
    };

    public static string Say(KneadingWay kneading) => kneading switch
    {
        KneadingWay.ByHand => Words.KneadByHand,
        KneadingWay.Mixer => Words.KneadInMixer,
    };

    public static string Say(Station station) => station switch
    {
        Station.Hob => TimelinePages.OwnTakesHob,
        Station.OvenAtOtherHeat => TimelinePages.OwnTakesOven,
    };

    public static string Say(StepKind step) => step switch
    {
        StepKind.Shop => Words.StepShop,
        StepKind.Preferment => Words.StepPreferment,
        StepKind.WakeYeast => Words.StepWakeYeast,
        StepKind.Mix => Words.StepMix,
        StepKind.Knead => Words.StepKnead,
        StepKind.BulkRest => Words.StepBulkRest,
        StepKind.Ball => Words.StepBall,
        StepKind.ColdFerment => Words.StepColdFerment,
        StepKind.Temper => Words.StepTemper,
        StepKind.Sauce => Words.StepSauce,
        StepKind.GrateCheese => Words.StepGrateCheese,
        StepKind.PrepareToppings => Words.StepPrepareToppings,
        StepKind.SecondMix => Words.StepSecondMix,
        StepKind.SecondRise => Words.StepSecondRise,
        StepKind.Preheat => Words.StepPreheat,
        StepKind.Soak => Words.StepSoak,
        StepKind.Shape => Words.StepShape,
        StepKind.Top => Words.StepTop,
        StepKind.Bake => Words.StepBake,
        StepKind.Rack => Words.StepRack,
        StepKind.Serve => Words.StepServe,
        StepKind.Own => Words.StepOwn,
        StepKind.PutAway => Words.StepPutAway,
    };

    /// <summary>Work whose length is learned.</summary>
    public static string Work(StepName step) => step switch
    {
        StepName.Mix => Words.PaceMix,
        StepName.KneadByHand => Words.PaceKneadByHand,
        StepName.KneadMixer => Words.PaceKneadMixer,
        StepName.BallEach => Words.PaceBall,
        StepName.GrateCheese => Words.PaceGrateCheese,
        StepName.PrepareToppings => Words.PacePrepareToppings,
        StepName.SecondMix => Words.PaceSecondMix,
        StepName.Shape => Words.PaceShape,
        StepName.Top => Words.PaceTop,
        StepName.Serve => Words.PaceServe,
        var other => throw new ArgumentOutOfRangeException(nameof(step), other, "Not learned."),
    };

    /// <summary>"a, b, c".</summary>
    public static string List(IEnumerable<string> words) => Joined(words, Words.ListMiddle);

    /// <summary>"a, b; c": for members that may hold commas themselves.</summary>
    public static string ListOuter(IEnumerable<string> words) => Joined(words, Words.ListOuter);

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
                : [QuantityText.Range(QuantityText.Whole(run.First), QuantityText.Whole(run.Last))]),
        ];
    }

    /// <summary>"a, b and c".</summary>
    public static string And(IReadOnlyList<string> words) => words.Count < 2
        ? List(words)
        : Phrase.Fill(Words.ListEnd, List(words.Take(words.Count - 1)), words[^1]);

    private static string Joined(IEnumerable<string> words, string join) =>
        words.Aggregate((string?)null, (before, word) => before is null ? word : Phrase.Fill(join, before, word)) ?? "";
}
