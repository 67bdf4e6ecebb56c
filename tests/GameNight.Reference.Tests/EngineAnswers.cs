namespace GameNight.Reference.Tests;

/// <summary>What the engine says for each reference check, by the check's id. A new area adds its class here.</summary>
public static class EngineAnswers
{
    public static IReadOnlyDictionary<string, Func<double>> ById { get; } = new[]
    {
        DoughAnswers.ById, FlourAnswers.ById, WaterAnswers.ById, FermentationAnswers.ById, HeatAnswers.ById, LabelAnswers.ById,
        AppetiteAnswers.ById, MeasureAnswers.ById, SauceAnswers.ById, CheeseAnswers.ById, SplitAnswers.ById, DateAnswers.ById,
    }.SelectMany(area => area).ToDictionary(answer => answer.Key, answer => answer.Value);
}
