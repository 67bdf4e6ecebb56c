using GameNight.Planning;
using GameNight.Planning.Cheese;
using GameNight.Planning.Contract;
using GameNight.Planning.Foods;
using GameNight.Planning.Quantities;
using GameNight.TestKit;
using GameNight.Web.Host.SauceAndCheese;
using GameNight.Web.Wording;

namespace GameNight.Web.Tests.Panels;

public class SauceFormTests
{
    private static readonly ReferenceTables Tables = SharedFolder.Tables;

    public static TheoryData<string, string> Systems => new() { { "deep-pot", "metric" }, { "deep-pot", "us" }, { "bright-tin", "metric" }, { "bright-tin", "us" } };

    [Theory]
    [MemberData(nameof(Systems))]
    public void What_nobody_touched_comes_back_as_it_was(string formula, string system)
    {
        var sauce = Sauce(formula) with { Tins = [new Grams(411), new Grams(794)] };

        var (read, problems) = SauceForm.Of(sauce, Tables.Sauces, system == "us" ? Measures.UsCustomary : Measures.Metric).Read();

        Assert.Empty(problems);
        Assert.Equal(PlanJson.Canonical(sauce), PlanJson.Canonical(read!));
    }

    [Theory]
    [InlineData("0", "Type a number from 100 to 20")]
    [InlineData("none", "A sauce without tomato is none")]
    public void A_sauce_without_tomato_is_refused_with_the_range_and_why(string typed, string said)
    {
        var form = Form();
        form.Tomato = typed;

        var (sauce, problems) = form.Read();

        Assert.Null(sauce);
        Assert.Equal(["tomatoGrams"], problems.Keys);
        Assert.Contains(said, problems["tomatoGrams"], StringComparison.Ordinal);
    }

    [Fact]
    public void Three_kilograms_of_garlic_are_refused_with_the_range_and_why()
    {
        var form = Form();
        form.Parts[Food.Garlic] = "3000";

        var (sauce, problems) = form.Read();

        Assert.Null(sauce);
        Assert.Equal("Type a number from 0 to 100. More makes it a garlic paste.", Assert.Single(problems).Value);
        Assert.Equal("3000", form.Parts[Food.Garlic]);
    }

    [Fact]
    public void The_most_of_a_part_grows_with_the_tomato()
    {
        var form = Form();
        (form.Tomato, form.Parts[Food.Garlic]) = ("10000", "900");

        Assert.Equal(900, form.Read().Sauce!.Formula.Parts.Single(part => part.Food == Food.Garlic).Grams.Value);
    }

    [Theory]
    [InlineData("salt", "2.6")]
    [InlineData("simmerMinutes", "241")]
    [InlineData("tinSalt", "3.5")]
    [InlineData("diameterCentimetres", "5")]
    [InlineData("holdsGrams", "100")]
    [InlineData("evaporates", "90")]
    [InlineData("tins", "400, 6000")]
    [InlineData("tins", "a tin")]
    public void What_is_out_of_its_range_is_said_beside_its_field(string field, string typed)
    {
        var form = Form();
        switch (field)
        {
            case "salt": form.Salt = typed; break;
            case "simmerMinutes": form.Simmer = typed; break;
            case "tinSalt": form.TinSalt = typed; break;
            case "diameterCentimetres": form.PotDiameter = typed; break;
            case "holdsGrams": form.PotHolds = typed; break;
            case "evaporates": form.Evaporates = typed; break;
            case "tins": form.Tins = typed; break;
        }

        var (sauce, problems) = form.Read();

        Assert.Null(sauce);
        Assert.Matches("[0-9] to [0-9]", Assert.Contains(field, problems));
    }

    [Fact]
    public void A_wider_pot_simmers_off_more_and_a_typed_rate_is_that_of_the_whole_pot()
    {
        var (wider, typed) = (Form(), Form());
        wider.PotDiameter = "30";
        typed.Evaporates = "10";

        Assert.Equal(0.015, wider.Read().Sauce!.Formula.Pot.EvaporationGramsPerMinutePerCm2, 1e-9);
        Assert.Equal(10, typed.Read().Sauce!.Formula.Pot.EvaporationGramsPerMinute, 1e-9);
    }

    [Fact]
    public void No_base_is_asked_for()
    {
        var form = Form();
        form.BaseId = "";

        Assert.Equal(["baseId"], form.Read().Problems.Keys);
    }

    [Fact]
    public void A_blend_comes_back_as_it_was()
    {
        var cheese = new HouseCheese("blend", Tables.Cheese.Blends[1].Blend with { HardIsVegetarian = true });

        Assert.Equal(cheese, CheeseForm.Of(cheese, Tables.Cheese).Read().Cheese);
    }

    [Theory]
    [InlineData("80", "10", "5", "10", "blend", "95 %")]
    [InlineData("80", "10", "15", "10", "blend", "105 %")]
    [InlineData("80", "10", "10", "31", "drained", "Type a number from 0 to 30. Above that it is pressed, not drained.")]
    [InlineData("180", "10", "10", "10", "shareLowMoisture", "0 to 100")]
    public void A_blend_that_cannot_be_is_refused_with_what_would_be_right(
        string low, string hard, string fresh, string drained, string field, string said)
    {
        var form = CheeseForm.Of(new HouseCheese("blend", Tables.Cheese.Blends[0].Blend), Tables.Cheese);
        (form.Shares[CheeseKind.LowMoisture], form.Shares[CheeseKind.Hard], form.Shares[CheeseKind.Fresh], form.Drained) = (low, hard, fresh, drained);

        var (cheese, problems) = form.Read();

        Assert.Null(cheese);
        Assert.Contains(said, Assert.Contains(field, problems), StringComparison.Ordinal);
        Assert.Single(problems);
    }

    private static SauceForm Form() => SauceForm.Of(Sauce("bright-tin"), Tables.Sauces, Measures.Metric);

    private static HouseSauce Sauce(string id) =>
        new("tomato", Tables.Sauces.Formula(Tables.Sauces.Formulas.Single(row => row.Id == id)));
}
