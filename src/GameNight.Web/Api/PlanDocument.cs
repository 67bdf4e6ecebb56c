using GameNight.Planning.Quantities;
using Microsoft.AspNetCore.OpenApi;
using Microsoft.OpenApi;
using NodaTime;

namespace GameNight.Web.Api;

/// <summary>The OpenAPI document: what the quantities are, which the generator cannot see through their converters.</summary>
internal static class PlanDocument
{
    private static readonly Dictionary<Type, (JsonSchemaType Type, string? Format, string Description)> Quantities = new()
    {
        [typeof(Grams)] = (JsonSchemaType.Number, null, "Grams, 0 or more."),
        [typeof(Celsius)] = (JsonSchemaType.Number, null, "Degrees Celsius, -40 to 600."),
        [typeof(Centimetres)] = (JsonSchemaType.Number, null, "Centimetres, 0 or more."),
        [typeof(Share)] = (JsonSchemaType.Number, null, "A fraction: 0.62 for 62 %."),
        [typeof(PieCount)] = (JsonSchemaType.Integer, null, "Whole pies, 0 to 200."),
        [typeof(Duration)] = (JsonSchemaType.Number, null, "Minutes, 0 to 20160."),
        [typeof(Instant)] = (JsonSchemaType.String, "date-time", "Date and time with offset (RFC 3339)."),
    };

    public static void Describe(OpenApiOptions options)
    {
        options.AddDocumentTransformer((document, _, _) =>
        {
            document.Info = new OpenApiInfo
            {
                Title = "GameNight planner",
                Version = "1",
                Description = "Plans the pizza of a game night: a quantity is one number in the unit that ends its field's name.",
                License = new OpenApiLicense { Name = "MIT", Identifier = "MIT" },
            };
            return Task.CompletedTask;
        });
        options.AddSchemaTransformer((schema, context, _) =>
        {
            var type = Nullable.GetUnderlyingType(context.JsonTypeInfo.Type) ?? context.JsonTypeInfo.Type;
            if (Quantities.TryGetValue(type, out var quantity))
            {
                schema.Type = quantity.Type;
                schema.Format = quantity.Format;
                schema.Description = quantity.Description;
            }

            return Task.CompletedTask;
        });
    }
}
