using Bunit;
using GameNight.Nights.Records;
using GameNight.Planning;
using GameNight.Planning.Foods;
using GameNight.Planning.Guests;
using GameNight.Planning.Quantities;
using GameNight.Planning.Sauce;
using GameNight.Planning.Toppings;
using GameNight.TestKit;
using GameNight.TestKit.Nights;
using GameNight.Web.Host.Print;
using GameNight.Web.Host.SauceAndCheese;
using GameNight.Web.Wording;
using NodaTime;

namespace GameNight.Web.Tests.Panels;

public class SaucePanelTests : BunitContext
{
    private static readonly ReferenceTables Tables = SharedFolder.Tables;
    private static readonly HouseSauce Deep = Sauce("deep-pot");
    private static readonly NightSnapshot Night = NightBuilder.ANight().WithGuests(8).Build() with
    {
        Sauce = Deep,
        CheeseBlend = new HouseCheese("cheese-blend", Tables.Cheese.Blends[0].Blend),
    };

    private static readonly NightPlan Planned = Plans.Of(Night);

    [Fact]
    public void Says_what_to_open_how_far_to_simmer_and_how_much_salt_comes_last()
    {
        var sauce = Planned.SauceToMake!;
        var text = TextOf(PanelOf(sauce, Deep));

        Assert.Contains(QuantityText.Grams(new Grams(sauce.Finished.Value - sauce.Salt.Value)) + " on the scale", text, StringComparison.Ordinal);
        Assert.Contains($"stir in {QuantityText.Grams(sauce.Salt)} of salt, last", text, StringComparison.Ordinal);
        Assert.Matches("[0-9]+ tins? of ", text);
        Assert.Contains("Read the label: yours may be unsalted.", text, StringComparison.Ordinal);
        Assert.Equal(sauce.Weigh.Count, PanelOf(sauce, Deep).FindAll("tbody tr").Count);
    }

    [Fact]
    public void Wine_is_said_with_its_alcohol_its_sulphites_and_the_diets_it_does_not_keep()
    {
        var (wine, none) = (TextOf(PanelOf(Planned.SauceToMake!, Deep)), TextOf(PanelOf(Made(Sauce("bright-tin").Formula), Sauce("bright-tin"))));

        Assert.Contains("of the wine's alcohol stays", wine, StringComparison.Ordinal);
        Assert.Contains("go to nobody who must have no alcohol", wine, StringComparison.Ordinal);
        Assert.Contains("sulphites", wine, StringComparison.Ordinal);
        Assert.Contains("no diet unless its label says so", wine, StringComparison.Ordinal);
        Assert.DoesNotMatch("alcohol|sulphites|diet", none);
    }

