using System.Text.Json;
using System.Text.Json.Serialization.Metadata;
using GameNight.Planning.Contract;

namespace GameNight.Web.Api;

/// <summary>Which words a field of a plan request can be, where it is one of a closed list.</summary>
internal static class RequestWords
{
    private static readonly JsonSerializerOptions Contract = PlanJson.Options;

    /// <param name="path">As the serializer names it: <c>night.guests[0].answer</c>.</param>
    /// <returns>None for a field that is not of a closed list.</returns>
    public static IReadOnlyList<string> Of(string path)
    {
        var type = typeof(PlanRequest);
        foreach (var step in path.Split('.'))
        {
            var name = step.Split('[')[0];
            var member = Contract.GetTypeInfo(type).Properties.FirstOrDefault(property => property.Name == name);
            if (member is null)
            {
                return [];
            }

            var info = Contract.GetTypeInfo(member.PropertyType);
            type = step.Contains('[', StringComparison.Ordinal) && info.Kind == JsonTypeInfoKind.Enumerable ? info.ElementType! : info.Type;
        }

        type = Nullable.GetUnderlyingType(type) ?? type;
        return type.IsEnum ? [.. Enum.GetNames(type).Select(JsonNamingPolicy.CamelCase.ConvertName)] : [];
    }
}
