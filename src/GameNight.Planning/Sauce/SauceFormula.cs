using GameNight.Planning.Foods;
using GameNight.Planning.Guests;
using GameNight.Planning.Quantities;
using NodaTime;

namespace GameNight.Planning.Sauce;

/// <summary>What is in the tins: whole tomatoes in their juice, or crushed ones in purée.</summary>
public enum TomatoTin
{
    InJuice,
    Crushed,
}

/// <summary>What a sauce is made for: hardly simmered it is for tonight's pies only, long simmered it keeps for days.</summary>
public enum SauceKeeps
{
    ForTonight,
    ForDays,
}

/// <summary>An open pot. What evaporates goes with its mouth and the time, not with what is in it.</summary>
/// <param name="Holds">Raw sauce it takes at once.</param>
/// <param name="EvaporationGramsPerMinutePerCm2">At the simmer of this stove, 0 to 0.1.</param>
public sealed record SaucePot(Centimetres Diameter, Grams Holds, double EvaporationGramsPerMinutePerCm2)
{
    public double EvaporationGramsPerMinute =>
        EvaporationGramsPerMinutePerCm2 * Math.PI * Diameter.Value * Diameter.Value / 4;
}

/// <summary>A sauce as it is written down: so many grams of each part for so much tomato. All parts scale with the tomato.</summary>
/// <param name="Tomato">What the parts are for; a kilogram makes them parts per thousand.</param>
/// <param name="Parts">What goes in with it, each food once; never tomato and never salt.</param>
/// <param name="Salt">Share of the finished sauce, whatever the tins already bring included.</param>
/// <param name="Simmer">How long it simmers uncovered once the tomato is in, 0 to 4 h.</param>
/// <param name="TinSalt">Salt in the tins as their label says; null for the table's usual tin.</param>
/// <param name="WineIsVegan">The wine's label says so; otherwise the sauce keeps no diet.</param>
public sealed record SauceFormula(
    TomatoTin Tin,
    Grams Tomato,
    IReadOnlyList<FoodPart> Parts,
    Share Salt,
    Duration Simmer,
    SaucePot Pot,
    SauceKeeps Keeps,
    Share? TinSalt = null,
    bool WineIsVegan = false)
{
    private static readonly Diet[] KeptByVeganWine = [Diet.Vegetarian, Diet.Vegan, Diet.NoPork];

    public Food TomatoFood => Tin switch
    {
        TomatoTin.InJuice => Food.CannedTomatoes,
        TomatoTin.Crushed => Food.CrushedTomatoes,
    };

    /// <summary>What the parts bring of allergens, and the diets that all of them keep.</summary>
    public Composition Composition(FoodTable foods) => Parts
        .Where(part => part.Grams > default(Grams))
        .Select(part => part.Food == Food.RedWine && WineIsVegan
            ? foods.Of(part.Food).Composition with { Suits = KeptByVeganWine }
            : foods.Of(part.Food).Composition)
        .Aggregate(foods.Of(TomatoFood).Composition, (all, part) => all.With(part));

    /// <summary>Tomato and all parts for this much tomato; without salt.</summary>
    internal IReadOnlyList<FoodPart> For(Grams tomato) =>
        [new(TomatoFood, tomato), .. Parts.Select(part => part with { Grams = part.Grams * (tomato / Tomato) })];
}
