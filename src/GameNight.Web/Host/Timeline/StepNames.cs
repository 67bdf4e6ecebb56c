using GameNight.Planning.Timeline;
using GameNight.Web.Wording;

namespace GameNight.Web.Host.Timeline;

/// <summary>What a step is called on screen and on paper.</summary>
internal static class StepNames
{
    public static string Of(TimelineStep step) => step.Kind switch
    {
        StepKind.Temper => step.Number > 1 ? $"Temper, balls taken out in wave {step.Number}" : "Temper: balls out of the fridge",
        _ when step.Number > 0 => $"{Capital(step)}, batch {step.Number}",
        _ => Capital(step),
    };

    private static string Capital(TimelineStep step) => Phrase.Capital(WordText.Say(step.Kind));
}
