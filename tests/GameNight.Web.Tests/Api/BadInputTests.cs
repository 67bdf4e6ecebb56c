using System.Net;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using GameNight.Planning;
using GameNight.Planning.Contract;
using GameNight.Planning.Dough;
using GameNight.Planning.Fermentation;
using GameNight.Planning.Foods;
using GameNight.Planning.Heat;
using GameNight.Planning.Quantities;
using GameNight.Planning.Sauce;
using GameNight.Planning.Timeline;
using GameNight.TestKit;
using GameNight.TestKit.Nights;
using GameNight.Web.Api;
using GameNight.Web.Tests.Pages;
using NodaTime;

namespace GameNight.Web.Tests.Api;

/// <summary>What nobody can cook is refused with the range that would be right and why; what is odd is planned with a word about it.</summary>
public class BadInputTests(SharedApp site)
{
    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    private static Instant Now => NightBuilder.Now;

    public static TheoryData<string, Func<NightSnapshot, NightSnapshot>, string, string> Refusals => new()
    {
        { "kitchen.roomCelsius", Kitchen(kitchen => kitchen with { Room = new Celsius(60) }), "is 60; it can be 5 to 40.", "In a colder room yeast hardly works" },
        { "kitchen.fridgeCelsius", Kitchen(kitchen => kitchen with { Fridge = new Celsius(-8) }), "is -8; it can be -1 to 14.", "the dough freezes" },
        { "kitchen.ovenCelsius", Kitchen(kitchen => kitchen with { Oven = new Celsius(90) }), "is 90; it can be 150 to 550.", "a pie dries before it bakes" },
        { "kitchen.tapCelsius", Kitchen(kitchen => kitchen with { Tap = new Celsius(60) }), "is 60; it can be 0 to 35.", "is ice" },
        { "kitchen.fridgeCelsius", Kitchen(kitchen => kitchen with { Room = new Celsius(9), Fridge = new Celsius(12) }), "is 12, warmer than the room with 9; it can be -1 to 9.", "A fridge cools" },
        { "formula.flours", Formula(formula => formula with { Flours = [AFlour(0), AFlour(0)] }), "is 0; it can be 0.999 to 1.001.", "The shares of a blend make up the whole." },
        { "formula.flours", Formula(formula => formula with { Flours = [AFlour(0.6), AFlour(0.3)] }), "is 0.9; it can be 0.999 to 1.001.", "The shares of a blend make up the whole." },
        { "formula.water", Formula(formula => formula with { Water = new Share(1.5) }), "is 1.5; it can be 0.45 to 1.", "with more it is a batter" },
        { "formula.water", Formula(formula => formula with { Water = new Share(0.3) }), "is 0.3; it can be 0.45 to 1.", "does not come together" },
        { "formula.salt", Formula(formula => formula with { Salt = new Share(0.1) }), "is 0.1; it can be 0 to 0.04.", "Above 4 % of the flour yeast hardly works." },
        { "byHand.ballGrams", night => night with { ByHand = ByHand.Nothing with { Ball = new Grams(20) } }, "is 20; it can be 80 to 1 500.", "A smaller ball makes no pie" },
        { "byHand.ballGrams", night => night with { ByHand = ByHand.Nothing with { Ball = new Grams(5000) } }, "is 5 000; it can be 80 to 1 500.", "bakes through in no oven" },
        { "byHand.yeast", night => night with { ByHand = ByHand.Nothing with { Yeast = new Share(0) } }, "is 0; it can be more than 0, up to 0.05.", "more than none" },
        { "shape.cheeseInsetCentimetres", night => night with { Shape = night.Shape with { CheeseInset = new Centimetres(40) } }, "is 40; it can be 0 to", "must leave a middle" },
        { "readings.at", Readings(Now + Duration.FromHours(2)), "is still to come; a reading can be of any time from mixing until now.", "Nobody has read it yet." },
        { "readings.at", Readings(Now - Duration.FromHours(1), Now - Duration.FromHours(2)), "runs backwards; the first value must not exceed the next.", "" },
        { "away", night => night with { Away = [new HostAway(Now + Duration.FromHours(1), Now)] }, "runs backwards; the first value must not exceed the next.", "" },
        { "kitchen.place.surface.thicknessMillimetres", Kitchen(kitchen => kitchen with { Place = Steel(100) }), "is 100; it can be 2 to 20.", "too heavy to lift" },
        { "sauce.formula.tomatoGrams", Sauce(formula => formula with { Tomato = default, Parts = [] }), "is 0; it can be 100 to 20 000.", "A sauce without tomato is none" },
        { "sauce.formula.parts[garlic].grams", Sauce(formula => formula with { Parts = [new FoodPart(Food.Garlic, new Grams(3000))] }), "is 3 000; it can be 0 to 100.", "garlic paste" },
    };

    public static TheoryData<string, Func<NightSnapshot, NightSnapshot>, Func<NightPlan, bool>> Warnings => new()
    {
        { "no salt", Formula(formula => formula with { Salt = default }), plan => plan.Dough.Because.OfType<LittleSalt>().Any() },
        { "a heavy ball", night => night with { Shape = night.Shape with { Diameter = new Centimetres(50), ThicknessGramsPerCm2 = 0.9 } }, plan => plan.Conflicts.OfType<UnusualBall>().Any() },
        { "no fridge temperature", Kitchen(kitchen => kitchen with { Fridge = null }), plan => plan.Ripening!.Because.OfType<FridgeAssumed>().Any() },
    };

