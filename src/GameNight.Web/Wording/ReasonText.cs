using System.Diagnostics;
using GameNight.Planning;
using GameNight.Planning.Appetite;
using GameNight.Planning.Cheese;
using GameNight.Planning.Dough;
using GameNight.Planning.Fermentation;
using GameNight.Planning.Guests;
using GameNight.Planning.Heat;
using GameNight.Planning.Sauce;
using GameNight.Planning.Toppings;
using GameNight.Web.Wording.Texts;
using static GameNight.Web.Wording.Phrase;
using static GameNight.Web.Wording.QuantityText;

namespace GameNight.Web.Wording;

/// <summary>Says each reason in one sentence. A test demands a sentence for every reason there is.</summary>
public static class ReasonText
{
    /// <param name="measures">What the reader reads.</param>
    public static string Say(Reason reason, Measures measures) => reason switch
    {
        AnswersCounted r => Fill(Reasons.AnswersCounted, Who(r), WordText.Say(r.Answer), Chance(r.Chance)),
        EatersCounted r => Fill(Reasons.EatersCounted, Counted(Eaters(r.Portion), r.Eaters), SlicesEach(r.SlicesEach)),
        RemoteNotCounted r => Counted(nameof(Reasons.RemoteNotCountedOther), r.People),
        RunOutChanceAsked r => Counted(
            nameof(Reasons.RunOutChanceAskedOther), r.Pies.Value, Chance(r.Asked), Pies(r.Pies), Chance(r.Reached)),
        DoughIsBegun { Beside: { } beside } r => Fill(Reasons.DoughIsBegunBeside, Pies(r.Pies), Pies(beside)),
        DoughIsBegun r => Fill(Reasons.DoughIsBegun, Pies(r.Pies)),
        HouseholdsTogether r => Counted(nameof(Reasons.HouseholdsTogetherOther), r.Households, r.Guests),
        PartOfTheEvening r => Counted(nameof(Reasons.PartOfTheEveningOther), r.People),
        LateAndEarlyCounted r => Fill(
            Reasons.LateAndEarlyCounted,
            WordText.List(new[] { (nameof(Reasons.ComeLateOther), r.Late), (nameof(Reasons.LeaveEarlyOther), r.Early) }
                .Where(row => row.Item2 > 0).Select(row => Counted(row.Item1, row.Item2))),
            Length(r.EatingTime), OfUsual(r.OfUsual)),
        CoursesOnTheTable r => Counted(nameof(Reasons.CoursesOnTheTableOther), r.Courses, Chance(r.Left)),
        EveningLasts r => Fill(Reasons.EveningLasts, Length(r.Length), OfUsual(r.OfUsual)),
        ChanceFromPastNights r => Fill(
            Reasons.ChanceFromPastNights, r.Guests, WordText.Say(r.Answer), Chance(r.After), Chance(r.Before)),
        AppetiteFromPastNights r => Fill(Reasons.AppetiteFromPastNights, r.Guests, OfUsual(r.OfUsual)),
        ShortageWeighed r => Counted(
            nameof(Reasons.ShortageWeighedOther), r.Pies.Value, Number(r.Weight), Chance(r.Asked), Pies(r.Pies), Chance(r.Reached)),
        DoughRedivided r => Fill(Reasons.DoughRedivided, Balls(r.Before), Balls(r.After)),
        BallFromShape r => Fill(Reasons.BallFromShape, measures.Say(r.Diameter), measures.SayDoughPerArea(r.ThicknessGramsPerCm2)),
        LossAdded r => Fill(Reasons.LossAdded, Percent(r.Loss)),
        BatchesByCapacity r => Fill(
            Reasons.BatchesByCapacity, measures.SayDough(r.Capacity), Counted(nameof(Reasons.BatchesOther), r.Batches)),
        WaterRule { Preferment: { } preferment } r => Fill(
            Reasons.WaterRuleWithPreferment, measures.Say(r.Dough), measures.Say(r.Flour), measures.Say(r.Room), measures.Say(preferment),
            measures.SayDifference(r.FrictionKelvin)),
        WaterRule r => Fill(
            Reasons.WaterRule, measures.Say(r.Dough), measures.Say(r.Flour), measures.Say(r.Room), measures.SayDifference(r.FrictionKelvin)),
        WaterLimited r => Fill(Reasons.WaterLimited, measures.SayTemperature(r.NeededCelsius), measures.Say(r.Limit)),
        DoseForHours r => Fill(
            Reasons.DoseForHours, Length(r.AtRoom), measures.Say(r.Room), Length(r.InFridge), measures.Say(r.Fridge), Length(r.Tempering)),
        FridgeAssumed r => Fill(Reasons.FridgeAssumed, measures.Say(r.Assumed)),
        DoseForAltitude r => Fill(Reasons.DoseForAltitude, measures.SayAltitude(r.Metres), Percent(r.Factor)),
        ColdDoseIsUncertain r => Fill(Reasons.ColdDoseIsUncertain, Number(r.BandFactor)),
        ColdIsShort r => Fill(Reasons.ColdIsShort, Length(r.InFridge), Length(r.Shortest)),
        ColdIsLong r => Fill(Reasons.ColdIsLong, Length(r.InFridge), Length(r.Longest)),
        RiseHiddenInTheCold r => Fill(Reasons.RiseHiddenInTheCold, Percent(r.Dissolved)),
        SugarSlowsYeast r => Fill(Reasons.SugarSlowsYeast, Percent(r.Sugar), Percent(r.Limit)),
        AlcoholInDough r => Fill(Reasons.AlcoholInDough, Fill(Amounts.Percent, Number(r.PercentByVolume)), Fill(Amounts.Percent, Number(r.MostPercentByVolume))),
        CourseFollowsReadings r => Counted(nameof(Reasons.CourseFollowsReadingsOther), r.Readings, Number(r.GasFactor)),
        LittleSalt r => Fill(Reasons.LittleSalt, Percent(r.OfFlour), Percent(r.Least)),
        MuchOil r => Fill(Reasons.MuchOil, Percent(r.OfFlour), Percent(r.Most)),
        PrefermentHardlyYeast r => Fill(Reasons.PrefermentHardlyYeast, r.Name, Percent(r.OfYeast), Percent(r.Usual)),
        PrefermentAhead r => Fill(Reasons.PrefermentAhead, r.Name, Length(r.Before)),
        HydrationForHumidity r => Fill(
            Reasons.HydrationForHumidity, Chance(r.RoomHumidity), Chance(r.FlourMoisture.Expected), Chance(r.FlourMoisture.Low),
            Chance(r.FlourMoisture.High), Percent(r.Before), Percent(r.After), Percent(r.Uncapped)),
        HydrationForMoisture r => Fill(
            Reasons.HydrationForMoisture, Percent(r.FlourMoisture), Percent(r.Before), Percent(r.After), Percent(r.Uncapped)),
        FlourKeptSealed r => Fill(Reasons.FlourKeptSealed, Chance(r.RoomHumidity)),
        HydrationForKneader r => Fill(Reasons.HydrationForKneader, Percent(r.StayedOut), Percent(r.Before), Percent(r.After)),
        FlourBlended r => Fill(Reasons.FlourBlended, Percent(r.Absorption), Percent(r.Protein), Percent(r.Hydration)),
        FrictionEstimated r => Fill(Reasons.FrictionEstimated, measures.SayDifference(r.Kelvin)),
        WaterByHeatBalance r => Fill(Reasons.WaterByHeatBalance, measures.SayTemperature(r.WaterCelsius), measures.SayDifference(r.RiseKelvin)),
        IceReplacesWater r => Fill(Reasons.IceReplacesWater, Percent(r.OfWater), measures.Say(r.Tap), measures.Say(r.Ice)),
        YeastIsWoken r => Fill(Reasons.YeastIsWoken, measures.Say(r.Water), Percent(r.OfWater), measures.Say(r.Rest), Length(r.Foam)),
        DissolveAndSplit r => Fill(
            Reasons.DissolveAndSplit, Balls(r.Balls), measures.SayDough(r.Yeast), measures.SayDough(r.Dissolve), measures.SayDough(r.InWater),
            measures.SayDough(r.Use), measures.SayDough(r.WaterLeft)),
        SoakFromModel { Readings: 0 } r => Fill(Reasons.SoakFromModel, Number(r.ThicknessMillimetres), measures.Say(r.SetPoint)),
        SoakFromModel r => Counted(
            nameof(Reasons.SoakFromModelReadOther), r.Readings, Number(r.ThicknessMillimetres), measures.Say(r.SetPoint)),
        SoakFromRule r => Fill(r.IsForWantOfModel ? Reasons.SoakFromRuleOnly : Reasons.SoakFromRule, Length(r.AfterAirIsHot)),
        SimmeredOff r => Counted(nameof(Reasons.SimmeredOffOther), r.Pots, Whole(r.GramsPerMinute), measures.Say(r.Evaporated)),
        SaltInTheTins r => Fill(r.FromLabel ? Reasons.SaltInTheTins : Reasons.SaltInTheTinsAssumed, measures.SayDough(r.AlreadyIn)),
        AlcoholLeft r => Fill(Reasons.AlcoholLeft, Chance(r.Retained), measures.SayDough(r.PerPie)),
        SoggyMiddle r => Fill(
            Reasons.SoggyMiddle, measures.SayPerArea(r.LoadGramsPerCm2), measures.SayPerArea(r.AtLeastGramsPerCm2),
            measures.SayPerArea(r.BoundGramsPerCm2), measures.SayPerArea(r.CookedFirstGramsPerCm2)),
        SpreadOnArea r => Fill(Reasons.SpreadOnArea, measures.SayArea(r.AreaCm2), measures.SayPerArea(r.GramsPerCm2)),
        _ => throw new UnreachableException($"No wording for {reason.GetType().Name}."),
    };

    /// <summary>Whole percent, and 100 is no chance that must not be said.</summary>
    private static string OfUsual(Planning.Quantities.Share share) => Fill(Amounts.Percent, Whole(share.Percent));

    private static string Counted(string other, int count, params object?[] values) =>
        Count(Reasons.ResourceManager, other, count, values);

    private static string Who(AnswersCounted reason)
    {
        var guests = Counted(nameof(Reasons.GuestsOther), reason.Guests);
        return reason.Companions == 0
            ? guests
            : Counted(nameof(Reasons.WithCompanionsOther), reason.Companions, guests);
    }

    private static string Eaters(PortionClass portion) => portion switch
    {
        PortionClass.Adult => nameof(Reasons.AdultsOther),
        PortionClass.Teen => nameof(Reasons.TeensOther),
        PortionClass.Child => nameof(Reasons.ChildrenOther),
        PortionClass.Toddler => nameof(Reasons.ToddlersOther),
    };
}
