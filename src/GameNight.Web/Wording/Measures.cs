using GameNight.Nights.Records;
using GameNight.Planning.Quantities;
using GameNight.Web.Wording.Texts;
using static GameNight.Web.Wording.Phrase;
using static GameNight.Web.Wording.QuantityText;

namespace GameNight.Web.Wording;

/// <summary>
/// How one person reads and types quantities. Only what is shown or typed passes here; planner and storage know grams, °C and
/// centimetres alone. Dough is always weighed in grams, with US customary measure beside them for those who read it.
/// </summary>
public sealed class Measures
{
    private static readonly Grams FirstPounds = new(2 * Unit.GramsPerPound);
    private static readonly Grams LeastOnAScaleOfOunces = new(0.1 * Unit.GramsPerOunce);

    private Measures(MeasureSystem system, Unit temperature, Unit length, Unit thickness, Unit mass, Unit altitude, Unit area, Unit massPerArea)
    {
        System = system;
        Temperature = temperature;
        Length = length;
        Thickness = thickness;
        Mass = mass;
        Altitude = altitude;
        Area = area;
        MassPerArea = massPerArea;
    }

    public static Measures Metric { get; } = new(
        MeasureSystem.Metric, Unit.Celsius, Unit.Centimetres, Unit.Millimetres, Unit.Grams, Unit.Metres, Unit.SquareCentimetres, Unit.GramsPerSquareCentimetre);

    public static Measures UsCustomary { get; } = new(
        MeasureSystem.UsCustomary, Unit.Fahrenheit, Unit.Inches, Unit.ThinInches, Unit.Ounces, Unit.Feet, Unit.SquareInches, Unit.OuncesPerSquareInch);

    public MeasureSystem System { get; }

    public bool IsUsCustomary => System == MeasureSystem.UsCustomary;

    public Unit Temperature { get; }

    public Unit Length { get; }

    /// <summary>Of stones and plates; kept in millimetres.</summary>
    public Unit Thickness { get; }

    /// <summary>The unit in which masses are typed.</summary>
    public Unit Mass { get; }

    public Unit Altitude { get; }

    public Unit Area { get; }

    public Unit MassPerArea { get; }

    public static Measures Of(MeasureSystem system) => system switch
    {
        MeasureSystem.Metric => Metric,
        MeasureSystem.UsCustomary => UsCustomary,
    };

    /// <summary>The unit of a field, whose name ends in what is kept there.</summary>
    /// <returns>Null for what is the same in all measures.</returns>
    public Unit? UnitOf(string field) =>
        field.EndsWith("Celsius", StringComparison.Ordinal) ? Temperature
        : field.EndsWith("Centimetres", StringComparison.Ordinal) ? Length
        : field.EndsWith("Millimetres", StringComparison.Ordinal) ? Thickness
        : field.EndsWith("GramsPerCm2", StringComparison.OrdinalIgnoreCase) ? MassPerArea
        : field.EndsWith("Grams", StringComparison.Ordinal) ? Mass
        : field.EndsWith("Metres", StringComparison.Ordinal) ? Altitude
        : null;

    /// <summary>The unit that suits a mass as a big numeral; its band is given in the same.</summary>
    public Unit MassFor(Grams mass) => IsUsCustomary && mass >= FirstPounds ? Unit.Pounds : Mass;

    public string Say(Celsius temperature) => SayTemperature(temperature.Value);

    /// <summary>For a temperature that no kitchen has, such as one that a rule asks for in vain.</summary>
    public string SayTemperature(double celsius) => Degrees(Temperature.NumberOf(celsius));

    /// <summary>As a thermometer in water is read.</summary>
    public string SayWholeDegrees(Celsius temperature) => Degrees(WholeDegrees(temperature));

    /// <summary>The number alone, for a big numeral with its unit beside it.</summary>
    public string WholeDegrees(Celsius temperature) => Whole(Temperature.From(temperature.Value));

    public string SayDifference(double kelvin) => Degrees(Temperature.NumberOfDifference(kelvin));

    public string Say(Centimetres length) =>
        Fill(IsUsCustomary ? Amounts.Inches : Amounts.Centimetres, Length.NumberOf(length.Value));

    /// <summary>"620 g", or "3 lb 9.1 oz".</summary>
    public string Say(Grams mass)
    {
        if (!IsUsCustomary)
        {
            return Grams(mass);
        }

        // Rounded first: 15.96 oz are a pound, not "0 lb 16.0 oz".
        var ounces = Math.Round(Unit.Ounces.From(mass.Value), 1);
        return ounces < 16
            ? Fill(Amounts.Ounces, Unit.Ounces.NumberOf(mass.Value))
            : Fill(Amounts.PoundsAndOunces, Whole(Math.Floor(ounces / 16)), Number(ounces % 16));
    }

    /// <summary>Dough and what goes into it, which is weighed: grams, and ounces beside.</summary>
    public string SayDough(Grams mass) => OuncesBeside(mass) is { } ounces ? Fill(Amounts.Beside, Grams(mass), ounces) : Grams(mass);

    /// <summary>What stands beside grams that are weighed.</summary>
    /// <returns>Null for who reads grams alone, and for what no scale of ounces shows.</returns>
    public string? OuncesBeside(Grams mass) => IsUsCustomary && mass >= LeastOnAScaleOfOunces ? Say(mass) : null;

    public string SayAltitude(double metres) => Fill(IsUsCustomary ? Amounts.Feet : Amounts.Metres, Altitude.NumberOf(metres));

    public string SayArea(double cm2) =>
        Fill(IsUsCustomary ? Amounts.SquareInches : Amounts.SquareCentimetres, Area.NumberOf(cm2));

    public string SayPerArea(double gramsPerCm2) => Fill(
        IsUsCustomary ? Amounts.OuncesPerSquareInch : Amounts.GramsPerSquareCentimetre, MassPerArea.NumberOf(gramsPerCm2));

    public string SayDoughPerArea(double gramsPerCm2) => Fill(
        IsUsCustomary ? Amounts.DoughOuncesPerSquareInch : Amounts.DoughGramsPerSquareCentimetre, MassPerArea.NumberOf(gramsPerCm2));

    private string Degrees(string number) => Fill(IsUsCustomary ? Amounts.Fahrenheit : Amounts.Celsius, number);
}
