using System.Net;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using GameNight.Planning;
using GameNight.Planning.Contract;
using GameNight.Planning.Foods;
using GameNight.Planning.Quantities;
using GameNight.TestKit;
using GameNight.TestKit.Nights;
using GameNight.Web.Api;
using GameNight.Web.Tests.Pages;

namespace GameNight.Web.Tests.Api;

public class PlanApiTests(SharedApp site)
{
    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_night_comes_back_as_a_plan_and_the_same_plan_every_time()
    {
        var request = Valid();

        var first = await PostAsync(request);
        var second = await PostAsync(request);

        Assert.Equal(HttpStatusCode.OK, first.StatusCode);
        var text = await first.Content.ReadAsStringAsync(Cancellation);
        Assert.Equal(text, await second.Content.ReadAsStringAsync(Cancellation));
        var plan = JsonSerializer.Deserialize<NightPlan>(text, PlanJson.Options)!;
        Assert.InRange(plan.Pies.Count.Value.Value, 2, 8);
        Assert.Equal(plan.Pies.Count.Value.Value, plan.Split.Pies.Count);
    }

    [Fact]
    public async Task A_night_with_sauce_and_blend_comes_back_with_what_to_cook_and_how_wet_its_pies_are()
    {
        var tables = SharedFolder.Tables;
        var night = NightBuilder.ANight().WithGuests(6).Build() with
        {
            Sauce = new HouseSauce("tomato-sauce", tables.Sauces.Formula(tables.Sauces.Formulas[0])),
            CheeseBlend = new HouseCheese("cheese-blend", tables.Cheese.Blends[0].Blend),
        };

        var answer = await PostAsync(Text(new PlanRequest(night, NightBuilder.Now)));

        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        var plan = JsonSerializer.Deserialize<NightPlan>(await answer.Content.ReadAsStringAsync(Cancellation), PlanJson.Options)!;
        Assert.True(plan.SauceToMake!.Finished >= plan.SauceToMake.Needed);
        Assert.Equal(3, plan.CheeseToGrate!.Parts.Count);
        Assert.Equal(plan.Split.Combinations.Select(one => one.Letter), plan.WaterLoads!.Select(load => load.Letter));
    }

    [Fact]
    public async Task Three_kilograms_of_garlic_are_refused_with_their_field()
    {
        var formula = SharedFolder.Tables.Sauces.Formula(SharedFolder.Tables.Sauces.Formulas[0]);
        var night = NightBuilder.ANight().WithGuests(2).Build() with
        {
            Sauce = new HouseSauce("tomato-sauce", formula with { Parts = [new FoodPart(Food.Garlic, new Grams(3000))] }),
        };

        await AssertRefusedAsync(await PostAsync(Text(new PlanRequest(night, NightBuilder.Now))), HttpStatusCode.BadRequest, "sauce.formula.parts[garlic].grams");
    }

    /// <summary>What is put in the place of a field, and the field that the refusal must name.</summary>
    [Theory]
    [InlineData("night.kitchen.roomCelsius", "NaN", "roomCelsius")]
    [InlineData("night.kitchen.roomCelsius", "\"warm\"", "roomCelsius")]
    [InlineData("night.kitchen.roomCelsius", "\"21\"", "roomCelsius")]
    [InlineData("night.kitchen.roomCelsius", "1e400", "roomCelsius")]
    [InlineData("night.kitchen.roomCelsius", "null", "roomCelsius")]
    [InlineData("night.kitchen.roomCelsius", "41", "roomCelsius")]
    [InlineData("night.kitchen.batchCapacityGrams", "-1", "batchCapacityGrams")]
    [InlineData("night.kitchen.batchCapacityGrams", "1e15", "batchCapacityGrams")]
    [InlineData("night.kitchen.bakeMinutes", "-5", "bakeMinutes")]
    [InlineData("night.kitchen.bakeMinutes", "1e308", "bakeMinutes")]
    [InlineData("night.kitchen.hands", "2147483648", "hands")]
    [InlineData("night.shape.slicesPerPie", "0", "slicesPerPie")]
    [InlineData("night.formula.water", "7", "water")]
    [InlineData("night.runOutChance", "1.5", "runOutChance")]
    [InlineData("night.serveAt", "\"tomorrow\"", "serveAt")]
    [InlineData("night.formula.yeast", "\"sourdough\"", "yeast")]
    [InlineData("night.guests", "null", "guests")]
    [InlineData("night", "[]", "night")]
    [InlineData("now", "\"2026-02-30T00:00:00Z\"", "now")]
    [InlineData("effort", "-1", "effort")]
    [InlineData("effort", "41", "effort")]
    public async Task A_wrong_value_is_refused_and_its_field_named(string path, string json, string named)
    {
        var answer = await PostAsync(With(path, json));

        await AssertRefusedAsync(answer, HttpStatusCode.BadRequest, named);
    }

