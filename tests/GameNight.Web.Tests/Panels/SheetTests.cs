using Bunit;
using GameNight.Planning.Guests;
using GameNight.Planning.Quantities;
using GameNight.Planning.Safety;
using GameNight.TestKit.Nights;
using GameNight.Web.Host;
using GameNight.Web.Host.Plan;

namespace GameNight.Web.Tests.Panels;

public class SheetTests : BunitContext
{
    [Fact]
    public void The_dough_is_one_table_for_batches_that_weigh_the_same_with_percent_and_grams()
    {
        var panel = Render<DoughPanel>(with => with.Add(p => p.Plan, Plans.Usual));

        var batches = Plans.Usual.Dough.Batches;
        Assert.Equal(batches.Select(batch => batch.Balls).Distinct().Count(), panel.FindAll("table").Count);
        Assert.All(batches, batch => Assert.Contains(panel.FindAll("caption"), caption => caption.TextContent.Contains($"{batch.Number}", StringComparison.Ordinal)));
        var rows = panel.FindAll("table")[0].QuerySelectorAll("tbody tr").Select(row => row.Children.Select(cell => cell.TextContent).ToList()).ToList();
        Assert.StartsWith("Flour", rows[0][0], StringComparison.Ordinal);
        Assert.Equal("100", rows[0][1]);
        Assert.Contains(rows, row => row[0].StartsWith("Water at ", StringComparison.Ordinal));
        Assert.Contains(rows, row => row[0] == "Instant yeast");
    }

    [Fact]
    public void Very_little_yeast_comes_with_advice_on_how_to_weigh_it()
    {
        var plan = Plans.Of(NightBuilder.ANight().WithGuests(1).Build());

        var panel = Render<DoughPanel>(with => with.Add(p => p.Plan, plan));

        Assert.Equal(
            plan.Dough.Batches.Any(batch => batch.Yeast < new Grams(0.5)),
            panel.Markup.Contains("0.01 g scale", StringComparison.Ordinal));
    }

    [Fact]
    public void Honey_is_called_honey()
    {
        var night = NightBuilder.ANight().WithGuests(4).But(night => night with
        {
            Formula = night.Formula with { Sugar = new Share(0.02), SugarIsHoney = true },
        });

        var panel = Render<DoughPanel>(with => with.Add(p => p.Plan, Plans.Of(night.Build())));

        Assert.Contains(panel.FindAll("th"), name => name.TextContent == "Honey");
        Assert.DoesNotContain(panel.FindAll("th"), name => name.TextContent == "Sugar");
    }

    [Fact]
    public void Without_dough_there_is_nothing_to_weigh() =>
        Assert.Contains(
            "Nothing yet.", Render<DoughPanel>(with => with.Add(p => p.Plan, Plans.Empty)).Markup, StringComparison.Ordinal);

    [Fact]
    public void Cautions_never_call_food_safe_or_free_from_anything()
    {
        var all = Enum.GetValues<CautionKind>().Select(kind => new Caution(kind, "the food authority", [.. Enum.GetValues<Allergen>()]));

        var panel = Render<CarePanel>(with => with.Add(p => p.Cautions, [.. all]).Add(p => p.Split, Plans.Usual.Split));

        Assert.DoesNotMatch("(?i)\\bsafe(ly)?\\b|free[ -](from|of)|gluten-free|guarantee", panel.Find("section").TextContent);
        Assert.Equal(Enum.GetValues<CautionKind>().Length, panel.FindAll("p").Count(p => p.TextContent.Contains(" Defer to ", StringComparison.Ordinal)));
    }

    [Fact]
    public void Own_pies_are_named_first()
    {
        var panel = Render<CarePanel>(with => with.Add(p => p.Cautions, Plans.Usual.Cautions).Add(p => p.Split, Plans.Usual.Split));

        Assert.Contains("own pie", panel.Find("section > p").TextContent, StringComparison.Ordinal);
        Assert.Contains("baked first", panel.Find("section > p").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void What_goes_on_top_is_listed_by_name_with_its_band()
    {
        var panel = Render<AmountsPanel>(with => with.Add(p => p.Amounts, Plans.Usual.Amounts).Add(p => p.Items, Plans.Items));

        Assert.Equal(Plans.Usual.Amounts.Count, panel.FindAll("tbody tr").Count);
        Assert.DoesNotContain("something", panel.Markup, StringComparison.Ordinal);
    }

    [Fact]
    public void A_field_says_its_problem_where_it_is_read_out()
    {
        var typed = "";
        var field = Render<TextField>(with => with
            .Add(f => f.Id, "room").Add(f => f.Label, "Room, °C").Add(f => f.Type, "number").Add(f => f.Value, "99")
            .Add(f => f.Hint, "a hint").Add(f => f.Problem, "Type a number from 5 to 40.")
            .Add(f => f.ValueChanged, text => typed = text));

        var input = field.Find("input");
        Assert.Equal("room", field.Find("label").GetAttribute("for"));
        Assert.Equal("true", input.GetAttribute("aria-invalid"));
        Assert.Equal("Type a number from 5 to 40.", field.Find("#" + input.GetAttribute("aria-describedby")).TextContent);
        Assert.DoesNotContain("a hint", field.Markup, StringComparison.Ordinal);

        input.Change("21,5");

        Assert.Equal("21,5", typed);
    }

    [Fact]
    public void A_field_without_problem_shows_its_hint_and_nothing_else()
    {
        var field = Render<TextField>(with => with.Add(f => f.Id, "tap").Add(f => f.Label, "Tap").Add(f => f.Hint, "a hint"));

        Assert.Null(field.Find("input").GetAttribute("aria-invalid"));
        Assert.Equal("a hint", field.Find("#tap-note").TextContent);
    }
}
