using GameNight.Planning.Timeline;
using GameNight.Web.Wording;
using GameNight.Web.Wording.Texts;

namespace GameNight.Web.Host.Timeline;

/// <summary>What a step is called on screen and on paper.</summary>
internal static class StepNames
{
    public static string Of(TimelineStep step) => step.Kind switch
    {
        StepKind.Temper => step.Number > 1 ? Phrase.Fill(TimelinePages.LaterTempering, step.Number) : TimelinePages.FirstTempering,
        _ when step.Number > 0 => Phrase.Fill(TimelinePages.StepOfBatch, Capital(step), step.Number),
        _ => Capital(step),
    };

    public static string Who(bool needsHands) => needsHands ? TimelinePages.YourHands : TimelinePages.ByItself;

    private static string Capital(TimelineStep step) => Phrase.Capital(WordText.Say(step.Kind));
}
