using System.Text.Json.Nodes;
using GameNight.Web.Tests.Pages;

namespace GameNight.Web.Tests.Api;

public class OpenApiTests(SharedApp site)
{
    [Fact]
    public async Task Describes_the_one_operation_in_the_newest_form()
    {
        var document = await DocumentAsync();

        Assert.StartsWith("3.1", (string)document["openapi"]!, StringComparison.Ordinal);
        var paths = document["paths"]!.AsObject();
        var operation = Assert.Single(paths).Value!["post"]!;
        Assert.Equal("/api/plans", paths.Single().Key);
        Assert.Equal("planNight", (string)operation["operationId"]!);
        Assert.Superset(
            new HashSet<string> { "200", "400", "401", "413", "429", "503" },
            operation["responses"]!.AsObject().Select(response => response.Key).ToHashSet());
    }

    [Theory]
    [InlineData("KitchenSnapshot", "roomCelsius", "number")]
    [InlineData("KitchenSnapshot", "batchCapacityGrams", "number")]
    [InlineData("KitchenSnapshot", "bakeMinutes", "number")]
    [InlineData("PieShape", "diameterCentimetres", "number")]
    [InlineData("NightSnapshot", "runOutChance", "number")]
    [InlineData("NightSnapshot", "serveAt", "string")]
    public async Task Says_what_a_quantity_looks_like(string schema, string field, string type)
    {
        var document = await DocumentAsync();

        var property = document["components"]!["schemas"]![schema]!["properties"]![field]!;

        // A quantity that is used often is said once and referred to.
        var said = (string?)property["$ref"] is { } reference
            ? document["components"]!["schemas"]![reference.Split('/')[^1]]!
            : property;
        Assert.Equal(type, (string)said["type"]!);
    }

    private async Task<JsonNode> DocumentAsync() => JsonNode.Parse(
        await (await site.ClientAsync()).GetStringAsync("/openapi/v1.json", TestContext.Current.CancellationToken))!;
}
