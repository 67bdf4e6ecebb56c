using System.Collections;
using System.Reflection;
using GameNight.Planning.Quantities;
using NodaTime;

namespace GameNight.Web.Tests.Wording;

/// <summary>Instances of any record of the planner, with every enumeration value and every null that its parameters allow.</summary>
internal static class Samples
{
    public static IEnumerable<object> Of(Type record)
    {
        var maker = record.GetConstructors().OrderByDescending(made => made.GetParameters().Length).First();
        var choices = maker.GetParameters().Select(Values).ToList();
        var first = choices.Select(values => values[0]).ToArray();
        yield return maker.Invoke(first);
        for (var index = 0; index < choices.Count; index++)
        {
            foreach (var other in choices[index].Skip(1))
            {
                var changed = (object?[])first.Clone();
                changed[index] = other;
                yield return maker.Invoke(changed);
            }
        }
    }

    private static List<object?> Values(ParameterInfo parameter) => Nullable.GetUnderlyingType(parameter.ParameterType) is { } inner
        ? [.. Values(inner), null]
        : Values(parameter.ParameterType);

    private static List<object?> Values(Type type) =>
        type.IsEnum ? [.. Enum.GetValues(type).Cast<object?>()]
        : type.IsGenericType && type.GetGenericTypeDefinition() == typeof(IReadOnlyList<>) ? [.. Lists(type.GetGenericArguments()[0])]
        : type == typeof(bool) ? [true, false]
        : type == typeof(string) ? ["guest-1"]
        : type == typeof(int) ? [2, 1, 0]
        : type == typeof(double) ? [1.5, 0.0]
        : type == typeof(Share) ? [new Share(0.1), new Share(0), new Share(1)]
        : type == typeof(Grams) ? [new Grams(250), default(Grams)]
        : type == typeof(Celsius) ? [new Celsius(21), new Celsius(-1)]
        : type == typeof(Centimetres) ? [new Centimetres(33)]
        : type == typeof(PieCount) ? [new PieCount(3), new PieCount(1)]
        : type == typeof(Duration) ? [Duration.FromMinutes(95), Duration.FromHours(2), Duration.Zero]
        : type == typeof(Instant) ? [Instant.FromUtc(2026, 12, 12, 18, 30)]
        : type.IsGenericType && type.GetGenericTypeDefinition() == typeof(Estimate<>) ? [Banded(type)]
        : type is { Namespace: { } planner, IsClass: true } && planner.StartsWith("GameNight.Planning", StringComparison.Ordinal) ? [.. Of(type).Take(1)]
        : throw new NotSupportedException($"Say here what a {type.Name} looks like.");

    private static object Banded(Type estimate)
    {
        var value = Values(estimate.GetGenericArguments()[0])[0];
        return Activator.CreateInstance(estimate, value, value, value)!;
    }

    private static IEnumerable<object?> Lists(Type element)
    {
        var values = Values(element);
        yield return ListOf(element, values.Take(1));
        yield return ListOf(element, values.Concat(values).Take(3));
    }

    private static IList ListOf(Type element, IEnumerable<object?> values)
    {
        var list = (IList)Activator.CreateInstance(typeof(List<>).MakeGenericType(element))!;
        foreach (var value in values)
        {
            list.Add(value);
        }

        return list;
    }
}
