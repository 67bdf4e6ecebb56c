using Bunit;
using GameNight.Nights.Records;
using GameNight.Planning;
using GameNight.Planning.Dough;
using GameNight.Planning.Guests;
using GameNight.Planning.Quantities;
using GameNight.Planning.Timeline;
using GameNight.TestKit;
using GameNight.TestKit.Nights;
using GameNight.Web.Host;
using GameNight.Web.Host.Kitchen;
using GameNight.Web.Host.Members;
using GameNight.Web.Wording;

namespace GameNight.Web.Tests.Panels;

/// <summary>Doughs and kitchens as they are typed.</summary>
public class DoughFormTests : BunitContext
{
    private static readonly DoughRanges Ranges = SharedFolder.Tables.Dough.Ranges;

    private static DoughForm Form(DoughFormula? formula = null, Measures? measures = null) => DoughForm.Of(
        new DoughRecipe(new GroupId(Guid.NewGuid()), FormulaId.New(), "Whole", formula ?? WholeDoughs.Formula, WholeDoughs.Shape),
        measures ?? Measures.Metric, Ranges);

    [Fact]
    public void A_formula_with_every_part_comes_back_as_it_was()
    {
        var kneader = new KneadersCorrection(new Share(0.04));

        foreach (var measures in new[] { Measures.Metric, Measures.UsCustomary })
        {
            var (dough, problems) = Form(measures: measures).Read(kneader);

            Assert.Empty(problems);
            Assert.Equal(WholeDoughs.Shape, dough!.Value.Shape);
            Assert.Equivalent(WholeDoughs.Formula with { Kneader = kneader }, dough.Value.Formula, strict: true);
        }
    }

    [Fact]
    public void A_usual_dough_has_no_parts_and_an_oiled_base()
    {
        var (dough, _) = new DoughForm(Measures.Metric, Ranges).Read();

        Assert.Null(dough!.Value.Formula.Flours);
        Assert.Null(dough.Value.Formula.Extras);
        Assert.Null(dough.Value.Formula.Preferment);
        Assert.Null(dough.Value.Formula.Soaker);
        Assert.Null(dough.Value.Shape.OilInset);
    }

    [Theory]
    [InlineData("flours[1].name")]
    [InlineData("flours[0].absorption")]
    [InlineData("flours[0].protein")]
    [InlineData("extras[0].water")]
    [InlineData("preferment.ofFlour")]
    [InlineData("preferment.beforeMinutes")]
    [InlineData("soaker.waterPerFlour")]
    public void What_is_out_of_range_is_said_beside_its_own_row(string field)
    {
        var form = Form();
        (form.Parts.Flours[1].Name, form.Parts.Flours[0].Water, form.Parts.Flours[0].Protein) = ("  ", "20", "x");
        (form.Parts.Extras[0].Water, form.Parts.Preferment!.OfFlour, form.Parts.Preferment.Hours) = ("101", "95", "0");
        form.Parts.Soaker!.Water = "-5";

        var (dough, problems) = form.Read();

        Assert.Null(dough);
        Assert.Equal(7, problems.Count);
        Assert.Matches("^(Type a number from|Give a name of)", problems[field]);
        var fields = Render<DoughPartsFields>(with => with.Add(p => p.Form, form.Parts).Add(p => p.Problems, problems));
        Assert.Equal(7, fields.FindAll("[aria-invalid=true]").Count);
        Assert.NotNull(fields.Find("details").GetAttribute("open"));
        Assert.Equal("20", fields.Find("#flour-0-absorption").GetAttribute("value"));
    }