    [Theory]
    [MemberData(nameof(Refusals))]
    public async Task Is_refused_with_the_range_and_why(string field, Func<NightSnapshot, NightSnapshot> spoil, string range, string why)
    {
        var (status, text) = await PostAsync(spoil);

        Assert.Equal(HttpStatusCode.BadRequest, status);
        var said = JsonNode.Parse(text)!["errors"]![$"night.{field}"]!.AsArray().Select(sentence => ((string)sentence!).Replace('\u202f', ' ').Replace('\u00a0', ' '));
        Assert.Contains(said, sentence => sentence.Contains($"{field} {range}", StringComparison.Ordinal) && sentence.Contains(why, StringComparison.Ordinal));
    }

    [Theory]
    [MemberData(nameof(Warnings))]
    public async Task Is_planned_with_a_word_about_it(string odd, Func<NightSnapshot, NightSnapshot> spoil, Func<NightPlan, bool> isSaid)
    {
        var (status, text) = await PostAsync(spoil);

        Assert.True(status == HttpStatusCode.OK, $"{odd}: {text}");
        Assert.True(isSaid(JsonSerializer.Deserialize<NightPlan>(text, PlanJson.Options)!), odd);
    }

    [Fact]
    public async Task A_reading_from_before_mixing_is_refused()
    {
        var night = NightBuilder.ANight().WithGuests(4).Build();
        var plan = new NightPlanner(SharedFolder.Tables).Plan(night, Now, Effort.Quick, cancellation: Cancellation);
        var begun = night with { Begun = BegunDough.Of(night, plan), Readings = [new DoughReading(Now - Duration.FromHours(1), new Celsius(20), null, null)] };

        var (status, text) = await PostAsync(_ => begun);

        Assert.Equal(HttpStatusCode.BadRequest, status);
        Assert.Contains("is before the dough was mixed; a reading can be of any time from mixing until now. There was no dough to read.", text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("\"yeast\":\"instant\"", "\"yeast\":\"sourdough\"", "night.formula.yeast can be one of: fresh, activeDry, instant.")]
    [InlineData("\"kneading\":\"byHand\"", "\"kneading\":\"feet\"", "night.kitchen.kneading can be one of: byHand, mixer.")]
    [InlineData("\"answer\":\"coming\"", "\"answer\":\"perhaps\"", "can be one of: ")]
    public async Task A_word_that_is_none_of_a_list_is_refused_with_the_list(string good, string bad, string said)
    {
        var request = JsonSerializer.Serialize(new PlanRequest(NightBuilder.ANight().WithGuests(2).Build(), Now), PlanJson.Options);
        Assert.Contains(good, request, StringComparison.Ordinal);

        var (status, text) = await PostTextAsync(request.Replace(good, bad, StringComparison.Ordinal));

        Assert.Equal(HttpStatusCode.BadRequest, status);
        Assert.Contains(said, text, StringComparison.Ordinal);
    }

    private Task<(HttpStatusCode Status, string Text)> PostAsync(Func<NightSnapshot, NightSnapshot> spoil) =>
        PostTextAsync(JsonSerializer.Serialize(new PlanRequest(spoil(NightBuilder.ANight().WithGuests(4).Build()), Now), PlanJson.Options));

    private async Task<(HttpStatusCode Status, string Text)> PostTextAsync(string body)
    {
        var answer = await (await site.ClientAsync()).PostAsync("/api/plans", new StringContent(body, Encoding.UTF8, "application/json"), Cancellation);
        return (answer.StatusCode, await answer.Content.ReadAsStringAsync(Cancellation));
    }

    private static Func<NightSnapshot, NightSnapshot> Kitchen(Func<KitchenSnapshot, KitchenSnapshot> spoil) => night => night with { Kitchen = spoil(night.Kitchen) };

    private static Func<NightSnapshot, NightSnapshot> Formula(Func<DoughFormula, DoughFormula> spoil) => night => night with { Formula = spoil(night.Formula) };

    private static Func<NightSnapshot, NightSnapshot> Sauce(Func<SauceFormula, SauceFormula> spoil) => night => night with
    {
        Sauce = new HouseSauce("tomato-sauce", spoil(SharedFolder.Tables.Sauces.Formula(SharedFolder.Tables.Sauces.Formulas[0]))),
    };

    private static Func<NightSnapshot, NightSnapshot> Readings(params Instant[] times) => night => night with
    {
        Readings = [.. times.Select(at => new DoughReading(at, new Celsius(20), null, null))],
    };

    private static BakingPlace Steel(double millimetres) => BakingPlace.Assumed with
    {
        Surface = BakingPlace.Assumed.Surface with { Kind = SurfaceKind.CarbonSteel, ThicknessMillimetres = millimetres },
    };

    private static FlourPart AFlour(double share) => new("flour", new Share(share), new Share(0.6), new Share(0.12));
}
