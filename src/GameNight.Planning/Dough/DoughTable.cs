using GameNight.Planning.Reference;

namespace GameNight.Planning.Dough;

/// <summary>A starting formula: shares of flour mass, thickness and shape.</summary>
/// <param name="OilInsetCentimetres">Null when the whole base is oiled.</param>
public sealed record StyleRow(
    string Id,
    double Water,
    double Salt,
    double Oil,
    double Sugar,
    double ThicknessGramsPerCm2,
    double DiameterCentimetres,
    double RimCentimetres,
    double SauceInsetCentimetres,
    double CheeseInsetCentimetres,
    double? OilInsetCentimetres,
    int SlicesPerPie,
    string Ferment,
    string Source);

public sealed record DoughRanges(
    ValidRange Water,
    ValidRange Salt,
    ValidRange Oil,
    ValidRange Sugar,
    ValidRange ThicknessGramsPerCm2,
    ValidRange BallGrams,
    ValidRange DiameterCentimetres,
    ValidRange RimCentimetres,
    ValidRange Extra,
    ValidRange Absorption,
    ValidRange Protein,
    ValidRange PrefermentFlour,
    ValidRange PrefermentWater,
    ValidRange PrefermentHours,
    ValidRange SoakerFlour,
    ValidRange SoakerWater);

/// <summary>A share beyond which a dough is still made, with a word of warning.</summary>
public sealed record WarningRow(double Share, string Source);

public sealed record LossRow(double Share, double Low, double High, string Source);

public sealed record HeldBackRow(double Share, string Source);

public sealed record TargetRow(double Value, double Low, double High, string Source);

public sealed record FrictionRow(KneadingWay Kneading, double KelvinOfTheSum, string Source);

/// <summary>Ice as it comes from the freezer.</summary>
public sealed record IceRow(double Celsius, string Source);

/// <summary>How dry yeast is woken: a share of the water, and when it must have foamed.</summary>
public sealed record ActivationRow(
    YeastForm Form, double Celsius, double ShareOfWater, double FoamMinutes, string Source);

public sealed record YeastRow(YeastForm Form, double MassPerFresh, string Source);

/// <summary>Dough styles, valid ranges, and the factors of the dough models.</summary>
public sealed record DoughTable(
    IReadOnlyList<StyleRow> Styles,
    DoughRanges Ranges,
    LossRow Loss,
    HeldBackRow HeldBackFlour,
    TargetRow TargetDoughCelsius,
    IReadOnlyList<FrictionRow> Friction,
    IReadOnlyList<YeastRow> Yeast,
    WarningRow OilAbove,
    WarningRow SaltBelow,
    IceRow Ice,
    ActivationRow Activation)
{
    internal const string File = "dough-styles.json";

    private readonly IReadOnlyDictionary<KneadingWay, FrictionRow> _friction =
        ReferenceText.OneRowEach(File, Friction, row => row.Kneading);

    private readonly IReadOnlyDictionary<YeastForm, YeastRow> _yeast =
        ReferenceText.OneRowEach(File, Yeast, row => row.Form);

    public FrictionRow Of(KneadingWay kneading) => _friction[kneading];
    public YeastRow Of(YeastForm form) => _yeast[form];
}
