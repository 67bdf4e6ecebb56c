using GameNight.Planning.Live;
using GameNight.Planning.Timeline;
using GameNight.Web.Wording.Texts;
using NodaTime;
using static GameNight.Web.Wording.Phrase;

namespace GameNight.Web.Wording;

/// <summary>Says what to do next, what rings and what was tapped, on the night itself.</summary>
public static class LiveText
{
    /// <summary>Further off than this the day is said too.</summary>
    public static readonly Duration SameEvening = Duration.FromHours(14);

    public static string At(Instant at, Instant now, string zone) => at - now > SameEvening || now - at > SameEvening
        ? QuantityText.Moment(at, zone)
        : QuantityText.Time(QuantityText.Local(at, zone).TimeOfDay);

    /// <summary>What to do, as a heading. A pie is shaped and topped in one go.</summary>
    public static string Do(StepKind step, int number, OwnStepNames own) => step switch
    {
        StepKind.Own => own.Of(number),
        StepKind.Shop => LivePages.DoShop,
        StepKind.Preferment => LivePages.DoPreferment,
        StepKind.WakeYeast => Fill(LivePages.DoWakeYeast, number),
        StepKind.Mix => Fill(LivePages.DoMix, number),
        StepKind.Knead => Fill(LivePages.DoKnead, number),
        StepKind.Ball => Fill(LivePages.DoBall, number),
        StepKind.Temper when number > 1 => Fill(LivePages.DoTemperWave, number),
        StepKind.Temper => LivePages.DoTemper,
        StepKind.Sauce => LivePages.DoSauce,
        StepKind.GrateCheese => LivePages.DoGrateCheese,
        StepKind.PrepareToppings => LivePages.DoPrepareToppings,
        StepKind.SecondMix => LivePages.DoSecondMix,
        StepKind.Preheat => LivePages.DoPreheat,
        StepKind.Shape => Fill(LivePages.DoShape, number),
        StepKind.Top => Fill(LivePages.DoTop, number),
        StepKind.Bake => Fill(LivePages.DoBake, number),
        StepKind.Serve => Fill(LivePages.DoServe, number),
        StepKind.PutAway => LivePages.DoPutAway,
        StepKind.BulkRest or StepKind.ColdFerment or StepKind.SecondRise or StepKind.Soak or StepKind.Rack => Capital(WordText.Say(step)),
    };

    /// <summary>On the button that says so.</summary>
    public static string Done(StepKind step) => step switch
    {
        StepKind.Shape or StepKind.Top => LivePages.DoneIn,
        StepKind.Bake => LivePages.DoneOut,
        StepKind.Temper => LivePages.DoneBallsOut,
        StepKind.Preheat => LivePages.DoneOvenOn,
        StepKind.WakeYeast => LivePages.DoneStirredIn,
        StepKind.Knead => LivePages.DoneBegun,
        StepKind.Serve => LivePages.DoneServed,
        _ => LivePages.Done,
    };

    public static string Say(LiveClock clock, bool hasRung) => clock.Kind switch
    {
        LiveClockKind.PieOut when hasRung => Fill(LivePages.ClockPieOut, clock.Number),
        LiveClockKind.PieOut => Fill(LivePages.ClockPieOutLater, clock.Number),
        LiveClockKind.OffTheRack => Fill(LivePages.ClockOffTheRack, clock.Number),
        LiveClockKind.SurfaceReady => Fill(LivePages.ClockSurfaceReady, clock.Number),
        LiveClockKind.BallsReady when clock.Number == 0 => LivePages.ClockBallsReadyOnly,
        LiveClockKind.BallsReady => Fill(LivePages.ClockBallsReady, clock.Number),
        LiveClockKind.AirHot => LivePages.ClockAirHot,
        LiveClockKind.SurfaceSoaked => LivePages.ClockSurfaceSoaked,
        LiveClockKind.YeastFoams => Fill(LivePages.ClockYeastFoams, clock.Number),
        LiveClockKind.DoughRested => Fill(LivePages.ClockDoughRested, clock.Number),
        LiveClockKind.PutAway => clock.Number == 1 ? LivePages.ClockPutAwayFirst : LivePages.ClockPutAway,
        LiveClockKind.Own => clock.Name ?? LivePages.OwnClock,
    };

    public static string? Hint(LiveClockKind kind) => kind switch
    {
        LiveClockKind.PieOut => LivePages.HintPieOut,
        LiveClockKind.SurfaceReady => LivePages.HintSurfaceReady,
        LiveClockKind.PutAway => LivePages.HintPutAway,
        _ => null,
    };

