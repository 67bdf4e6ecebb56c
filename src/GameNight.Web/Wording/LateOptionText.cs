using System.Diagnostics;
using GameNight.Planning;
using GameNight.Planning.Appetite;
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

    public static string Outlook(PieChoice outlook) => Fill(
        AfterCommitment.WithChoice, Capital(Pies(outlook.Pies)), Chance(outlook.RunOutChance),
        Slices(outlook.ExpectedLeftoverSlices), SlicesEach(outlook.ExpectedShortageSlices));

    public string How(RescuePlan plan) => Fill(
        AfterCommitment.RescueHow, Moment(plan.MixAt, zone), Moment(plan.BallAt, zone), Moment(plan.ReadyAt, zone),
        measures.SayDough(plan.Dough.Total), measures.SayDough(plan.Yeast.Total.Expected), WordText.Say(plan.Yeast.Form),
        measures.SayDough(plan.Yeast.Total.Low), measures.SayDough(plan.Yeast.Total.High));

    public static string TooLate(NoTimeForRescue no) => Fill(AfterCommitment.RescueTooLate, Length(no.Left), Length(no.Needed));

    public static string Say(AppetiteTaken takes) => takes switch
    {
        AppetiteTaken.ALittle => AfterCommitment.CourseALittle,
        AppetiteTaken.Some => AfterCommitment.CourseSome,
        AppetiteTaken.ALot => AfterCommitment.CourseALot,
    };
}
