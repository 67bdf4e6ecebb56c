using Bunit;
using GameNight.Nights.Records;
using GameNight.Planning;
using GameNight.Planning.Fermentation;
using GameNight.Planning.Heat;
using GameNight.Planning.Quantities;
using GameNight.Web.Host.Kitchen;
using GameNight.Web.Wording;
using NodaTime;

namespace GameNight.Web.Tests.Panels;

public class PlaceFormTests : BunitContext
{
    private static readonly BakingPlace Steel = new(
        new BakingSurface(SurfaceKind.CarbonSteel, 6.5, new Centimetres(40.5), new Centimetres(36)), OvenAir.Fan, SurfaceSupport.SolidTray, SoakLead.Model,
        new BakingSurface(SurfaceKind.CastIron, 6, new Centimetres(40.5), new Centimetres(36)),
        [new SurfaceReading(Duration.FromMinutes(30), new Celsius(150))]);

    [Fact]
    public void Nothing_said_stays_unsaid()
    {
        var (facts, problems) = Form(KitchenFacts.Starting, Measures.Metric).Read(KitchenFacts.Starting);

        Assert.Empty(problems);
        Assert.Null(facts!.Kitchen.Place);
    }

    [Fact]
    public void What_was_said_is_changed_and_not_unsaid_so_that_its_plate_does_not_go_with_it()
    {
        Assert.DoesNotContain("", Kinds(Steel));
        Assert.Contains("", Kinds(null));

        IEnumerable<string?> Kinds(BakingPlace? kept) => Render<PlaceFields>(with => with
            .Add(p => p.Form, PlaceForm.Of(kept, Measures.Metric)).Add(p => p.Problems, new Dictionary<string, string>()))
            .FindAll("#surface option").Select(option => option.GetAttribute("value"));
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void What_is_not_touched_comes_back_as_it_was_in_either_measure(bool isUs)
    {
        var facts = With(Steel);

        var read = Form(facts, isUs ? Measures.UsCustomary : Measures.Metric).Read(facts).Facts!;

        Assert.Equal(facts.Kitchen.Place! with { Readings = null }, read.Kitchen.Place! with { Readings = null });
        Assert.Equal(facts.Kitchen.Place.Readings, read.Kitchen.Place.Readings);
    }

    [Fact]
    public void What_has_no_field_in_the_kitchen_stays_as_it_is_kept_now()
    {
        var form = Form(KitchenFacts.Starting, Measures.Metric);
        var now = KitchenFacts.Starting.Kitchen with { Calibration = new FermentationCalibration(1.2, 0.9), FrictionKelvin = 12 };

        var read = form.Read(KitchenFacts.Starting with { Kitchen = now }).Facts!.Kitchen;

        Assert.Equal((now.Calibration, now.FrictionKelvin), (read.Calibration, read.FrictionKelvin));
    }

    [Fact]
    public void Readings_stay_with_their_surface_in_their_oven_and_with_nothing_else()
    {
        var facts = With(Steel);

        Assert.NotNull(Read(form => form.Place.Lead = SoakLead.RuleOfThumb));
        Assert.NotNull(Read(form => form.Preheat = "30"));
        Assert.Null(Read(form => form.Place.Thickness = "8"));
        Assert.Null(Read(form => form.Place.Kind = SurfaceKind.Aluminium));
        Assert.Null(Read(form => form.Oven = "280"));

        IReadOnlyList<SurfaceReading>? Read(Action<KitchenForm> change)
        {
            var form = Form(facts, Measures.Metric);
            change(form);
            return form.Read(facts).Facts!.Kitchen.Place!.Readings;
        }
    }

    [Fact]
    public void What_cannot_be_read_is_said_beside_its_field_in_the_hosts_measure()
    {
        var form = Form(With(Steel), Measures.UsCustomary);
        (form.Place.Thickness, form.Place.Width, form.Place.IronThickness) = ("thick", "200", "");

        var (facts, problems) = form.Read(With(Steel));

        Assert.Null(facts);
        Assert.Equal(["ironThicknessMillimetres", "thicknessMillimetres", "widthCentimetres"], problems.Keys.Order());
        Assert.Contains("3.94 to 39.37", problems["widthCentimetres"], StringComparison.Ordinal);
    }

    [Fact]
    public void The_planners_word_on_the_plate_above_does_not_land_on_the_surface()
    {
        var problem = new SnapshotProblem("kitchen.place.ironAbove.thicknessMillimetres", SnapshotFault.OutOfRange, 60, 3, 20);

        var said = Web.Host.TypedNumbers.ByField([PlaceForm.Named(problem), problem with { Field = "kitchen.place.surface.thicknessMillimetres" }], Measures.Metric);

        Assert.Equal(["ironThicknessMillimetres", "thicknessMillimetres"], said.Keys.Order());
    }

    [Fact]
    public void The_fields_appear_once_it_is_said_what_is_baked_on()
    {
        var form = new PlaceForm(null, Measures.Metric);
        var fields = Render<PlaceFields>(with => with.Add(place => place.Form, form).Add(place => place.Problems, new Dictionary<string, string>()));

        Assert.Empty(fields.FindAll("input"));
        fields.Find("#surface").Change("CarbonSteel");
        Assert.Equal(3, fields.FindAll("input").Count);
        fields.Find("#iron").Change("CastIron");

        Assert.NotNull(fields.Find("#ironThickness"));
        Assert.Equal((SurfaceKind.CarbonSteel, SurfaceKind.CastIron), (form.Kind, form.Iron));
        Assert.All(fields.FindAll("input, select"), field => Assert.NotNull(fields.Find($"label[for={field.Id}]")));
    }

    private static KitchenForm Form(KitchenFacts facts, Measures measures) => KitchenForm.Of(facts, measures);

    private static KitchenFacts With(BakingPlace place) =>
        KitchenFacts.Starting with { Kitchen = KitchenFacts.Starting.Kitchen with { Place = place } };
}
