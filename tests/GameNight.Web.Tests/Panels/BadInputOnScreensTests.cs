using Bunit;
using GameNight.Nights.Records;
using GameNight.Planning;
using GameNight.Planning.Foods;
using GameNight.Planning.Heat;
using GameNight.TestKit;
using GameNight.Web.Host;
using GameNight.Web.Host.Dough;
using GameNight.Web.Host.Kitchen;
using GameNight.Web.Host.Members;
using GameNight.Web.Host.SauceAndCheese;
using GameNight.Web.Wording;
using NodaTime;

namespace GameNight.Web.Tests.Panels;

/// <summary>What is typed and cannot be cooked: refused beside its field, with the range in the reader's measures and why.</summary>
public class BadInputOnScreensTests : BunitContext
{
    private static readonly ReferenceTables Tables = SharedFolder.Tables;
    private static readonly Instant Now = Instant.FromUtc(2026, 12, 10, 18, 0);
    private static readonly Instant ServeAt = Now + Duration.FromDays(2);

    public static TheoryData<string, Func<string?>, string> Refusals => new()
    {
        { "a hot room", () => Kitchen("roomCelsius", form => form.Room = "60"), "Type a number from 5 to 40. In a colder room yeast hardly works" },
        { "a hot room in °F", () => Kitchen("roomCelsius", form => form.Room = "140", Measures.UsCustomary), "Type a number from 41 to 104. In a colder room" },
        { "a freezer", () => Kitchen("fridgeCelsius", form => form.Fridge = "-18"), "Type a number from -1 to 14. Colder than that the dough freezes" },
        { "a fridge warmer than the room", () => Kitchen("fridgeCelsius", form => (form.Room, form.Fridge) = ("9", "12")), "This is 12, warmer than the room with 9; it can be -1 to 9. A fridge cools" },
        { "a fridge warmer than the room in °F", () => Kitchen("fridgeCelsius", form => (form.Room, form.Fridge) = ("50", "55"), Measures.UsCustomary), "This is 55, warmer than the room with 50" },
        { "a cold oven", () => Kitchen("ovenCelsius", form => form.Oven = "90"), "Type a number from 150 to 550. In a cooler oven a pie dries" },
        { "steel of 100 mm", () => Checked("thicknessMillimetres", form => (form.Place.Kind, form.Place.Thickness) = (SurfaceKind.CarbonSteel, "100")), "This is 100; it can be 2 to 20. Thinner ones" },
        { "150 % hydration", () => Dough("water", form => form.Water = "150"), "Type a number from 45 to 100. With less water a dough does not come together, and with more it is a batter." },
        { "salt of 10 %", () => Dough("salt", form => form.Salt = "10"), "Type a number from 0 to 4. Above 4 % of the flour yeast hardly works." },
        { "zero flour", () => Dough("flours", form => Flours(form, "0", "0")), "The shares make 0 % together; they must make 100 %. The shares of a blend make up the whole." },
        { "an inset beyond the middle", () => Dough("cheeseInsetCentimetres", form => (form.Diameter, form.CheeseInset) = ("20", "9.5")), "This is 9.5; it can be 0 to 7. It is measured inwards from the rim" },
        { "a ball of 20 g", () => Hand(20), "This is 20; it can be 80 to 1 500. A smaller ball makes no pie" },
        { "a ball of 5 kg", () => Hand(5000), "This is 5 000; it can be 80 to 1 500." },
        { "mixing in the past", () => Way("mixAt", form => form.MixAt = "2026-12-01T10:00"), "This has passed: mix at a time from now" },
        { "mixing after serving", () => Way("mixAt", form => form.MixAt = "2026-12-20T10:00"), "By then the pies are on the table" },
        { "another fridge of 30 °C", () => Way("fridgeCelsius", form => form.Fridge = "30"), "Type a number from -1 to 14. Colder than that the dough freezes" },
        { "a dough of 80 °C", () => Reading("doughCelsius", form => form.Dough = "80"), "Type a number from -2 to 45. Colder than that a dough is frozen" },
        { "a sauce without tomato", () => Sauce("tomatoGrams", form => form.Tomato = "0"), "Type a number from 100 to 20 000. A sauce without tomato is none" },
        { "3 kg of garlic", () => Sauce(SauceForm.FieldOf(Food.Garlic), form => form.Parts[Food.Garlic] = "3000"), "Type a number from 0 to 100. More makes it a garlic paste." },
    };

