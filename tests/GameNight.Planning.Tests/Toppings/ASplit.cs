using System.Globalization;
using CsCheck;
using GameNight.Planning.Guests;
using GameNight.Planning.Toppings;

namespace GameNight.Planning.Tests.Toppings;

/// <summary>Split requests for the tests: small ones by hand, and random nights.</summary>
internal static class ASplit
{
    public static readonly IReadOnlyDictionary<string, Liking> NoLikes = new Dictionary<string, Liking>();

    public static readonly DietaryNeeds Vegan = new([Diet.Vegan], [], []);
    public static readonly DietaryNeeds Vegetarian = new([Diet.Vegetarian], [], []);
    public static readonly DietaryNeeds NoMilk = new([], [Allergen.Milk], []);
    public static readonly DietaryNeeds NoNutsNear = new([], [], [Allergen.Nuts]);
    public static readonly DietaryNeeds NoMilkNear = new([], [], [Allergen.Milk]);
    public static readonly DietaryNeeds NoGluten = new([], [Allergen.GlutenCereals], []);
    public static readonly DietaryNeeds NoGlutenNear = new([], [], [Allergen.GlutenCereals]);

    /// <summary>What about three of ten eaters have.</summary>
    private static readonly DietaryNeeds[] SomeNeeds =
    [
        Vegan,
        Vegetarian,
        NoMilk,
        NoNutsNear,
        new([Diet.NoPork], [], []),
        new([], [Allergen.Fish, Allergen.Crustaceans], []),
        new([Diet.Vegetarian], [], [Allergen.Eggs]),
    ];

    /// <summary>Of those who must not have the main dough, or fear the second one.</summary>
    private static readonly DietaryNeeds[] NeedsOfDoughs =
    [
        NoGluten,
        NoGluten,
        NoGlutenNear,
        new([Diet.Vegan], [Allergen.GlutenCereals], []),
        new([], [Allergen.GlutenCereals], [Allergen.Nuts]),
        new([], [Allergen.GlutenCereals, Allergen.Milk], []),
        new([], [Allergen.Soybeans], []),
        new([], [], [Allergen.Soybeans]),
    ];

    private static readonly Gen<DietaryNeeds> GenNeedsOfDoughs = Gen.Frequency(
        (6, Gen.Const(DietaryNeeds.None)),
        (2, Gen.Int[0, SomeNeeds.Length - 1].Select(index => SomeNeeds[index])),
        (3, Gen.Int[0, NeedsOfDoughs.Length - 1].Select(index => NeedsOfDoughs[index])));

    private static readonly Gen<DietaryNeeds> GenNeeds =
        Gen.Frequency((7, Gen.Const(DietaryNeeds.None)), (3, Gen.Int[0, SomeNeeds.Length - 1].Select(index => SomeNeeds[index])));

    private static readonly Gen<Liking> GenLiking = Gen.Frequency(
        (1, Gen.Const(Liking.Never)),
        (2, Gen.Const(Liking.RatherNot)),
        (4, Gen.Const(Liking.Fine)),
        (2, Gen.Const(Liking.Like)),
        (1, Gen.Const(Liking.Favourite)));

    public static SplitEater Eater(string id, int slices, DietaryNeeds? needs = null, params (string Topping, Liking Liking)[] likes) =>
        new(id, slices, needs ?? DietaryNeeds.None, likes.ToDictionary(like => like.Topping, like => like.Liking));

    public static SplitRequest Night(Menu menu, int pies, params SplitEater[] eaters) => new(eaters, [], menu, pies, 8);

    /// <summary>
    /// A random night: about three in ten eaters with must-nots, groups that may eat a slice or two more, and on every other
    /// one a second dough with about three in ten eaters to whom doughs matter.
    /// </summary>
    public static Gen<SplitRequest> Nights(Gen<int> eaters, int mostSlices = 5) =>
        from toppings in Gen.Int[0, 14]
        from mostToppings in Gen.Int[0, 3]
        from slicesPerPie in Gen.Int[0, 5].Select(index => new[] { 5, 6, 8, 8, 8, 10 }[index])
        from count in eaters
        from second in Gen.Int[0, 3].Select(index => new[] { null, null, AMenu.Maize, AMenu.Rich }[index])
        from guests in Gen.Select(second is null ? GenNeeds : GenNeedsOfDoughs, Gen.Int[0, mostSlices], GenLiking.Array[toppings]).Array[count]
        from extra in Gen.Int[-1, 2]
        from groupExtra in Gen.Int[0, 2]
        from parts in Gen.Int[0, 4].Select(index => new[] { 1, 2, 2, 2, 4 }[index])
        let wanted = guests.Sum(guest => guest.Item2)
        select Request(
            AMenu.With(toppings, mostToppings) with { SecondDough = second },
            [.. guests.Select((guest, index) => new SplitEater(
                "e" + index.ToString("D3", CultureInfo.InvariantCulture),
                guest.Item2,
                guest.Item1,
                guest.Item3.Select((liking, topping) => (AMenu.Toppings[topping].Id, liking)).ToDictionary()))],
            Math.Max(0, ((wanted + slicesPerPie - 1) / slicesPerPie) + extra),
            slicesPerPie,
            groupExtra) with
        { Parts = parts };

    /// <summary>The eaters with the must-not groups that follow from them.</summary>
    public static SplitRequest Request(Menu menu, SplitEater[] eaters, int pies, int slicesPerPie, int groupExtra) =>
        new(
            eaters,
            [
                .. eaters.Where(eater => !eater.Needs.IsNone)
                    .GroupBy(eater => eater.Needs)
                    .Select(group => new MustNotGroup(
                        [.. group.Select(eater => eater.Id)],
                        group.Key,
                        group.Sum(eater => eater.Slices) + groupExtra)),
            ],
            menu,
            pies,
            slicesPerPie);
}

/// <summary>Numbers read off a split.</summary>
internal static class SplitReading
{
    /// <summary>How near each eater comes to their best, 0 to 1, worst first. An eater with nothing to hope for counts as 1.</summary>
    public static double[] Nearness(this ToppingSplit split) =>
    [
        .. split.Satisfactions
            .Select(eater => eater.BestPossible == 0 ? 1 : eater.Score / eater.BestPossible)
            .Order(),
    ];

    public static int SlicesOf(this ToppingSplit split, string eaterId) =>
        split.Servings.Where(serving => serving.EaterId == eaterId).Sum(serving => serving.Slices);
}
