using GameNight.Nights.Records;
using GameNight.Planning.Dough;
using GameNight.Planning.Quantities;
using GameNight.Web.Wording;
using GameNight.Web.Wording.Texts;

namespace GameNight.Web.Host.Members;

/// <summary>A dough as text fields in the measures of the host; shares are typed in percent of the flour.</summary>
/// <param name="ranges">What a dough may be made of.</param>
/// <param name="shown">The shape that the fields showed; null for a new dough.</param>
public sealed class DoughForm(Measures measures, DoughRanges ranges, PieShape? shown = null)
{
    private static readonly PieShape Usual = new(new(33), 0.38, new(2), new(0.5), new(0), 8);

    public string Name { get; set; } = "";
    public string Water { get; set; } = "62";
    public string Salt { get; set; } = "2.5";
    public string Oil { get; set; } = "2";
    public string Sugar { get; set; } = "0";
    public bool SugarIsHoney { get; set; }
    public YeastForm Yeast { get; set; } = YeastForm.Instant;
    public string HeldBack { get; set; } = "12.5";
    public string Loss { get; set; } = "2";
    public string Diameter { get; set; } = measures.Length.Typed(Usual.Diameter.Value);
    public string Thickness { get; set; } = measures.MassPerArea.Typed(Usual.ThicknessGramsPerCm2);
    public string Rim { get; set; } = measures.Length.Typed(Usual.Rim.Value);
    public string SauceInset { get; set; } = measures.Length.Typed(Usual.SauceInset.Value);
    public string CheeseInset { get; set; } = measures.Length.Typed(Usual.CheeseInset.Value);
    public string OilInset { get; set; } = "";
    public string Slices { get; set; } = TypedNumbers.Text(Usual.SlicesPerPie);
    public DoughPartsForm Parts { get; private init; } = new(ranges);

    public static DoughForm Of(DoughRecipe recipe, Measures measures, DoughRanges ranges) => new(measures, ranges, recipe.Shape)
    {
        Name = recipe.Name,
        Water = TypedNumbers.Text(recipe.Formula.Water.Percent),
        Salt = TypedNumbers.Text(recipe.Formula.Salt.Percent),
        Oil = TypedNumbers.Text(recipe.Formula.Oil.Percent),
        Sugar = TypedNumbers.Text(recipe.Formula.Sugar.Percent),
        SugarIsHoney = recipe.Formula.SugarIsHoney,
        Yeast = recipe.Formula.Yeast,
        HeldBack = TypedNumbers.Text(recipe.Formula.HeldBackFlour.Percent),
        Loss = TypedNumbers.Text(recipe.Formula.Loss.Percent),
        Diameter = measures.Length.Typed(recipe.Shape.Diameter.Value),
        Thickness = measures.MassPerArea.Typed(recipe.Shape.ThicknessGramsPerCm2),
        Rim = measures.Length.Typed(recipe.Shape.Rim.Value),
        SauceInset = measures.Length.Typed(recipe.Shape.SauceInset.Value),
        CheeseInset = measures.Length.Typed(recipe.Shape.CheeseInset.Value),
        OilInset = recipe.Shape.OilInset is { } oil ? measures.Length.Typed(oil.Value) : "",
        Slices = TypedNumbers.Text(recipe.Shape.SlicesPerPie),
        Parts = DoughPartsForm.Of(recipe.Formula, ranges),
    };

    /// <returns>Formula and shape, or the fields that cannot be read. Field names are those of the planner's check.</returns>
    /// <param name="kneader">What the hands found, which is not typed here and stays.</param>
    public ((DoughFormula Formula, PieShape Shape)? Dough, IReadOnlyDictionary<string, string> Problems) Read(
        KneadersCorrection? kneader = null)
    {
        var numbers = new TypedNumbers("formula");
        var before = shown ?? Usual;
        var plain = new DoughFormula(
            // Milk may stand in for all of the water.
            Percent("water", Water, ranges.Water.High, Parts.Extras.Count == 0 ? ranges.Water.Low : 0),
            Percent("salt", Salt, ranges.Salt.High),
            Percent("oil", Oil, ranges.Oil.High),
            Percent("sugar", Sugar, ranges.Sugar.High),
            SugarIsHoney,
            Yeast,
            Percent("heldBackFlour", HeldBack, KneadersCorrection.Most),
            Percent("loss", Loss, 0.1),
            Kneader: kneader);
        var formula = Parts.Onto(plain, numbers);
        var shape = new PieShape(
            new Centimetres(numbers.Read("diameterCentimetres", Diameter, 15, 50, measures.Length, before.Diameter.Value)),
            numbers.Read("thicknessGramsPerCm2", Thickness, 0.15, 0.9, measures.MassPerArea, before.ThicknessGramsPerCm2),
            new Centimetres(numbers.Read("rimCentimetres", Rim, 0.5, 6, measures.Length, before.Rim.Value)),
            new Centimetres(numbers.Read("sauceInsetCentimetres", SauceInset, 0, 10, measures.Length, before.SauceInset.Value)),
            new Centimetres(numbers.Read("cheeseInsetCentimetres", CheeseInset, 0, 10, measures.Length, before.CheeseInset.Value)),
            numbers.ReadWhole("slicesPerPie", Slices, PieShape.FewestSlices, PieShape.MostSlices),
            OilInset.Trim().Length == 0
                ? null
                : new Centimetres(numbers.Read("oilInsetCentimetres", OilInset, 0, 10, measures.Length, before.OilInset?.Value)));
        return (numbers.Problems.Count == 0 ? (formula, shape) : null, numbers.Problems);

        Share Percent(string field, string text, double high, double low = 0) =>
            new(numbers.Read(field, text, Math.Round(100 * low, 6), Math.Round(100 * high, 6)) / 100);
    }

    /// <summary>What the dough is with all its parts together; nothing as long as something cannot be read.</summary>
    public IReadOnlyList<string> Then()
    {
        if (Read().Dough is not { Formula: var formula })
        {
            return [];
        }

        var all = Phrase.Fill(FormulaPages.DoughThen, QuantityText.Percent(formula.EffectiveHydration));
        return formula.Flours is { } flours && flours.Any(flour => flour.OfFlour.Value > 0) && formula.Blend is { } blend
            ? [all, Phrase.Fill(FormulaPages.BlendThen, QuantityText.Percent(blend.Absorption), QuantityText.Percent(blend.Protein))]
            : [all];
    }
}