    public static string Say(LiveRisk risk, OwnStepNames own) => risk.Waiting switch
    {
        StepKind.Shape => Fill(LivePages.RiskShaped, risk.Number, QuantityText.Length(risk.Over)),
        StepKind.Temper => Fill(LivePages.RiskTempered, risk.Number, QuantityText.Length(risk.Over)),
        StepKind.Bake when risk.For == StepKind.Serve => Fill(LivePages.RiskServed, risk.Number, QuantityText.Length(risk.Over)),
        StepKind.Bake or StepKind.Preheat => Fill(LivePages.RiskOven, QuantityText.Length(risk.Over)),
        _ => Fill(LivePages.RiskElse, Do(risk.Waiting, risk.Number, own), QuantityText.Length(risk.Over)),
    };

    /// <summary>What another order of the work gains, and what it costs.</summary>
    public static string Gain(LiveOrder order, Instant now, string zone) => (order.LessOver > Duration.Zero, order.Sooner) switch
    {
        (true, { } sooner) when sooner > Duration.Zero =>
            Fill(LivePages.GainBoth, QuantityText.Length(order.LessOver), QuantityText.Length(sooner), At(order.LastPieAt, now, zone)),
        (true, { } sooner) when sooner < Duration.Zero =>
            Fill(LivePages.GainLessOverLater, QuantityText.Length(order.LessOver), QuantityText.Length(-sooner), At(order.LastPieAt, now, zone)),
        (true, _) => Fill(LivePages.GainLessOver, QuantityText.Length(order.LessOver), At(order.LastPieAt, now, zone)),
        _ => Fill(LivePages.GainSooner, QuantityText.Length(order.Sooner), At(order.LastPieAt, now, zone)),
    };

    public static string Say(StepTrouble trouble) => trouble switch
    {
        StepTrouble.NoFoam => LivePages.TroubleNoFoam,
        StepTrouble.TearsWhenStretched => LivePages.TroubleTearsWhenStretched,
        StepTrouble.SpringsBack => LivePages.TroubleSpringsBack,
        StepTrouble.SticksToPeel => LivePages.TroubleSticksToPeel,
        StepTrouble.SoggyMiddle => LivePages.TroubleSoggyMiddle,
        StepTrouble.BrownsTooSoon => LivePages.TroubleBrownsTooSoon,
    };

    public static string WhatToDo(StepTrouble trouble) => trouble switch
    {
        StepTrouble.NoFoam => LivePages.TroubleNoFoamDo,
        StepTrouble.TearsWhenStretched => LivePages.TroubleTearsWhenStretchedDo,
        StepTrouble.SpringsBack => LivePages.TroubleSpringsBackDo,
        StepTrouble.SticksToPeel => LivePages.TroubleSticksToPeelDo,
        StepTrouble.SoggyMiddle => LivePages.TroubleSoggyMiddleDo,
        StepTrouble.BrownsTooSoon => LivePages.TroubleBrownsTooSoonDo,
    };

    public static string Say(LiveState state) => state switch
    {
        LiveState.Done => LivePages.StateDone,
        LiveState.Running => LivePages.StateRunning,
        LiveState.Due => LivePages.StateDue,
        LiveState.Later => LivePages.StateLater,
    };

    /// <summary>What a tap said, for the button that takes it back.</summary>
    /// <param name="step">The step of the mark; null when it is not one of this plan.</param>
    public static string Say(LiveMark mark, LiveStep? step, OwnStepNames own) => mark.Kind switch
    {
        LiveMarkKind.StepDone => Fill(LivePages.SaidDone, Name(step, own)),
        LiveMarkKind.StepBegun => Fill(LivePages.SaidBegun, Name(step, own)),
        LiveMarkKind.NotBefore => LivePages.SaidLate,
        LiveMarkKind.ClockSet => Fill(LivePages.SaidClock, mark.Name ?? ""),
        LiveMarkKind.ClockHeard => LivePages.SaidHeard,
        LiveMarkKind.HandsNow => Fill(LivePages.SaidHands, mark.Hands ?? 0),
        LiveMarkKind.WentWrong => Fill(LivePages.SaidWrong, Name(step, own)),
        LiveMarkKind.NewOrder => LivePages.SaidNewOrder,
    };

    private static string Name(LiveStep? step, OwnStepNames own) => step is null ? Words.Something : Do(step.Kind, step.Number, own);
}
