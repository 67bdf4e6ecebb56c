using System.Diagnostics;
using GameNight.Nights.Records;
using GameNight.Planning;
using GameNight.Planning.Appetite;
using GameNight.Planning.Quantities;
using GameNight.Web.Wording.Texts;
using static GameNight.Web.Wording.Phrase;
using static GameNight.Web.Wording.QuantityText;

namespace GameNight.Web.Wording;

/// <summary>Says what can still be done once the dough is begun, and what was chosen.</summary>
public sealed class LateOptionText(string zone, Measures measures)
{
    public static string Title(LateOption option) => option switch
    {
        RedivideOption o => Fill(AfterCommitment.RedivideTitle, Balls(o.Anew.Balls.Value)),
        KeepBallsOption o => Fill(AfterCommitment.KeepTitle, Balls(o.Balls)),
        CourseOption => AfterCommitment.CourseTitle,
        RescueOption o => Fill(AfterCommitment.RescueTitle, Pies(o.Dough.Balls)),
        AcceptOption => AfterCommitment.AcceptTitle,
        _ => throw new UnreachableException($"No wording for {option.GetType().Name}."),
    };

    public string How(LateOption option) => option switch
    {
        RedivideOption o => Fill(
            AfterCommitment.RedivideHow, measures.SayDough(o.Ball), measures.Say(o.Anew.Diameter),
            measures.SayDoughPerArea(o.Anew.ThicknessGramsPerCm2), Moment(o.Until, zone)),
        KeepBallsOption o => Fill(AfterCommitment.KeepHow, measures.SayDough(o.Ball)),
        CourseOption o => Capital(Say(o.Takes)),
        RescueOption o => How(o.Plan),
        AcceptOption o => Fill(AfterCommitment.AcceptHow, Chance(o.Wanted), Chance(o.Outlook.RunOutChance)),
        _ => throw new UnreachableException($"No wording for {option.GetType().Name}."),
    };

    public static string Outlook(LateOption option) => Fill(
        option.OfCommittedSlice == 1 ? AfterCommitment.WithChoice : AfterCommitment.WithChoiceOfOtherSize,
        Capital(Pies(option.Outlook.Pies)), Chance(option.Outlook.RunOutChance), Slices(option.LeftoverSlices), SlicesEach(option.ShortageSlices));

    /// <summary>Null for what lowers the run-out chance, and for what nobody chooses for that.</summary>
    public static string? NoHelp(LateOption option, Share now) =>
        option is RedivideOption && !option.Helps ? Fill(AfterCommitment.DoesNotHelp, Chance(now)) : null;

    public string How(RescuePlan plan) => Fill(
        AfterCommitment.RescueHow, Moment(plan.MixAt, zone), Moment(plan.BallAt, zone), Moment(plan.ReadyAt, zone),
        measures.SayDough(plan.Dough.Total), measures.SayDough(plan.Yeast.Total.Expected), WordText.Say(plan.Yeast.Form),
        measures.SayDough(plan.Yeast.Total.Low), measures.SayDough(plan.Yeast.Total.High));

    /// <summary>What stands chosen, each to be taken back by itself.</summary>
    /// <param name="now">The run-out chance as it stands.</param>
    public static IEnumerable<(LateChoice What, string Sentence)> Standing(LateChoices? chosen, Share now)
    {
        if (chosen?.Rescue is { } rescue)
        {
            yield return (LateChoice.Rescue, Fill(AfterCommitment.RescueTitle, Pies(rescue.Balls)));
        }

        if (chosen?.Redivided is { } anew)
        {
            yield return (LateChoice.Redivided, Fill(AfterCommitment.ChoseRedivided, Balls(anew.Balls.Value)));
        }

        if (chosen?.BallsKept is { } kept)
        {
            yield return (LateChoice.BallsKept, Fill(AfterCommitment.ChoseKept, Balls(kept)));
        }

        if (chosen?.Course is { } takes)
        {
            yield return (LateChoice.Course, Fill(AfterCommitment.ChoseCourse, Say(takes)));
        }

        if (chosen?.Accepted is { } accepted)
        {
            yield return (LateChoice.Accepted, Fill(AfterCommitment.ChoseAccepted, Chance(accepted), Chance(now)));
        }
    }

    /// <summary>Null while a rescue dough is needed, or when there is none.</summary>
    public static string? NotNeeded(LateChoices? chosen, Explained<PieCount> pies) =>
        chosen?.Rescue is { } rescue && pies.Value.Value - rescue.Balls.Value >= pies.Proposed.Value
            ? Fill(AfterCommitment.RescueNotNeeded, Pies(pies.Proposed), Pies(pies.Value))
            : null;

    public string Why(LetGo gone) => Fill(
        gone.Cause switch
        {
            LetGoCause.NightMoved => AfterCommitment.GoneMoved,
            LetGoCause.DoughLetGo => AfterCommitment.GoneDough,
            LetGoCause.CommitmentTakenBack => AfterCommitment.GoneCommitment,
        },
        Moment(gone.At, zone));

    public IEnumerable<string> Went(LetGo gone, Share now) => Standing(gone.Choices, now).Select(one =>
        one.What == LateChoice.Rescue
            ? Fill(AfterCommitment.GoneRescue, Pies(gone.Choices.Rescue!.Balls), Moment(gone.Choices.Rescue.MixAt, zone))
            : one.Sentence);

    public static string TooLate(NoTimeForRescue no) => Fill(AfterCommitment.RescueTooLate, Length(no.Left), Length(no.Needed));

    public static string Say(AppetiteTaken takes) => takes switch
    {
        AppetiteTaken.ALittle => AfterCommitment.CourseALittle,
        AppetiteTaken.Some => AfterCommitment.CourseSome,
        AppetiteTaken.ALot => AfterCommitment.CourseALot,
    };
}
