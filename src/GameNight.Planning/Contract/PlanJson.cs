using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.Json.Serialization;
using System.Text.Json.Serialization.Metadata;
using GameNight.Planning.Quantities;
using NodaTime;

namespace GameNight.Planning.Contract;

/// <summary>
/// The one JSON contract of snapshots and plans, for storage and API alike: a quantity is a number in the unit that ends its
/// field's name (<c>ballGrams</c>, <c>roomCelsius</c>, <c>bakeMinutes</c>), reasons and conflicts carry a fixed
/// <c>kind</c>, unknown members are refused.
/// </summary>
public static class PlanJson
{
    public const int DeepestNesting = 24;

    public static JsonSerializerOptions Options { get; } = Freeze(Configure(new JsonSerializerOptions()));

    /// <summary>Sets options up for the contract; also for a host that brings its own options object.</summary>
    public static JsonSerializerOptions Configure(JsonSerializerOptions options)
    {
        options.PropertyNamingPolicy = JsonNamingPolicy.CamelCase;
        options.UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow;
        options.RespectNullableAnnotations = true;
        options.RespectRequiredConstructorParameters = true;
        options.AllowDuplicateProperties = false;
        options.NumberHandling = JsonNumberHandling.Strict;
        options.MaxDepth = DeepestNesting;
        options.TypeInfoResolver = new DefaultJsonTypeInfoResolver { Modifiers = { Closed, WithUnits } };
        options.Converters.Add(new JsonStringEnumConverter(JsonNamingPolicy.CamelCase, allowIntegerValues: false));
        foreach (var converter in QuantityConverters.All)
        {
            options.Converters.Add(converter);
        }

        return options;
    }

    /// <summary>The same value always gives the same text: members in ordinal order, no white space.</summary>
    public static string Canonical<T>(T value) => Sorted(JsonSerializer.SerializeToNode(value, Options))!.ToJsonString();

    /// <summary>Identifies what a plan was made from: the snapshot, the engine and the reference tables.</summary>
    public static string Fingerprint(NightSnapshot night, ReferenceTables tables)
    {
        var text = $"{NightPlanner.EngineVersion}\n{tables.Hash}\n{Canonical(night)}";
        return Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text)));
    }

    private static JsonSerializerOptions Freeze(JsonSerializerOptions options)
    {
        options.MakeReadOnly();
        return options;
    }

    private static void Closed(JsonTypeInfo type)
    {
        var names = type.Type == typeof(Reason) ? Discriminators.Reasons
            : type.Type == typeof(Conflict) ? Discriminators.Conflicts
            : null;
        if (names is null)
        {
            return;
        }

        type.PolymorphismOptions = new JsonPolymorphismOptions
        {
            TypeDiscriminatorPropertyName = "kind",
            UnknownDerivedTypeHandling = JsonUnknownDerivedTypeHandling.FailSerialization,
        };
        foreach (var (derived, name) in names)
        {
            type.PolymorphismOptions.DerivedTypes.Add(new JsonDerivedType(derived, name));
        }
    }

    private static void WithUnits(JsonTypeInfo type)
    {
        if (type.Kind != JsonTypeInfoKind.Object)
        {
            return;
        }

        // Computed members (a batch's total) are written for readers' sake and never read back.
        for (var i = type.Properties.Count - 1; i >= 0; i--)
        {
            var property = type.Properties[i];
            if (property.Set is null && property.AssociatedParameter is null)
            {
                type.Properties.RemoveAt(i);
                continue;
            }

            // A member that came later is left out while it is null: what was kept before stays as it was, fingerprints too.
            if (property.AssociatedParameter is { HasDefaultValue: true, DefaultValue: null })
            {
                property.ShouldSerialize = (_, value) => value is not null;
            }

            var unit = UnitOf(property.PropertyType);
            if (unit is not null && !property.Name.EndsWith(unit, StringComparison.OrdinalIgnoreCase))
            {
                property.Name += unit;
            }
        }
    }

    private static string? UnitOf(Type type)
    {
        var inner = Nullable.GetUnderlyingType(type) ?? type;
        if (inner.IsGenericType
            && (inner.GetGenericTypeDefinition() == typeof(Estimate<>) || inner.GetGenericTypeDefinition() == typeof(Explained<>)))
        {
            return UnitOf(inner.GetGenericArguments()[0]);
        }

        return inner == typeof(Grams) ? "Grams"
            : inner == typeof(Celsius) ? "Celsius"
            : inner == typeof(Centimetres) ? "Centimetres"
            : inner == typeof(Duration) ? "Minutes"
            : null;
    }

    private static JsonNode? Sorted(JsonNode? node) => node switch
    {
        JsonObject members => new JsonObject(members
            .OrderBy(member => member.Key, StringComparer.Ordinal)
            .Select(member => KeyValuePair.Create(member.Key, Sorted(member.Value)))),
        JsonArray items => new JsonArray([.. items.Select(Sorted)]),
        null => null,
        _ => node.DeepClone(),
    };
}
