using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.Json.Schema;
using GameNight.Nights.Moving;
using GameNight.Nights.Records;
using GameNight.Planning.Quantities;
using GameNight.TestKit;
using GameNight.TestKit.Postgres;
using Json.Schema;
using NodaTime;

namespace GameNight.Nights.Tests.Moving;

/// <summary>The schema in <c>shared/schema</c> is what the document's types say, and exports keep it.</summary>
public sealed class PublishedSchemaTests(ClassDatabase database) : MovingTest(database)
{
    private static readonly JsonSerializerOptions Indented = new() { WriteIndented = true, NewLine = "\n" };

    /// <summary>What converters make of our types, which a generator cannot see through.</summary>
    private static readonly Dictionary<Type, Func<JsonObject>> Values = new()
    {
        [typeof(Grams)] = () => Number("Grams.", 0),
        [typeof(Celsius)] = () => Number("Degrees Celsius."),
        [typeof(Centimetres)] = () => Number("Centimetres.", 0),
        [typeof(Share)] = () => Number("A fraction: 0.62 for 62 %.", 0, Share.Highest),
        [typeof(PieCount)] = () => new JsonObject { ["type"] = "integer", ["description"] = "Whole pies.", ["minimum"] = 0, ["maximum"] = PieCount.Highest },
        [typeof(NodaTime.Duration)] = () => Number("Minutes.", 0, 20160),
        [typeof(Instant)] = () => Text("Date and time in UTC.", "^\\d{4}-\\d\\d-\\d\\dT\\d\\d:\\d\\d:\\d\\d(\\.\\d+)?Z$"),
        [typeof(LocalDateTime)] = () => Text("Local date and time; the zone stands beside it.", "^\\d{4}-\\d\\d-\\d\\dT\\d\\d:\\d\\d:\\d\\d(\\.\\d+)?$"),
        [typeof(LocalDate)] = () => Text("A date.", "^\\d{4}-\\d\\d-\\d\\d$"),
        [typeof(Guid)] = Id,
        [typeof(GuestId)] = Id,
        [typeof(NightId)] = Id,
        [typeof(DateChoiceId)] = Id,
        [typeof(FormulaId)] = Id,
        [typeof(MenuItemId)] = Id,
        [typeof(string)] = () => new JsonObject { ["type"] = "string" },
    };

    [Fact]
    public void The_published_schema_is_in_step_with_the_document()
    {
        var says = Generated().ToJsonString(Indented) + "\n";
        var file = Path.Combine(SharedFolder.Root, "schema", "group.schema.json");
        var published = File.Exists(file) ? File.ReadAllText(file) : "";
        if (says != published)
        {
            var beside = Path.Combine(AppContext.BaseDirectory, "group.schema.json");
            File.WriteAllText(beside, says);
            Assert.Fail($"The document has changed. If that is meant, copy {beside} over {file}; a document of an earlier version must stay readable.");
        }
    }

    [Fact]
    public async Task An_export_keeps_the_published_schema_and_a_spoilt_one_does_not()
    {
        var lived = await LiveAsync();
        var export = await ExportAsync(lived.Group.Access);
        var schema = JsonSchema.FromText(await File.ReadAllTextAsync(Path.Combine(SharedFolder.Root, "schema", "group.schema.json"), Cancellation));

        AssertKeeps(export, true);
        App.Clock.AdvanceDays(30);
        AssertKeeps(await ExportAsync(lived.Group.Access), true);
        AssertKeeps(But(export, document => document["nights"]![0]!["plan"]!["document"]!["stage"] = "perhaps"), false);
        AssertKeeps(But(export, document => document["guests"]![0]!["mood"] = "good"), false);
        AssertKeeps(But(export, document => document.AsObject().Remove("nights")), false);

        void AssertKeeps(byte[] bytes, bool keeps)
        {
            using var document = JsonDocument.Parse(bytes);
            var result = schema.Evaluate(document.RootElement, new EvaluationOptions { OutputFormat = OutputFormat.List });
            Assert.True(result.IsValid == keeps, JsonSerializer.Serialize(result));
        }
    }

    private static JsonObject Generated()
    {
        var schema = GroupJson.Options.GetJsonSchemaAsNode(
            typeof(GroupDocument),
            new JsonSchemaExporterOptions { TreatNullObliviousAsNonNullable = true, TransformSchemaNode = Describe }).AsObject();
        schema["properties"]!["schema"] = new JsonObject { ["const"] = GroupDocument.SchemaName };
        schema["properties"]!["version"] = new JsonObject { ["const"] = GroupDocument.CurrentVersion };
        schema.Insert(0, "$schema", "https://json-schema.org/draft/2020-12/schema");
        schema.Insert(1, "title", "A group of GameNight, version 1");
        return schema;
    }

    private static JsonNode Describe(JsonSchemaExporterContext context, JsonNode node)
    {
        var type = Nullable.GetUnderlyingType(context.TypeInfo.Type);
        if (!Values.TryGetValue(type ?? context.TypeInfo.Type, out var value))
        {
            return node;
        }

        var described = value();
        var mayBeNull = type is not null
            || (context.TypeInfo.Type == typeof(string) && context.PropertyInfo is { IsGetNullable: true });
        if (mayBeNull)
        {
            described["type"] = new JsonArray(described["type"]!.DeepClone(), "null");
        }

        return described;
    }

    private static JsonObject Id() => Text("32 digits of 0 to 9 and a to f.", "^[0-9a-f]{32}$");

    private static JsonObject Text(string description, string pattern) =>
        new() { ["type"] = "string", ["description"] = description, ["pattern"] = pattern };

    private static JsonObject Number(string description, double? least = null, double? most = null)
    {
        var number = new JsonObject { ["type"] = "number", ["description"] = description };
        if (least is { } low)
        {
            number["minimum"] = low;
        }

        if (most is { } high)
        {
            number["maximum"] = high;
        }

        return number;
    }
}