    [Fact]
    public async Task An_unknown_field_is_refused_and_named()
    {
        var request = JsonNode.Parse(Valid())!;
        request["night"]!["kitchen"]!["ovenColour"] = "red";

        await AssertRefusedAsync(await PostAsync(request.ToJsonString()), HttpStatusCode.BadRequest, "ovenColour");
    }

    [Fact]
    public async Task The_same_id_twice_is_refused()
    {
        var night = NightBuilder.ANight().WithGuests(2).Build();
        var request = Text(new PlanRequest(night with { Guests = [night.Guests[0], night.Guests[0]] }, NightBuilder.Now));

        await AssertRefusedAsync(await PostAsync(request), HttpStatusCode.BadRequest, "night.guests");
    }

    [Fact]
    public async Task More_guests_than_a_house_holds_are_refused()
    {
        var request = Text(new PlanRequest(NightBuilder.ANight().WithGuests(SnapshotCheck.MostGuests + 1).Build(), NightBuilder.Now));

        await AssertRefusedAsync(await PostAsync(request), HttpStatusCode.BadRequest, "night.guests");
    }

    [Theory]
    [InlineData("")]
    [InlineData("null")]
    [InlineData("{")]
    [InlineData("[]")]
    [InlineData("{\"night\":{},\"night\":{}}")]
    public async Task What_is_no_request_at_all_is_refused(string body)
    {
        var answer = await PostAsync(body);

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Equal("application/problem+json", answer.Content.Headers.ContentType!.MediaType);
    }

    [Fact]
    public async Task Too_deep_is_refused()
    {
        var answer = await PostAsync("{\"night\":" + new string('[', 60) + new string(']', 60) + "}");

        await AssertRefusedAsync(answer, HttpStatusCode.BadRequest, "night");
    }

    [Fact]
    public async Task Too_large_is_refused()
    {
        var request = new HttpRequestMessage(HttpMethod.Post, "/api/plans")
        {
            Content = new StringContent($"{{\"night\":\"{new string('x', 600 * 1024)}\"}}", Encoding.UTF8, "application/json"),
        };
        request.Headers.ExpectContinue = true;

        var answer = await (await site.ClientAsync()).SendAsync(request, Cancellation);

        Assert.Equal(HttpStatusCode.RequestEntityTooLarge, answer.StatusCode);
        Assert.Equal("application/problem+json", answer.Content.Headers.ContentType!.MediaType);
    }

    [Fact]
    public async Task From_another_machine_only_signed_in_hosts_may_plan()
    {
        var request = new HttpRequestMessage(HttpMethod.Post, "/api/plans")
        {
            Content = new StringContent(Valid(), Encoding.UTF8, "application/json"),
        };
        request.Headers.Add("X-Forwarded-For", "203.0.113.7");

        var answer = await (await site.ClientAsync()).SendAsync(request, Cancellation);

        Assert.Equal(HttpStatusCode.Unauthorized, answer.StatusCode);
        Assert.Equal("application/problem+json", answer.Content.Headers.ContentType!.MediaType);
    }

    private static string Valid() => Text(new PlanRequest(NightBuilder.ANight().WithGuests(8).Build(), NightBuilder.Now));

    private static string Text(PlanRequest request) => JsonSerializer.Serialize(request, PlanJson.Options);

    /// <summary>The valid request with the JSON of one field replaced, even by what is not JSON.</summary>
    private static string With(string path, string json)
    {
        const string mark = "put it here";
        var request = JsonNode.Parse(Valid())!;
        var steps = path.Split('.');
        var parent = steps[..^1].Aggregate(request, (node, step) => node[step] ?? throw new ArgumentException($"No {step} in {path}."));
        parent[steps[^1]] = mark;
        return request.ToJsonString().Replace($"\"{mark}\"", json, StringComparison.Ordinal);
    }

    private static async Task AssertRefusedAsync(HttpResponseMessage answer, HttpStatusCode status, string field)
    {
        var text = await answer.Content.ReadAsStringAsync(Cancellation);
        Assert.Equal(status, answer.StatusCode);
        Assert.Equal("application/problem+json", answer.Content.Headers.ContentType!.MediaType);
        var problem = JsonNode.Parse(text)!;
        Assert.Equal((int)status, (int)problem["status"]!);
        Assert.Contains(problem["errors"]!.AsObject(), error => error.Key.Contains(field, StringComparison.Ordinal));
        foreach (var innards in new[] { "System.", "GameNight.", "BytePositionInLine", "Parameter '", "Actual value" })
        {
            Assert.DoesNotContain(innards, text.Replace("\\u0027", "'", StringComparison.Ordinal), StringComparison.Ordinal);
        }
    }

    private async Task<HttpResponseMessage> PostAsync(string body) => await (await site.ClientAsync()).PostAsync(
        "/api/plans", new StringContent(body, Encoding.UTF8, "application/json"), Cancellation);
}
