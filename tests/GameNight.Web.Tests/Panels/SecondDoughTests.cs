using Bunit;
using GameNight.Nights.ForHosts;
using GameNight.Nights.Records;
using GameNight.Planning.Guests;
using GameNight.Planning.Toppings;
using GameNight.TestKit;
using GameNight.Web.Host.Members;
using GameNight.Web.Host.Plan;
using GameNight.Web.Host.Print;
using GameNight.Web.Tests.Print;
using GameNight.Web.Wording;

namespace GameNight.Web.Tests.Panels;

public class SecondDoughTests : BunitContext
{
    private const string NotForCoeliacs = "A home kitchen that uses wheat flour is not fit for coeliacs: flour dust travels.";

    private HouseMenu _house = HouseMenu.Usual;

    [Fact]
    public void A_host_describes_it_by_its_pack_and_the_page_says_what_it_is_not()
    {
        var panel = Panel();
        Assert.Contains(NotForCoeliacs, panel.Markup, StringComparison.Ordinal);
        panel.Find("button").Click();
        Assert.Equal(SecondDoughText.Name(null), panel.Find("#second-name").GetAttribute("value"));
        Type(("name", "Maize dough"), ("mix", "160"), ("water", "125"), ("yeast", "2,5"), ("salt", "3.5"), ("rise", "1.5"));
        panel.Find("#second-on").Change("BakingPaper");
        panel.Find("#second-paper").Change("230");
        panel.Find("#second-a-Soybeans").Change("MayContain");
        panel.Find("#second-a-GlutenCereals").Change("Nothing");
        panel.FindAll(".days input")[1].Change(true);
        panel.Find("form").Submit();

        var kept = _house.SecondDough!;
        Assert.Equal("Maize dough", kept.Name);
        Assert.Equal(Plans.Maize.Recipe with { Rise = NodaTime.Duration.FromMinutes(90) }, kept.Dough.Recipe);
        Assert.Equal([Allergen.Soybeans], kept.Dough.Composition.MayContain);
        Assert.DoesNotContain(Allergen.GlutenCereals, kept.Dough.Composition.Unknown);
        Assert.Equal(12, kept.Dough.Composition.Unknown.Count);
        Assert.Single(kept.Dough.Composition.Suits);

        panel = Panel();
        Assert.Contains("A pie takes 291 g of it. It rises 1 h 30 min, as its pack says, and is baked on baking paper whose maker allows 230 °C.", panel.Find(".rowline").TextContent, StringComparison.Ordinal);
        panel.FindAll(".rowline button")[1].Click();
        Assert.True(_house.IsUsual);

        void Type(params (string Field, string Text)[] fields)
        {
            foreach (var (field, text) in fields)
            {
                panel.Find($"#second-{field}").Change(text);
            }
        }
    }

