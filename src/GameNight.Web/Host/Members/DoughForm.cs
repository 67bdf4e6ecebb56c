using GameNight.Nights.Records;
using GameNight.Planning.Dough;
using GameNight.Planning.Quantities;

namespace GameNight.Web.Host.Members;

/// <summary>A dough as text fields; shares are typed in percent of the flour.</summary>
public sealed class DoughForm
{
    public string Name { get; set; } = "";
    public string Water { get; set; } = "62";
    public string Salt { get; set; } = "2.5";
    public string Oil { get; set; } = "2";
    public string Sugar { get; set; } = "0";
    public bool SugarIsHoney { get; set; }
    public YeastForm Yeast { get; set; } = YeastForm.Instant;
    public string HeldBack { get; set; } = "12.5";
    public string Loss { get; set; } = "2";
    public string Diameter { get; set; } = "33";
    public string Thickness { get; set; } = "0.38";
    public string Rim { get; set; } = "2";
    public string SauceInset { get; set; } = "0.5";
    public string CheeseInset { get; set; } = "0";
    public string Slices { get; set; } = "8";

    public static DoughForm Of(DoughRecipe recipe) => new()
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
        Diameter = TypedNumbers.Text(recipe.Shape.Diameter.Value),
        Thickness = TypedNumbers.Text(recipe.Shape.ThicknessGramsPerCm2),
        Rim = TypedNumbers.Text(recipe.Shape.Rim.Value),
        SauceInset = TypedNumbers.Text(recipe.Shape.SauceInset.Value),
        CheeseInset = TypedNumbers.Text(recipe.Shape.CheeseInset.Value),
        Slices = TypedNumbers.Text(recipe.Shape.SlicesPerPie),
    };

    /// <returns>Formula and shape, or the fields that cannot be read. Field names are those of the planner's check.</returns>
    public ((DoughFormula Formula, PieShape Shape)? Dough, IReadOnlyDictionary<string, string> Problems) Read()
    {
        var numbers = new TypedNumbers();
        var formula = new DoughFormula(
            Percent("water", Water, 100),
            Percent("salt", Salt, 4),
            Percent("oil", Oil, 15),
            Percent("sugar", Sugar, 10),
            SugarIsHoney,
            Yeast,
            Percent("heldBackFlour", HeldBack, 50),
            Percent("loss", Loss, 10));
        var shape = new PieShape(
            new Centimetres(numbers.Read("diameterCentimetres", Diameter, 15, 50)),
            numbers.Read("thicknessGramsPerCm2", Thickness, 0.15, 0.9),
            new Centimetres(numbers.Read("rimCentimetres", Rim, 0.5, 6)),
            new Centimetres(numbers.Read("sauceInsetCentimetres", SauceInset, 0, 10)),
            new Centimetres(numbers.Read("cheeseInsetCentimetres", CheeseInset, 0, 10)),
            numbers.ReadWhole("slicesPerPie", Slices, PieShape.FewestSlices, PieShape.MostSlices));
        return (numbers.Problems.Count == 0 ? (formula, shape) : null, numbers.Problems);

        Share Percent(string field, string text, double high) => new(numbers.Read(field, text, 0, high) / 100);
    }
}
