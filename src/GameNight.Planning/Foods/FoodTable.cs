using GameNight.Planning.Guests;
using GameNight.Planning.Quantities;
using GameNight.Planning.Reference;

namespace GameNight.Planning.Foods;

/// <summary>What 100 g of a food hold: grams, save where the name says otherwise.</summary>
/// <param name="Alcohol">Null where there is none.</param>
/// <param name="GramsPerTeaspoon">Of a level US teaspoon; null where nobody spoons it.</param>
/// <param name="GramsPerPiece">Of a clove or a bulb; null where it has no pieces.</param>
/// <param name="Contains">Allergens the food brings as such; the label of a pack may name more.</param>
/// <param name="Suits">Diets it keeps without looking at a label.</param>
public sealed record FoodRow(
    Food Food,
    double Kilocalories,
    double Water,
    double Fat,
    double Protein,
    double Carbohydrate,
    double SodiumMilligrams,
    IReadOnlyList<Allergen> Contains,
    IReadOnlyList<Diet> Suits,
    string Source,
    double? Alcohol = null,
    double? GramsPerTeaspoon = null,
    double? GramsPerPiece = null)
{
    public Composition Composition => new(Contains, [], [], Suits);

    public FoodFigures Of(Grams mass)
    {
        var hundreds = mass.Value / 100;
        return new FoodFigures(
            mass,
            Kilocalories * hundreds,
            new Grams(Water * hundreds),
            new Grams(Fat * hundreds),
            new Grams(Protein * hundreds),
            new Grams(Carbohydrate * hundreds),
            SodiumMilligrams * hundreds,
            new Grams((Alcohol ?? 0) * hundreds));
    }
}

/// <summary>Public-domain figures of the foods that the models weigh.</summary>
public sealed record FoodTable(string Note, IReadOnlyList<FoodRow> Foods)
{
    internal const string File = "foods.json";

    private readonly IReadOnlyDictionary<Food, FoodRow> _foods = ReferenceText.OneRowEach(File, Foods, row => row.Food);

    public FoodRow Of(Food food) => _foods[food];

    /// <summary>All parts together.</summary>
    public FoodFigures Sum(IEnumerable<FoodPart> parts) =>
        parts.Aggregate(FoodFigures.None, (sum, part) => sum + Of(part.Food).Of(part.Grams));
}
