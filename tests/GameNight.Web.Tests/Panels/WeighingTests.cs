using Bunit;
using GameNight.Planning;
using GameNight.Planning.Dough;
using GameNight.Planning.Quantities;
using GameNight.Web.Host.Plan;
using GameNight.Web.Host.Print;
using GameNight.Web.Tests.Print;
using GameNight.Web.Wording;

namespace GameNight.Web.Tests.Panels;

/// <summary>What a baker who reads only the screen weighs.</summary>
public class WeighingTests : BunitContext
{
    private static readonly KitchenScale Scales = new(new Grams(1), new Grams(0.1));

    private static NightPlan Whole(KitchenScale? scale = null) => WholeDoughs.PlanOf(WholeDoughs.Formula, scale);

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void All_bowls_together_are_the_batch(bool onScale)
    {
        var plan = Whole(onScale ? Scales : null);

        var counted = Weighing.Of(plan, Measures.Metric).Where(bowl => bowl.IsCounted).SelectMany(bowl => bowl.Rows).Where(row => !row.IsPart).ToList();

        Assert.All(Weighing.Batches(plan.Dough), batch => Assert.Equal(
            batch.Total.Value, counted.Sum(row => row.Of(batch).Value), 6));
    }

    [Fact]
    public void Flours_of_a_blend_are_all_the_flour_but_what_is_soaked()
    {
        var plan = Whole();

        var blend = Weighing.Of(plan, Measures.Metric)[0];

        Assert.False(blend.IsCounted);
        Assert.Equal(["Bread", "Rye"], blend.Rows.Select(row => row.Name));
        Assert.All(plan.Dough.Batches, batch => Assert.Equal(
            batch.Flour.Value - batch.Soaker!.Flour.Value, blend.Rows.Sum(row => row.Of(batch).Value), 6));
    }

    [Fact]
    public void Preferment_and_soaker_stand_apart_with_their_time_and_come_before_the_dough()
    {
        var plan = Whole();
        var ahead = ReasonText.Say(plan.Dough.Because.OfType<PrefermentAhead>().Single(), Measures.Metric);

        var panel = Render<DoughPanel>(with => with.Add(p => p.Plan, plan));

        Assert.Equal(
            ["The flours of this batch, in all. The parts below take from them.", "Into “Sponge”, 12 h before the dough", "To soak ahead, in cold water for at least four hours: “Seeds”", "Into the dough"],
            panel.FindAll("table")[0].QuerySelectorAll(".bowl").Select(row => row.TextContent));
        Assert.Contains(panel.FindAll("th"), name => name.TextContent == "Milk");
        Assert.Contains(panel.FindAll("li"), line => line.TextContent == ahead);
        Assert.Contains("of all flour held back", panel.Markup, StringComparison.Ordinal);
    }

    [Fact]
    public void A_dough_with_one_flour_is_one_list()
    {
        var panel = Render<DoughPanel>(with => with.Add(p => p.Plan, Plans.Usual));

        Assert.Empty(panel.FindAll(".bowl"));
        Assert.Single(panel.FindAll("table")[0].QuerySelectorAll("tbody"));
    }

