using GameNight.Nights.Records;
using GameNight.Planning.Timeline;
using GameNight.Web.Wording.Texts;

namespace GameNight.Web.Wording;

/// <summary>What the host calls their own steps of a night: a plan knows only their numbers.</summary>
public sealed class OwnStepNames(IReadOnlyList<NamedOwnStep>? steps)
{
    public static OwnStepNames None { get; } = new(null);

    public string Of(int number) => steps?.FirstOrDefault(own => own.Step.Number == number)?.Name ?? Phrase.Capital(Words.StepOwn);

    /// <summary>As the words of the plan say it, but an own step by its name.</summary>
    public string Of(StepKind kind, int number) => kind == StepKind.Own ? Of(number) : WordText.Say(kind);
}
