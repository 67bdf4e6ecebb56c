using GameNight.Planning.Dough;

namespace GameNight.Planning.Heat;

/// <summary>What a food consists of, as fractions of its mass that add up to 1, in the six components of Choi and Okos.</summary>
public sealed class FoodComposition
{
    /// <summary>Published compositions are rounded to a hundredth of a percent in each part.</summary>
    private const double RoundOff = 0.001;

    private static readonly FoodComponent[] Components = Enum.GetValues<FoodComponent>();

    private readonly double[] _fractions;

    /// <exception cref="ArgumentException">A fraction is negative, or they do not add up to 1.</exception>
    public FoodComposition(double water, double protein, double fat, double carbohydrate, double fibre, double ash)
    {
        _fractions = [water, protein, fat, carbohydrate, fibre, ash];
        if (!(_fractions.Min() >= 0 && Math.Abs(_fractions.Sum() - 1) <= RoundOff))
        {
            throw new ArgumentException(
                $"A composition has no negative part and adds up to 1; got {string.Join(", ", _fractions)}.");
        }
    }

    public double Of(FoodComponent component) => _fractions[(int)component];

    /// <summary>
    /// A dough without gas: salt counts as ash, oil as fat, sugar and what is dry in further ingredients as carbohydrate. Yeast
    /// is left out, it is a hundredth of the flour at most.
    /// </summary>
    public static FoodComposition Of(DoughFormula formula, MaterialsTable table)
    {
        var sweet = formula.SugarIsHoney ? table.Honey.Composition : new FoodComposition(0, 0, 0, 1, 0, 0);
        (double Parts, FoodComposition Of)[] ingredients =
        [
            (1, table.BreadFlour.Composition),
            (formula.Water.Value, new FoodComposition(1, 0, 0, 0, 0, 0)),
            (formula.Salt.Value, new FoodComposition(0, 0, 0, 0, 0, 1)),
            (formula.Oil.Value, new FoodComposition(0, 0, 1, 0, 0, 0)),
            (formula.Sugar.Value, sweet),
            .. (formula.Extras ?? []).Select(extra => (extra.OfFlour.Value, new FoodComposition(extra.Water.Value, 0, 0, 1 - extra.Water.Value, 0, 0))),
        ];
        double Share(FoodComponent component) =>
            ingredients.Sum(part => part.Parts * part.Of.Of(component)) / formula.TotalPerFlour;

        return new FoodComposition(
            Share(FoodComponent.Water), Share(FoodComponent.Protein), Share(FoodComponent.Fat),
            Share(FoodComponent.Carbohydrate), Share(FoodComponent.Fibre), Share(FoodComponent.Ash));
    }

    /// <summary>
    /// Properties at a temperature: heat capacity by mass, density by volume, conductivity by volume in parallel. (Choi and
    /// Okos 1986.)
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">The temperature is outside the range of the coefficients.</exception>
    public ThermalProperties At(double celsius, MaterialsTable table)
    {
        table.ComponentsCelsius.Demand(celsius, nameof(celsius), "°C");
        var (heatCapacity, m3PerKg, conductivity) = (0.0, 0.0, 0.0);
        foreach (var component in Components)
        {
            var (fraction, pure) = (Of(component), table.Of(component).At(celsius));
            var volume = fraction / pure.DensityKgPerM3;
            heatCapacity += fraction * pure.HeatCapacityJPerKgK;
            m3PerKg += volume;
            conductivity += volume * pure.ConductivityWPerMK;
        }

        return new ThermalProperties(conductivity / m3PerKg, 1 / m3PerKg, heatCapacity);
    }
}
