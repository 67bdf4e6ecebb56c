using GameNight.Planning.Quantities;

namespace GameNight.Planning.Foods;

/// <summary>So much of one food, as a part of something.</summary>
public sealed record FoodPart(Food Food, Grams Grams);

/// <summary>A mass of food, or of several together, and what it holds.</summary>
public sealed record FoodFigures(
    Grams Mass, double Kilocalories, Grams Water, Grams Fat, Grams Protein, Grams Carbohydrate, double SodiumMilligrams, Grams Alcohol)
{
    /// <summary>Salt is sodium times 2.5: Regulation (EU) 1169/2011, Annex I.</summary>
    public const double SaltPerSodium = 2.5;

    public static FoodFigures None { get; } = new(default, 0, default, default, default, default, 0, default);

    public Grams Salt => new(SodiumMilligrams / 1000 * SaltPerSodium);

    public static FoodFigures operator +(FoodFigures left, FoodFigures right) => new(
        left.Mass + right.Mass,
        left.Kilocalories + right.Kilocalories,
        left.Water + right.Water,
        left.Fat + right.Fat,
        left.Protein + right.Protein,
        left.Carbohydrate + right.Carbohydrate,
        left.SodiumMilligrams + right.SodiumMilligrams,
        left.Alcohol + right.Alcohol);
}
