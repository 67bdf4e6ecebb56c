using GameNight.Planning.Dough;
using GameNight.Planning.Quantities;
using GameNight.TestKit;

namespace GameNight.Reference.Tests;

/// <summary>What the engine says of formulas and shapes.</summary>
internal static class DoughAnswers
{
    private const double GramsPerOunce = 28.349523125;

    private static readonly DoughFormula Lehmann = Formula(0.58, 0.0175, oil: 0.01);

    private static StyleRow Regulated => SharedFolder.Tables.Dough.Styles.Single(style => style.Id == "regulated-naples");

    public static IReadOnlyDictionary<string, Func<double>> ById { get; } = new Dictionary<string, Func<double>>
    {
        ["A1.water"] = () => RegulatedBatch(50).Water / RegulatedBatch(50).Flour * 100,
        ["A1.salt"] = () => RegulatedBatch(50).Salt / RegulatedBatch(50).Flour * 100,
        ["A1.yeast"] = () => RegulatedBatch(50).Yeast / RegulatedBatch(50).Flour * 100,
        ["A2.few"] = () => RegulatedBatch(50).Total / new Grams(250),
        ["A2.many"] = () => RegulatedBatch(55).Total / new Grams(180),
        ["A5.area"] = () => Shape(35, 0.26).AreaCm2,
        ["A5.thickness"] = () => 250 / Shape(35, 0.26).AreaCm2,
        ["A1.saltMost"] = () => RegulatedBatch(55).Salt / RegulatedBatch(55).Flour * 100,
        ["A4.largest"] = () => Shape(Regulated.DiameterCentimetres, Regulated.ThicknessGramsPerCm2).Ball.Value,
        ["A5.diameter"] = () => Regulated.DiameterCentimetres,
        ["A5.rim"] = () => Regulated.RimCentimetres,
        ["A8.water"] = () => Regulated.Water * 100,
        ["A12.salt"] = () => Regulated.Salt / Regulated.Water * 1000,
        ["A12.flour"] = () => 1 / Regulated.Water,
        ["A12.dry"] = () => PerFresh(YeastForm.Instant),
        ["A13.salt"] = () => 100 * Formula(1000.0 / 1800, 50.0 / 1800).Salt.Value,
        ["B1.water"] = () => LehmannBatch().Water.Value / GramsPerOunce,
        ["B1.salt"] = () => LehmannBatch().Salt.Value / GramsPerOunce,
        ["B1.oil"] = () => LehmannBatch().Oil.Value / GramsPerOunce,
        ["B1.yeast"] = () => LehmannBatch().Yeast.Value / GramsPerOunce,
        ["B2"] = () => 100 * Formula(0.58, 0.0175, oil: 0.02).TotalPerFlour + 0.375,
        ["B11.instant"] = () => PerFresh(YeastForm.Instant),
        ["B11.activeDry"] = () => PerFresh(YeastForm.ActiveDry),
        ["B12.activeDry"] = () => PerFresh(YeastForm.ActiveDry),
        ["B12.instant"] = () => PerFresh(YeastForm.Instant),
        ["I6"] = () => 853 / Shape(14 * 2.54, 0.4).AreaCm2,
    };

    private static double PerFresh(YeastForm form) => SharedFolder.Tables.Dough.Of(form).MassPerFresh;

    private static DoughFormula Formula(double water, double salt, double oil = 0) => new(
        new Share(water), new Share(salt), new Share(oil), new Share(0), false, YeastForm.Fresh, new Share(0), new Share(0));

    private static DoughBatch RegulatedBatch(double saltGrams) => DoughBatch.Weighing(
        new Grams(1000 + 1800 + saltGrams + 3), Formula(1000.0 / 1800, saltGrams / 1800), new Share(3.0 / 1800));

    private static DoughBatch LehmannBatch()
    {
        var flourGrams = 640 * GramsPerOunce;
        return DoughBatch.Weighing(
            new Grams(flourGrams * (Lehmann.TotalPerFlour + 0.00375)), Lehmann, new Share(0.00375));
    }

    private static PieShape Shape(double diameterCm, double thickness) => new(
        new Centimetres(diameterCm), thickness, new Centimetres(1.5), default, default, 8);
}