    [Theory]
    [MemberData(nameof(Refusals))]
    public void Is_refused_beside_its_field_with_the_range_and_why(string what, Func<string?> type, string said) =>
        Assert.StartsWith(said, type()?.Replace('\u202f', ' ').Replace('\u00a0', ' ') ?? $"nothing is said of {what}", StringComparison.Ordinal);

    [Fact]
    public void A_field_with_a_problem_says_so_keeps_what_was_typed_and_takes_the_focus()
    {
        JSInterop.Mode = JSRuntimeMode.Loose;
        var field = Render<TextField>(with => with
            .Add(p => p.Id, "room").Add(p => p.Label, "Room").Add(p => p.Value, "60").Add(p => p.Problem, "Type a number.").Add(p => p.FocusTurn, 1));

        var input = field.Find("input");
        Assert.Equal(("60", "true", "room-note"), (input.GetAttribute("value"), input.GetAttribute("aria-invalid"), input.GetAttribute("aria-describedby")));
        Assert.Equal("Type a number.", field.Find("#room-note").TextContent);
        JSInterop.VerifyFocusAsyncInvoke();
    }

    [Fact]
    public void The_focus_goes_to_the_first_refused_field_once_for_each_try()
    {
        var form = new ReadingForm { Dough = "80", Fridge = "90" };

        form.Read(Now, Plans.Zone, Measures.Metric);
        Assert.Equal((1, 0), (form.FocusOf("doughCelsius"), form.FocusOf("fridgeCelsius")));
        (form.Dough, form.Fridge) = ("20", "90");
        form.Read(Now, Plans.Zone, Measures.Metric);

        Assert.Equal((0, 2), (form.FocusOf("doughCelsius"), form.FocusOf("fridgeCelsius")));
    }

    private static string? Kitchen(string field, Action<KitchenForm> type, Measures? measures = null)
    {
        var form = KitchenForm.Of(KitchenFacts.Starting, measures ?? Measures.Metric);
        type(form);
        return form.Read(KitchenFacts.Starting).Problems.GetValueOrDefault(field);
    }

    /// <summary>What can be read and is refused by the planner's check.</summary>
    private static string? Checked(string field, Action<KitchenForm> type)
    {
        var form = KitchenForm.Of(KitchenFacts.Starting, Measures.Metric);
        type(form);
        var night = TestKit.Nights.NightBuilder.ANight().Build();
        var kitchen = form.Read(KitchenFacts.Starting).Facts!.Kitchen;
        return TypedNumbers.ByField(
            new SnapshotCheck(Tables).Problems(night with { Kitchen = kitchen }).Select(PlaceForm.Named), Measures.Metric).GetValueOrDefault(field);
    }

    private static string? Dough(string field, Action<DoughForm> type)
    {
        var form = new DoughForm(Measures.Metric, Tables.Dough.Ranges);
        type(form);
        var (dough, problems) = form.Read();
        if (dough is not { } read)
        {
            return problems.GetValueOrDefault(field);
        }

        var night = TestKit.Nights.NightBuilder.ANight().Build() with { Formula = read.Formula, Shape = read.Shape };
        return DoughProblems.ByField(new SnapshotCheck(Tables).Problems(night), read.Formula, Measures.Metric).GetValueOrDefault(field);
    }

    private static void Flours(DoughForm form, params string[] shares) => form.Parts.Flours.AddRange(
        shares.Select(share => new DoughPartRow { Name = "bread", OfFlour = share, Water = "60", Protein = "12" }));

    private static string? Hand(double grams)
    {
        var problem = new SnapshotCheck(Tables).Problems(ByHand.Nothing with { Ball = new Planning.Quantities.Grams(grams) }).Single();
        return ProblemText.SayHere(problem, Measures.Metric);
    }

    private static string? Way(string field, Action<WayForm> type)
    {
        var form = new WayForm();
        type(form);
        return form.Read(Plans.Zone, Measures.Metric, Now, ServeAt) is null ? form.ProblemOf(field) : null;
    }

    private static string? Reading(string field, Action<ReadingForm> type)
    {
        var form = new ReadingForm();
        type(form);
        return form.Read(Now, Plans.Zone, Measures.Metric) is null ? form.ProblemOf(field) : null;
    }

    private static string? Sauce(string field, Action<SauceForm> type)
    {
        var sauce = new HouseSauce("tomato-sauce", Tables.Sauces.Formula(Tables.Sauces.Formulas[0]));
        var form = SauceForm.Of(sauce, Tables.Sauces, Measures.Metric);
        type(form);
        return form.Read().Problems.GetValueOrDefault(field);
    }
}
