using GameNight.Planning.Guests;

namespace GameNight.Reference.Tests;

/// <summary>What the engine says of labels.</summary>
internal static class LabelAnswers
{
    public static IReadOnlyDictionary<string, Func<double>> ById { get; } = new Dictionary<string, Func<double>>
    {
        ["H2"] = () => Enum.GetValues<Allergen>().Length,
    };
}