    [Fact]
    public void The_planners_own_findings_are_said_in_percent_and_hours()
    {
        var formula = WholeDoughs.Formula with { Water = new Share(0.2), Preferment = WholeDoughs.Formula.Preferment! with { OfFlour = new Share(0.9) } };
        SnapshotProblem[] found =
        [
            new("formula.water", SnapshotFault.OutOfRange, 0.2, 0.45, 1),
            new("formula.flours", SnapshotFault.OutOfRange, 0.9, 0.999, 1.001),
            new("formula.preferment.ofFlour", SnapshotFault.OutOfRange, formula.FlourAhead, 0, 0.9),
            new("formula.preferment.waterPerFlour", SnapshotFault.OutOfRange, formula.WaterAhead / formula.FlourAhead, 0, 0.15 / formula.FlourAhead),
            new("formula.preferment.beforeMinutes", SnapshotFault.OutOfRange, 30, 60, 4320),
            new("shape.rimCentimetres", SnapshotFault.OutOfRange, 9, 0.5, 6),
        ];

        var problems = DoughProblems.ByField(found, formula, Measures.Metric);

        Assert.Equal("This is 20; it can be 45 to 100. With less water a dough does not come together, and with more it is a batter.", problems["water"]);
        Assert.Equal("The shares make 90 % together; they must make 100 %. The shares of a blend make up the whole.", problems["flours"]);
        Assert.Equal("Preferment and soaker take more flour than the 90 % that is not held back.", problems["preferment.ofFlour"]);
        Assert.Equal("Preferment and soaker take 61.5 % of the flour as water; the dough leaves them 15 %.", problems["preferment.waterPerFlour"]);
        Assert.StartsWith("This is 0.5; it can be 1 to 72. In less than an hour", problems["preferment.beforeMinutes"], StringComparison.Ordinal);
        Assert.StartsWith("This is 9; it can be 0.5 to 6. The rim goes up to", problems["rimCentimetres"], StringComparison.Ordinal);
    }

    [Fact]
    public void The_checks_own_paths_lead_to_fields_of_the_form()
    {
        var formula = WholeDoughs.Formula with
        {
            Flours = [WholeDoughs.Formula.Flours![0]],
            Preferment = WholeDoughs.Formula.Preferment! with { OfFlour = new Share(0.9), WaterPerFlour = new Share(1.5) },
        };
        var night = NightBuilder.ANight().WithGuests(4).But(night => night with { Formula = formula }).Build();

        var problems = DoughProblems.ByField(new SnapshotCheck(SharedFolder.Tables).Problems(night), formula, Measures.Metric);

        Assert.Equal(["flours", "preferment.ofFlour", "preferment.waterPerFlour"], problems.Keys.Order(StringComparer.Ordinal));
        Assert.DoesNotContain(problems.Values, said => said.StartsWith("This is", StringComparison.Ordinal));
    }

    [Fact]
    public void Labels_are_asked_for_where_there_are_parts_of_ones_own_and_count_once_they_are_read()
    {
        var form = DoughPartsForm.Of(WholeDoughs.Formula with { PartsLabel = null }, Ranges);
        var plain = Render<DoughPartsFields>(with => with.Add(p => p.Form, new DoughPartsForm(Ranges)));
        Assert.DoesNotContain("Their labels", plain.Markup, StringComparison.Ordinal);

        var fields = Render<DoughPartsFields>(with => with.Add(p => p.Form, form));
        Assert.Null(form.Onto(WholeDoughs.Formula, new TypedNumbers("formula")).PartsLabel);
        fields.Find("label.check input").Change(true);
        foreach (var allergen in Enum.GetValues<Allergen>())
        {
            fields.Find($"#part-label-{allergen}").Change(allergen == Allergen.Milk ? nameof(LabelSays.Contains) : nameof(LabelSays.Nothing));
        }

        var label = form.Onto(WholeDoughs.Formula, new TypedNumbers("formula")).PartsLabel!;
        Assert.Equal([Allergen.Milk], label.Contains);
        Assert.Empty(label.Unknown);
        var again = DoughPartsForm.Of(WholeDoughs.Formula with { PartsLabel = label }, Ranges);
        Assert.True(again.LabelsAreRead);
        Assert.Equal([Allergen.Milk], again.Label.Composition.Contains);

        // Nobody has read the label of what is put in, or named, after that.
        again.Extras.Add(new DoughPartRow { Name = "Walnuts", OfFlour = "5", Water = "5" });
        Assert.Null(again.Onto(WholeDoughs.Formula, new TypedNumbers("formula")).PartsLabel);
        again.LabelsAreRead = true;
        again.Extras[^1].Name = "Other walnuts";
        Assert.False(again.LabelsAreRead);
    }

    [Fact]
    public void Rows_come_and_go_by_buttons_and_a_blend_starts_with_what_is_left()
    {
        var removed = 0;
        var form = new DoughPartsForm(Ranges);
        var fields = Render<DoughPartsFields>(with => with.Add(p => p.Form, form).Add(p => p.Removed, () => removed++));
        Assert.Null(fields.Find("details").GetAttribute("open"));

        Press("Add a flour");
        fields.Find("#flour-0-name").Change("Bread");
        fields.Find("#flour-0-share").Change("60");
        Press("Add a flour");
        Press("Add a preferment");

        Assert.Equal("40", form.Flours[1].OfFlour);
        Assert.NotNull(form.Preferment);
        Assert.Equal("Remove Bread", fields.FindAll("button.linkbutton")[0].GetAttribute("aria-label"));

        fields.FindAll("button.linkbutton")[0].Click();

        Assert.Equal("", Assert.Single(form.Flours).Name);
        Assert.Equal(1, removed);

        void Press(string text) => fields.FindAll("button").Single(button => button.TextContent == text).Click();
    }

