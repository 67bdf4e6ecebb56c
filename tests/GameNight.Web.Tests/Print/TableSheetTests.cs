using Bunit;
using GameNight.Planning.Guests;
using GameNight.Planning.Toppings;
using GameNight.TestKit;
using GameNight.Web.Host.Print;
using GameNight.Web.Tests.Panels;
using GameNight.Web.Wording;

namespace GameNight.Web.Tests.Print;

public class TableSheetTests : BunitContext
{
    private static readonly IReadOnlyList<PieAllergens> Known = PieAllergens.Of(Paper.Split, Paper.Labels, SharedFolder.Tables.Menu.Dough);

    [Fact]
    public void Names_nobody_and_asks_everybody_to_ask()
    {
        var text = Sheet(Known).Find("section").TextContent;

        Assert.All(Plans.Names, person =>
        {
            Assert.DoesNotContain(person.Value, text, StringComparison.OrdinalIgnoreCase);
            Assert.DoesNotContain(person.Key, text.Split(' ', '.', ','));
        });
        Assert.Contains("Ask the host", text, StringComparison.Ordinal);
        Assert.Contains("Kept apart", text, StringComparison.Ordinal);
        Assert.DoesNotContain("Own pie for", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Never_calls_a_pie_safe_or_free_from_anything() =>
        Assert.DoesNotMatch("(?i)\\bsafe(ly)?\\b|free[ -](from|of)|gluten-free|guarantee", Sheet(Known).Find("section").TextContent);

    [Fact]
    public void Contained_possible_and_unknown_stand_apart()
    {
        var known = new PieAllergens(1, [Allergen.Milk], [Allergen.Mustard], [Allergen.Fish], [Allergen.Lupin], [Allergen.Celery]);

        var row = Sheet([known, .. Known.Skip(1)]).Find("article");

        Assert.Equal("milk", row.QuerySelector(".contains dd")!.TextContent);
        Assert.Equal("mustard; from the shared kitchen: fish", row.QuerySelector(".may dd")!.TextContent);
        Assert.Equal("lupin; from the shared kitchen: celery", row.QuerySelector(".unknown dd")!.TextContent);
        Assert.DoesNotMatch("milk|mustard|fish|lupin|celery", row.QuerySelector(".notnamed dd")!.TextContent);
    }

    [Fact]
    public void Every_pie_names_all_fourteen_allergens() => Assert.All(
        Sheet(Known).FindAll(".paper-allergens"),
        list => Assert.All(Enum.GetValues<Allergen>(), allergen => Assert.Contains(WordText.Say(allergen), list.TextContent, StringComparison.Ordinal)));

    [Fact]
    public void Pies_with_the_same_on_them_share_a_row_and_own_pies_stand_alone() => Assert.Equal(
        ["Pie 1", "Pie 2", "Pies 3 and 4"], Sheet(Known).FindAll("article h3").Select(name => name.TextContent));

    [Fact]
    public void Says_what_is_on_each_part()
    {
        var parts = Sheet(Known).FindAll("article")[1].QuerySelectorAll(".paper-sectors li").Select(part => part.TextContent.Trim());

        Assert.Equal(["B Tomato sauce, Cheese blend, Cooked ham", "C No sauce, Cheese blend, Anchovies"], parts);
    }

    private IRenderedComponent<TableSheet> Sheet(IReadOnlyList<PieAllergens> known) => Render<TableSheet>(with => with
        .Add(p => p.Split, Paper.Split).Add(p => p.Allergens, known).Add(p => p.Head, Paper.Head).Add(p => p.Items, Plans.Items));
}
