namespace GameNight.Planning.Fermentation;

/// <summary>
/// Where the gas of a dough is: as much as its water takes up stays dissolved, the rest fills bubbles. Cold water takes up
/// twice what warm water does, so a ball that does not rise in the fridge may hold much of its gas already.
/// </summary>
public static class CarbonDioxide
{
    /// <summary>Density of dough without bubbles but for those of mixing, g/mL.</summary>
    private const double DoughGramsPerMillilitre = 1.2;

    private const double KelvinAtZero = 273.15;
    private const double KelvinOfGas = KelvinAtZero + 25;

    /// <summary>Gas that the water can hold, in mL at 25 °C and 1 atm per 100 g of flour.</summary>
    /// <param name="waterPerFlour">Grams of water per gram of flour.</param>
    /// <param name="pressureFactor">Air pressure over that at sea level.</param>
    public static double Dissolvable(double celsius, double waterPerFlour, double pressureFactor, FermentationTable table) =>
        100 * waterPerFlour * Bunsen(celsius, table.Solubility) * pressureFactor * KelvinOfGas / KelvinAtZero;

    /// <summary>Volume of the dough over its volume when it was balled.</summary>
    /// <param name="free">Gas in bubbles, mL at 25 °C and 1 atm per 100 g of flour.</param>
    /// <param name="doughPerFlour">Grams of dough per gram of flour.</param>
    public static double Volume(double free, double celsius, double doughPerFlour, double pressureFactor) =>
        1 + free * (celsius + KelvinAtZero) / KelvinOfGas / pressureFactor / (100 * doughPerFlour / DoughGramsPerMillilitre);

    /// <summary>The gas in bubbles of a dough of that volume: the way back.</summary>
    internal static double Free(double volume, double celsius, double doughPerFlour, double pressureFactor) =>
        (volume - 1) * (100 * doughPerFlour / DoughGramsPerMillilitre) * pressureFactor * KelvinOfGas / (celsius + KelvinAtZero);

    /// <summary>Between the rows of the table the logarithm runs straight; outside, its end pieces go on.</summary>
    internal static double Bunsen(double celsius, IReadOnlyList<SolubilityRow> rows)
    {
        var upper = 1;
        while (upper < rows.Count - 1 && rows[upper].Celsius < celsius)
        {
            upper++;
        }

        var (low, high) = (rows[upper - 1], rows[upper]);
        var part = (celsius - low.Celsius) / (high.Celsius - low.Celsius);
        return low.Bunsen * Math.Pow(high.Bunsen / low.Bunsen, part);
    }
}
