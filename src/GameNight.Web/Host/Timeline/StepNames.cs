using GameNight.Planning.Timeline;
using GameNight.Web.Wording;
using GameNight.Web.Wording.Texts;

namespace GameNight.Web.Host.Timeline;

/// <summary>What a step is called on screen and on paper.</summary>
internal static class StepNames
{
    public static string Of(TimelineStep step, OwnStepNames own) => step.Kind switch
    {
        StepKind.Own => own.Of(step.Number),
        StepKind.Temper => step.Number > 1 ? Phrase.Fill(TimelinePages.LaterTempering, step.Number) : TimelinePages.FirstTempering,
        _ when step.Number > 0 => Phrase.Fill(TimelinePages.StepOfBatch, Capital(step), step.Number),
        _ => Capital(step),
    };

    /// <summary>A wave of tempering says for which pies: each takes the last wave that is warm before it is shaped.</summary>
    /// <param name="withoutBall">Numbers of the pies that lie on the second dough; null for none.</param>
    public static string Of(TimelineStep step, IReadOnlyList<TimelineStep> all, OwnStepNames own, IReadOnlySet<int>? withoutBall = null)
    {
        var waves = all.Where(other => other.Kind == StepKind.Temper).OrderBy(wave => wave.End).ToList();
        if (step.Kind != StepKind.Temper || waves.Count < 2)
        {
            return Of(step, own);
        }

        int[] pies =
        [
            .. all.Where(other => other.Kind == StepKind.Shape && withoutBall?.Contains(other.Number) != true && waves.LastOrDefault(wave => wave.End <= other.Start) is { } wave && wave.Number == step.Number)
                .Select(other => other.Number).Order(),
        ];
        return pies.Length == 0 ? Of(step, own) : Phrase.Count(
            TimelinePages.ResourceManager, nameof(TimelinePages.TemperingForOther), pies.Length, Of(step, own), QuantityText.Balls(pies.Length), WordText.And(WordText.Ranges(pies)));
    }

    public static string Who(bool needsHands) => needsHands ? TimelinePages.YourHands : TimelinePages.ByItself;

    private static string Capital(TimelineStep step) => Phrase.Capital(WordText.Say(step.Kind));
}