    [Fact]
    public void What_cannot_be_is_told_at_its_field_with_the_range_and_its_reason_and_nothing_typed_is_lost()
    {
        var panel = Panel();
        panel.Find("button").Click();
        panel.Find("#second-name").Change(" ");
        panel.Find("#second-mix").Change("5");
        panel.Find("#second-water").Change("much");
        panel.Find("#second-on").Change("BakingPaper");
        panel.Find("form").Submit();

        Assert.Null(_house.SecondDough);
        Assert.Contains("from 20 to 1", panel.Find("#second-mix-note").TextContent, StringComparison.Ordinal);
        Assert.Contains("makes no pie", panel.Find("#second-mix-note").TextContent, StringComparison.Ordinal);
        Assert.Equal("true", panel.Find("#second-paper").GetAttribute("aria-invalid"));
        Assert.Equal("much", panel.Find("#second-water").GetAttribute("value"));
        Assert.Contains("1 to 40", panel.Find("#second-name-note").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void Who_may_not_change_the_menu_reads_it()
    {
        _house = new HouseMenu(SecondDough: new HouseSecondDough("Maize dough", Plans.Maize));

        Assert.Empty(Panel(mayChange: false).FindAll("button"));
    }

    /// <summary>One pie: 160 g of mix, 125 of water, 2.5 of yeast and 3.5 of salt are 291 g; no oil.</summary>
    [Fact]
    public void The_amounts_stand_with_how_it_is_handled_what_its_paper_bears_and_what_it_is_not()
    {
        var text = Render<SecondDoughPanel>(with => with.Add(p => p.Plan, Plans.OnTwoDoughs.SecondDough!).Add(p => p.Called, "maize dough"));

        Assert.Equal("Maize dough", text.Find("h2").TextContent);
        Assert.Equal(
            ["Flour or mix|160|160", "Water|125|125", "Yeast|2.5|2.5", "Salt|3.5|3.5"],
            text.FindAll("tbody tr").Select(row => string.Join('|', row.Children.Select(cell => cell.TextContent.Trim()))));
        Assert.Contains("in its own bowl and on its own board", text.Markup, StringComparison.Ordinal);
        Assert.Contains("no model of ours", text.Markup, StringComparison.Ordinal);
        Assert.Contains("The oven is set to 250 °C, and the maker of the baking paper under the other dough allows 230 °C.", text.Markup, StringComparison.Ordinal);
        Assert.Contains(NotForCoeliacs, text.Markup, StringComparison.Ordinal);
    }

    [Fact]
    public void Card_table_and_pies_say_the_dough_of_the_pie_and_the_table_what_it_holds()
    {
        var split = Plans.OnTwoDoughs.Split;
        var card = Render<CardsSheet>(with => with
            .Add(p => p.Split, split).Add(p => p.Head, Paper.Head).Add(p => p.Items, Plans.Items).Add(p => p.Labels, Paper.Labels)
            .Add(p => p.People, Plans.Names).Add(p => p.Needs, Paper.Needs).Add(p => p.SecondDough, Plans.Maize).Add(p => p.SecondDoughName, "maize dough"))
            .FindAll("article");
        var table = Render<TableSheet>(with => with
            .Add(p => p.Split, split).Add(p => p.Head, Paper.Head).Add(p => p.Items, Plans.Items).Add(p => p.SecondDough, "maize dough")
            .Add(p => p.Allergens, PieAllergens.Of(split, Paper.Labels, SharedFolder.Tables.Menu.Dough, Plans.Maize.Composition)));
        var pies = Render<PiesPanel>(with => with.Add(p => p.Split, split).Add(p => p.Items, Plans.Items).Add(p => p.Names, Plans.Names));

        Assert.Contains("On maize dough: on its own board, away from other flour.", card[0].TextContent, StringComparison.Ordinal);
        Assert.Contains("no flour but its own. Baked on baking paper whose maker allows 230 °C.", card[0].TextContent, StringComparison.Ordinal);
        Assert.Contains(NotForCoeliacs, card[0].TextContent, StringComparison.Ordinal);
        Assert.DoesNotContain("maize", string.Concat(card.Skip(1).Select(one => one.TextContent)), StringComparison.Ordinal);
        var served = table.FindAll("article")[0];
        Assert.Contains("On maize dough, made apart: ask the host before you take from it.", served.TextContent, StringComparison.Ordinal);
        Assert.Contains(NotForCoeliacs, served.TextContent, StringComparison.Ordinal);
        Assert.DoesNotContain("gluten", served.QuerySelector(".contains")!.TextContent, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("gluten", served.QuerySelector(".may")!.TextContent, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("soy", served.QuerySelector(".may")!.TextContent, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotMatch("Rui", table.Markup);
        Assert.Contains("On the other dough: on its own board, away from other flour.", pies.Find("li").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void It_is_bought_for_by_itself()
    {
        var list = Render<ShoppingSheet>(with => with
            .Add(p => p.Plan, Plans.OnTwoDoughs).Add(p => p.Head, Paper.Head).Add(p => p.Items, Plans.Items).Add(p => p.Roles, Paper.Roles)
            .Add(p => p.SecondDough, "maize dough"));

        Assert.Contains("Maize dough", list.FindAll("h3").Select(head => head.TextContent));
        Assert.Contains(list.FindAll("tbody tr"), row => row.TextContent.Contains("Flour or mix", StringComparison.Ordinal) && row.TextContent.Contains("160", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(NothingPermittedBecause.Kitchen, "Another dough from the same kitchen does not change that.")]
    [InlineData(NothingPermittedBecause.Dough, "It is described on the page of the menu.")]
    public void Whoever_gets_nothing_is_told_of_with_what_helps(NothingPermittedBecause cause, string says)
    {
        var said = new ConflictText(Plans.Zone, _ => "Rui", Measures.Metric).Say(new NothingPermitted("rui", cause));

        Assert.Contains(says, said, StringComparison.Ordinal);
        Assert.Contains("not fit for coeliacs", said, StringComparison.Ordinal);
    }

    private IRenderedComponent<SecondDoughRulesPanel> Panel(bool mayChange = true) => Render<SecondDoughRulesPanel>(with => with
        .Add(p => p.House, _house).Add(p => p.MayChange, mayChange).Add(p => p.Change, change =>
        {
            _house = change(_house);
            return Task.FromResult<SaveResult?>(new SaveResult.Saved());
        }));
}
