using GameNight.Planning.Quantities;

namespace GameNight.Planning.Dough;

/// <summary>The pie as it is shaped: sizes in centimetres, dough per area, and how far oil, sauce and cheese reach.</summary>
/// <param name="Rim">Left unpressed around the pie; topped area is what lies inside.</param>
/// <param name="SauceInset">How far the sauce stops short of the rim.</param>
/// <param name="CheeseInset">How far the cheese stops short of the rim; smaller than the sauce's, it goes further out.</param>
/// <param name="SlicesPerPie">4 to 16.</param>
/// <param name="OilInset">How far the oil stops short of the rim; null oils the whole base, rim and all.</param>
public sealed record PieShape(
    Centimetres Diameter,
    double ThicknessGramsPerCm2,
    Centimetres Rim,
    Centimetres SauceInset,
    Centimetres CheeseInset,
    int SlicesPerPie,
    Centimetres? OilInset = null)
{
    public const int FewestSlices = 4;
    public const int MostSlices = 16;

    public double AreaCm2 => Disc(Diameter.Value);
    public double ToppedAreaCm2 => Inside(0);
    public double SauceAreaCm2 => Inside(SauceInset.Value);
    public double CheeseAreaCm2 => Inside(CheeseInset.Value);
    public double OilAreaCm2 => OilInset is { } inset ? Inside(inset.Value) : AreaCm2;

    /// <summary>The dough ball this shape takes.</summary>
    public Grams Ball => new(AreaCm2 * ThicknessGramsPerCm2);

    private double Inside(double inset) => Disc(Math.Max(0, Diameter.Value - 2 * (Rim.Value + inset)));

    private static double Disc(double diameterCm) => Math.PI * diameterCm * diameterCm / 4;
}