    [Fact]
    public void On_a_scale_the_numbers_stand_on_its_steps_and_their_effect_is_told()
    {
        var plan = Whole(Scales);
        var first = plan.Dough.OnScale![0];

        var panel = Render<DoughPanel>(with => with.Add(p => p.Plan, plan));

        Assert.Contains(WeighText.Rounded(first), panel.Markup, StringComparison.Ordinal);
        var salt = panel.FindAll("table")[0].QuerySelectorAll("tr").Single(row => row.Children[0].TextContent == "Salt").Children[2].TextContent;
        Assert.Equal(first.Batch.Salt.Value, double.Parse(salt, System.Globalization.CultureInfo.InvariantCulture), 6);
        Assert.DoesNotContain("0.01 g scale", panel.Markup, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(0.4, "0.4 g heavier.")]
    [InlineData(-1.2, "1.2 g lighter.")]
    [InlineData(0.01, "The batch weighs what it should.")]
    public void Rounding_says_which_way_it_goes(double off, string end)
    {
        var batch = Plans.Usual.Dough.Batches[0];

        var text = WeighText.Rounded(new RoundedBatch(batch, new Share(0.623), new Share(0.025), new Share(0.0007), off));

        Assert.StartsWith("As weighed: 62.3 % water, 2.5 % salt, 0.07 % yeast", text.Replace('\u00a0', ' '), StringComparison.Ordinal);
        Assert.EndsWith(end, text.Replace('\u00a0', ' '), StringComparison.Ordinal);
    }

    [Fact]
    public void Yeast_too_little_for_the_scale_is_dissolved_and_split_on_screen_and_paper()
    {
        var plan = WholeDoughs.PlanOf(WholeDoughs.Formula with { Preferment = null, Soaker = null }, new KitchenScale(new Grams(1), new Grams(1)), guests: 2);
        var reason = Assert.Single(plan.Dough.Because.OfType<DissolveAndSplit>());
        var said = ReasonText.Say(reason, Measures.Metric);

        Assert.Contains(Render<DoughPanel>(with => with.Add(p => p.Plan, plan)).FindAll("p"), line => line.TextContent == said);
        Assert.Contains(Render<BatchTable>(with => with.Add(p => p.Plan, plan)).FindAll("p"), line => line.TextContent == said);
    }

    [Fact]
    public void A_preferment_takes_its_share_of_the_dissolved_yeast()
    {
        var plan = WholeDoughs.PlanOf(WholeDoughs.Formula, new KitchenScale(new Grams(1), new Grams(1)), guests: 2);
        var use = plan.Dough.Because.OfType<DissolveAndSplit>().Single().Use;

        var panel = Render<DoughPanel>(with => with.Add(p => p.Plan, plan));

        Assert.Contains(
            panel.FindAll("p"),
            line => line.TextContent == $"{QuantityText.Grams(use / 2)} of that part goes into “Sponge”, the rest into the dough.");
    }

    [Fact]
    public void Humidity_and_kneader_never_move_the_water_silently()
    {
        var plan = WholeDoughs.PlanOf(
            WholeDoughs.Formula with { Kneader = new KneadersCorrection(new Share(0.03)) },
            kitchen: kitchen => kitchen with { Flour = new KitchenFlour(WheatKind.Hard, FlourKept.Paper, new Share(0.3)) });

        var said = Render<DoughPanel>(with => with.Add(p => p.Plan, plan)).FindAll("li").Select(line => line.TextContent).ToList();

        Assert.Contains(ReasonText.Say(plan.Dough.Because.OfType<HydrationForHumidity>().Single(), Measures.Metric), said);
        Assert.Contains(ReasonText.Say(plan.Dough.Because.OfType<HydrationForKneader>().Single(), Measures.Metric), said);
    }

    [Fact]
    public void Dry_yeast_is_woken_in_its_own_water_and_dead_yeast_has_a_way_out()
    {
        var plan = WholeDoughs.PlanOf(WholeDoughs.Formula with { Yeast = YeastForm.ActiveDry, Preferment = null });

        var panel = Render<DoughPanel>(with => with.Add(p => p.Plan, plan));

        Assert.Contains("Water for the yeast, at 37 °C", panel.Markup.Replace('\u00a0', ' '), StringComparison.Ordinal);
        Assert.Contains(ReasonText.Say(plan.Water.Because.OfType<YeastIsWoken>().Single(), Measures.Metric), panel.Find("section").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void The_rule_stands_beside_the_balance_of_heat_and_ice_has_a_weight()
    {
        var plan = WholeDoughs.PlanOf(WholeDoughs.Formula, kitchen: kitchen => kitchen with { Room = new Celsius(31), Tap = new Celsius(25) });
        Assert.True(plan.Water.IceShare.Value > 0);

        var panel = Render<DoughPanel>(with => with.Add(p => p.Plan, plan));

        Assert.Contains("By a balance of heat alone", panel.Markup, StringComparison.Ordinal);
        var ice = panel.FindAll("table")[0].QuerySelectorAll("tr.part").Single(row => row.Children[0].TextContent == "of it as ice");
        Assert.Equal(QuantityText.GramNumber(plan.Dough.Batches[0].FinalWater * plan.Water.IceShare), ice.Children[2].TextContent);
    }

    [Fact]
    public void Everything_of_the_formula_is_on_the_shopping_list()
    {
        var plan = Whole();
        var sheet = Render<ShoppingSheet>(with => with
            .Add(p => p.Plan, plan).Add(p => p.Head, Paper.Head).Add(p => p.Items, Plans.Items).Add(p => p.Roles, Paper.Roles));

        var names = sheet.FindAll(".paper-amounts")[0].QuerySelectorAll("tbody th").Select(row => row.TextContent).ToList();

        Assert.All(["Bread", "Rye", "Milk", "Egg", "Honey"], name => Assert.Contains(name, names));
        Assert.DoesNotContain("Flour", names);
    }
}