    [Fact]
    public void What_is_left_over_has_its_days_and_defers_to_the_authority()
    {
        var text = TextOf(PanelOf(Planned.SauceToMake!, Deep));

        var until = QuantityText.ShortDay(QuantityText.Local(Planned.SauceToMake!.Surplus.FridgeUntil!.Value, Plans.Zone).Date);
        Assert.Contains($"In the fridge until {until}", text, StringComparison.Ordinal);
        Assert.Contains("your national food authority leads", text, StringComparison.Ordinal);
        Assert.Contains("Garlic or herbs kept in oil go into the fridge at once", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Several_pots_are_told_and_their_masses_are_of_one()
    {
        var pot = Deep.Formula.Pot with { Holds = new Grams(600) };
        var sauce = Made(Deep.Formula with { Pot = pot });

        var text = TextOf(PanelOf(sauce, Deep));

        Assert.True(sauce.Pots > 1);
        Assert.Contains($"in {sauce.Pots} pots, one after the other", text, StringComparison.Ordinal);
        Assert.Contains($"{QuantityText.Grams(new Grams((sauce.Finished.Value - sauce.Salt.Value) / sauce.Pots))} on the scale", text, StringComparison.Ordinal);
    }

    [Fact]
    public void What_the_model_had_to_give_up_is_said()
    {
        var thick = Made(Deep.Formula with { Simmer = Duration.FromMinutes(240) }, needed: 100);
        var salty = Made(Deep.Formula with { Salt = new Share(0.001) });

        Assert.Contains("as thick as paste", TextOf(PanelOf(thick, Deep)), StringComparison.Ordinal);
        Assert.Contains("No salt goes in.", TextOf(PanelOf(salty, Deep)), StringComparison.Ordinal);
        Assert.Contains("more than the 0.1 % you ask for", TextOf(PanelOf(salty, Deep)), StringComparison.Ordinal);
    }

    [Fact]
    public void Readers_of_ounces_have_them_beside_the_grams()
    {
        var panel = Render<SaucePanel>(with => with.AddCascadingValue(Measures.UsCustomary)
            .Add(p => p.Sauce, Planned.SauceToMake!).Add(p => p.House, Deep).Add(p => p.Zone, Plans.Zone).Add(p => p.Tables, Tables));

        Assert.Matches(@"g \([0-9]+ lb [0-9.]+ oz\) on the scale", TextOf(panel));
    }

    [Fact]
    public void Cheese_is_bought_with_what_is_lost_and_kept_cold()
    {
        var cheese = Planned.CheeseToGrate!;
        var panel = Render<CheesePanel>(with => with
            .Add(p => p.Cheese, cheese).Add(p => p.CheeseAreaCm2, Night.Shape.CheeseAreaCm2).Add(p => p.Zone, Plans.Zone).Add(p => p.Tables, Tables));

        var cells = panel.FindAll("tbody tr").Select(row => row.TextContent).ToList();
        Assert.Equal(3, cells.Count);
        Assert.All(cheese.Parts.Zip(cells), pair =>
        {
            Assert.Contains(QuantityText.Grams(pair.First.ToBuy), pair.Second, StringComparison.Ordinal);
            Assert.Contains(QuantityText.Grams(pair.First.OnPies), pair.Second, StringComparison.Ordinal);
        });
        Assert.Contains("stays in the fridge until the pie is topped", TextOf(panel), StringComparison.Ordinal);
        Assert.Contains("in thin strips", TextOf(panel), StringComparison.Ordinal);
        Assert.Contains($"{FoodText.Rough(new Grams(cheese.FatGramsPerCm2 * Night.Shape.CheeseAreaCm2), Measures.Metric)} of fat", TextOf(panel), StringComparison.Ordinal);
    }

    [Fact]
    public void The_fields_show_what_a_formula_becomes_and_brings()
    {
        var panel = Render<SauceFields>(with => with.Add(p => p.Form, SauceForm.Of(Deep, Tables.Sauces, Measures.Metric)).Add(p => p.Tables, Tables));

        Assert.Contains("simmer off, half or twice as much", TextOf(panel), StringComparison.Ordinal);
        Assert.Contains("Contains sulphites.", TextOf(panel), StringComparison.Ordinal);

        panel.Find("#partRedWine").Change("0");

        Assert.Contains("No listed allergen by what goes in.", TextOf(panel), StringComparison.Ordinal);
    }

    [Fact]
    public void A_problem_stands_beside_its_field_and_what_was_typed_stays()
    {
        var form = SauceForm.Of(Deep, Tables.Sauces, Measures.Metric);
        form.Parts[Food.Garlic] = "3000";
        var panel = Render<SauceFields>(with => with.Add(p => p.Form, form).Add(p => p.Tables, Tables).Add(p => p.Problems, form.Read().Problems));

        var garlic = panel.Find("#partGarlic");
        Assert.Equal(("true", "3000"), (garlic.GetAttribute("aria-invalid"), garlic.GetAttribute("value")));
        Assert.Contains("0 to 100", panel.Find("#" + garlic.GetAttribute("aria-describedby")).TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void Printed_labels_name_the_sulphites_of_the_wine_in_the_sauce()
    {
        var id = MenuItemId.New();
        var item = new PantryItem(GroupId.New(), id, "Tomato sauce", MenuRole.Base, 0.1, Composition.Nothing, 0, null);

        var labels = HouseLabels.Of(Night with { Sauce = Deep with { BaseId = id.ToString() } }, [item], Tables);
        var without = HouseLabels.Of(Night, [item], Tables);

        Assert.Equal([Allergen.Sulphites], labels[id.ToString()].Contains);
        Assert.DoesNotContain(Diet.NoAlcohol, labels[id.ToString()].Suits);
        Assert.Empty(without[id.ToString()].Contains);
    }

    [Theory]
    [InlineData(36.4, "36 g")]
    [InlineData(16.6, "17 g")]
    [InlineData(1.387, "1.4 g")]
    [InlineData(0.1337, "0.13 g")]
    [InlineData(0, "0 g")]
    public void What_is_roughly_known_has_two_digits(double grams, string said) =>
        Assert.Equal(said, FoodText.Rough(new Grams(grams), Measures.Metric));

    private IRenderedComponent<SaucePanel> PanelOf(SaucePlan sauce, HouseSauce house) => Render<SaucePanel>(with => with
        .Add(p => p.Sauce, sauce).Add(p => p.House, house).Add(p => p.Zone, Plans.Zone).Add(p => p.Tables, Tables));

    private static SaucePlan Made(SauceFormula formula, double needed = 1500) =>
        SaucePlan.For(formula, new Grams(needed), new Grams(60), Tables.Sauces.TinSizes, Tables.Sauces, Tables.Foods);

    private static HouseSauce Sauce(string id) =>
        new("tomato-sauce", Tables.Sauces.Formula(Tables.Sauces.Formulas.Single(row => row.Id == id)));

    private static string TextOf<T>(IRenderedComponent<T> panel)
        where T : Microsoft.AspNetCore.Components.IComponent => string.Join(' ', panel.Nodes.Select(node => node.TextContent));
}
