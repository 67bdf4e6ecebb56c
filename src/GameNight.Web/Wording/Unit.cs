using GameNight.Web.Wording.Texts;
using static GameNight.Web.Wording.QuantityText;

namespace GameNight.Web.Wording;

/// <summary>
/// One unit in which a quantity is shown and typed. Everything is kept in grams, °C, centimetres and metres; a unit says how
/// many of those it is. Factors: NIST Handbook 44, appendix C (exact: the inch is 2.54 cm, the pound 453.592 37 g, the foot
/// 0.3048 m); degrees Fahrenheit: NIST SP 811, appendix B.
/// </summary>
public sealed class Unit
{
    public const double GramsPerPound = 453.59237;
    public const double GramsPerOunce = GramsPerPound / 16;
    public const double CentimetresPerInch = 2.54;
    public const double MetresPerFoot = 0.3048;
    private const double FreezingFahrenheit = 32;

    private readonly Func<string> _symbol;
    private readonly Func<double, string> _number;
    private readonly double _size;
    private readonly double _zero;
    private readonly int _typedDecimals;

    private Unit(Func<string> symbol, double size, int typedDecimals, Func<double, string> number, double zero = 0)
    {
        (_symbol, _size, _zero, _typedDecimals, _number) = (symbol, size, zero, typedDecimals, number);
    }

    public static Unit Celsius { get; } = new(() => Amounts.UnitCelsius, 1, 2, Number);

    public static Unit Fahrenheit { get; } = new(() => Amounts.UnitFahrenheit, 5 / 9.0, 1, Whole, FreezingFahrenheit);

    public static Unit Grams { get; } = new(() => Amounts.UnitGrams, 1, 2, value => GramNumber(new(value)));

    /// <summary>As a kitchen scale shows them: tenths from one ounce, hundredths below.</summary>
    public static Unit Ounces { get; } = new(
        () => Amounts.UnitOunces, GramsPerOunce, 2, value => value >= 1 ? Tenths(value) : Hundredths(value));

    public static Unit Pounds { get; } = new(() => Amounts.UnitPounds, GramsPerPound, 2, Hundredths);

    public static Unit Centimetres { get; } = new(() => Amounts.UnitCentimetres, 1, 2, Number);

    public static Unit Inches { get; } = new(() => Amounts.UnitInches, CentimetresPerInch, 2, Number);

    /// <summary>Kept in millimetres.</summary>
    public static Unit Millimetres { get; } = new(() => Amounts.UnitMillimetres, 1, 1, Number);

    /// <summary>Kept in millimetres, for what is thin.</summary>
    public static Unit ThinInches { get; } = new(() => Amounts.UnitInches, 10 * CentimetresPerInch, 3, Hundredths);

    public static Unit Metres { get; } = new(() => Amounts.UnitMetres, 1, 0, Whole);

    public static Unit Feet { get; } = new(() => Amounts.UnitFeet, MetresPerFoot, 0, Whole);

    /// <summary>Kept in cm².</summary>
    public static Unit SquareCentimetres { get; } = new(() => Amounts.UnitSquareCentimetres, 1, 1, Whole);

    /// <summary>Kept in cm².</summary>
    public static Unit SquareInches { get; } = new(() => Amounts.UnitSquareInches, CentimetresPerInch * CentimetresPerInch, 1, Whole);

    /// <summary>Kept in grams per cm².</summary>
    public static Unit GramsPerSquareCentimetre { get; } = new(() => Amounts.UnitGramsPerSquareCentimetre, 1, 4, Hundredths);

    /// <summary>Kept in grams per cm².</summary>
    public static Unit OuncesPerSquareInch { get; } = new(
        () => Amounts.UnitOuncesPerSquareInch, GramsPerOunce / (CentimetresPerInch * CentimetresPerInch), 4, Thousandths);

    /// <summary>As it stands beside a number: "°F".</summary>
    public string Symbol => _symbol();

    /// <summary>From what is kept to this unit, unrounded.</summary>
    public double From(double kept) => kept / _size + _zero;

    /// <summary>From this unit to what is kept, unrounded.</summary>
    public double ToKept(double inThisUnit) => (inThisUnit - _zero) * _size;

    /// <summary>A difference has no zero: 9 degrees Fahrenheit for 5 K.</summary>
    public double FromDifference(double kept) => kept / _size;

    /// <summary>What is kept, rounded for the kitchen.</summary>
    public string NumberOf(double kept) => _number(From(kept));

    /// <summary>The number with its sign: "2.50 lb".</summary>
    public string Say(double kept) => Phrase.Fill(Amounts.WithUnit, NumberOf(kept), Symbol);

    public string NumberOfDifference(double kept) => _number(FromDifference(kept));

    /// <summary>As it stands in a field: no more digits than somebody would type, a point before the decimals.</summary>
    public string Typed(double kept) => TypedText(Math.Round(From(kept), _typedDecimals));

    /// <summary>The lowest number that may be typed, rounded up so that it may.</summary>
    public double LowestTyped(double lowestKept) => RoundedUp(From(lowestKept));

    public double HighestTyped(double highestKept) => -RoundedUp(-From(highestKept)) + 0.0;

    private double RoundedUp(double value)
    {
        var scale = Math.Pow(10, _typedDecimals);

        // A billionth of leeway keeps a whole number whole that the division left a hair too large. Adding zero
        // turns -0 into 0.
        return Math.Ceiling(value * scale - 1e-9) / scale + 0.0;
    }

    private static string TypedText(double value) => value.ToString("0.####", System.Globalization.CultureInfo.InvariantCulture);
}
