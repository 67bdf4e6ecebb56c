using AngleSharp.Dom;
using Bunit;
using GameNight.Web.Host.Print;
using GameNight.Web.Tests.Panels;

namespace GameNight.Web.Tests.Print;

public class CardsSheetTests : BunitContext
{
    [Fact]
    public void Every_pie_has_one_card_with_its_drawing_and_its_parts_in_words()
    {
        var cards = Cards();

        Assert.Equal(["Pie 1", "Pie 2", "Pie 3", "Pie 4"], cards.Select(card => card.QuerySelector("h3")!.TextContent));
        Assert.All(cards, card => Assert.NotNull(card.QuerySelector("svg.pie pattern")));
        Assert.Contains("Left half, 4 slices", cards[1].TextContent, StringComparison.Ordinal);
        Assert.Contains("No sauce, Cheese blend, Anchovies", cards[1].TextContent, StringComparison.Ordinal);
        Assert.Contains("Whole pie, 8 slices", cards[2].TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void An_own_pie_says_whose_it_is_and_what_must_not_touch_it()
    {
        var card = Cards()[0];

        Assert.Contains("own", card.ClassList);
        Assert.NotNull(card.QuerySelector(".pennant"));
        Assert.Contains(
            "Own pie for Rui. Baked first, own board and cutter, clean hands. Must not touch milk and nuts.",
            card.QuerySelector(".paper-care")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void A_half_for_vegetarians_is_kept_clear_of_the_meat_beside_it() => Assert.Contains(
        "Nothing of B on C: somebody who eats C is vegetarian. Cut C first.", Cards()[1].TextContent, StringComparison.Ordinal);

    [Fact]
    public void A_pie_with_milk_is_kept_from_the_own_pie() => Assert.All(Cards().Skip(1), card => Assert.Contains(
        "Holds or may hold milk: must not touch pie 1, nor their board and cutter.", card.TextContent, StringComparison.Ordinal));

    [Fact]
    public void Only_the_owner_of_an_own_pie_is_named()
    {
        var text = string.Concat(Cards().Select(card => card.TextContent));

        Assert.DoesNotMatch("Eva|Ana", text);
    }

    private IReadOnlyList<IElement> Cards() => Render<CardsSheet>(with => with
        .Add(p => p.Split, Paper.Split).Add(p => p.Head, Paper.Head).Add(p => p.Items, Plans.Items).Add(p => p.Labels, Paper.Labels)
        .Add(p => p.People, Plans.Names).Add(p => p.Needs, Paper.Needs)).FindAll("article");
}