    [Fact]
    public void What_the_dough_then_is_is_told_as_soon_as_it_can_be_read()
    {
        var form = Form();

        Assert.Equal(
            ["In all the dough has 70.8 % water on flour.", "The flours together take 63 % water and hold 12.1 % protein."],
            form.Then().Select(sentence => sentence.Replace('\u00a0', ' ')));

        form.Parts.Flours[0].OfFlour = "most";

        Assert.Empty(form.Then());
    }

    [Fact]
    public void Flour_scales_and_what_the_kitchen_learned_come_back_as_they_were()
    {
        var kitchen = KitchenFacts.Starting.Kitchen with
        {
            Flour = new KitchenFlour(WheatKind.Soft, FlourKept.Sealed, new Share(0.45), new Share(0.125)),
            Scale = new KitchenScale(new Grams(1), new Grams(0.01)),
            FrictionKelvin = 9.5,
            FridgeBalls = 14,
            Bowls = 2,
            HobRings = 4,
            Calibration = new(1.1, 0.9),
        };

        var kept = KitchenFacts.Starting with { Kitchen = kitchen };

        var (facts, problems) = KitchenForm.Of(kept, Measures.UsCustomary).Read(kept);

        Assert.Empty(problems);
        Assert.Equal(kitchen, facts!.Kitchen);
    }

    [Fact]
    public void What_was_learned_meanwhile_is_not_undone_by_saving()
    {
        var form = KitchenForm.Of(KitchenFacts.Starting, Measures.Metric);

        var (facts, _) = form.Read(KitchenFacts.Starting with { Kitchen = KitchenFacts.Starting.Kitchen with { FrictionKelvin = 12, Pace = [new(StepName.Shape, 6)] } });

        Assert.Equal(12, facts!.Kitchen.FrictionKelvin);
        Assert.Equal([new StepPace(StepName.Shape, 6)], facts.Kitchen.Pace);
        Assert.Null(facts.Kitchen.Flour);
        Assert.Null(facts.Kitchen.Scale);
    }

    [Theory]
    [InlineData("5", "", "", "", "roomHumidity", "Type a number from 10 to 90. Flour is measured in air between these; in drier or moister air nobody knows what it takes up.")]
    [InlineData("", "20", "", "", "moisture", "Type a number from 8 to 16. Drier flour is not sold, and moister flour moulds.")]
    [InlineData("", "", "", "0.1", "coarseGrams", "Give the step of the kitchen scale too.")]
    [InlineData("", "", "1", "2", "fineGrams", "Type a number from 0.001 to 1. The small scale is at least as fine as the kitchen's, and finer than a milligram weighs no yeast.")]
    [InlineData("", "", "50", "", "coarseGrams", "Type a number from 0.1 to 10. A finer step is the small scale's, and a coarser one weighs no dough.")]
    public void Flour_and_scales_out_of_range_are_refused_beside_their_field(
        string humidity, string moisture, string coarse, string fine, string field, string said)
    {
        var form = KitchenForm.Of(KitchenFacts.Starting, Measures.Metric);
        (form.Flour.RoomHumidity, form.Flour.Moisture, form.Flour.Coarse, form.Flour.Fine) = (humidity, moisture, coarse, fine);

        var (facts, problems) = form.Read(KitchenFacts.Starting);

        Assert.Null(facts);
        Assert.Equal(said, problems[field]);
        Assert.Equal(said, Render<FlourFields>(with => with.Add(p => p.Form, form.Flour).Add(p => p.Problems, problems)).Find(".problem").TextContent);
    }

    [Fact]
    public void Learned_friction_is_shown_and_can_be_forgotten()
    {
        var forgotten = 0;
        var fields = Render<FlourFields>(with => with
            .Add(p => p.Form, new FlourForm(KitchenFacts.Starting.Kitchen)).Add(p => p.FrictionKelvin, 9.5).Add(p => p.ForgetFriction, () => forgotten++));

        Assert.Contains("warms the sum of temperatures by 10 °C", fields.Markup, StringComparison.Ordinal);
        fields.Find("button").Click();

        Assert.Equal(1, forgotten);
    }
}
