using GameNight.Planning.Appetite;
using GameNight.Planning.Cheese;
using GameNight.Planning.Dough;
using GameNight.Planning.Fermentation;
using GameNight.Planning.Heat;
using GameNight.Planning.Sauce;
using GameNight.Planning.Timeline;
using GameNight.Planning.Toppings;

namespace GameNight.Planning.Contract;

/// <summary>The fixed names of reasons and conflicts in JSON. Stored plans depend on them: add, never rename.</summary>
public static class Discriminators
{
    public static IReadOnlyDictionary<Type, string> Reasons { get; } = new Dictionary<Type, string>
    {
        [typeof(AnswersCounted)] = "answersCounted",
        [typeof(EatersCounted)] = "eatersCounted",
        [typeof(RemoteNotCounted)] = "remoteNotCounted",
        [typeof(RunOutChanceAsked)] = "runOutChanceAsked",
        [typeof(DoughIsBegun)] = "doughIsBegun",
        [typeof(HouseholdsTogether)] = "householdsTogether",
        [typeof(PartOfTheEvening)] = "partOfTheEvening",
        [typeof(LateAndEarlyCounted)] = "lateAndEarlyCounted",
        [typeof(CoursesOnTheTable)] = "coursesOnTheTable",
        [typeof(EveningLasts)] = "eveningLasts",
        [typeof(ChanceFromPastNights)] = "chanceFromPastNights",
        [typeof(AppetiteFromPastNights)] = "appetiteFromPastNights",
        [typeof(ShortageWeighed)] = "shortageWeighed",
        [typeof(BallFromShape)] = "ballFromShape",
        [typeof(DoughRedivided)] = "doughRedivided",
        [typeof(LossAdded)] = "lossAdded",
        [typeof(BatchesByCapacity)] = "batchesByCapacity",
        [typeof(HydrationForHumidity)] = "hydrationForHumidity",
        [typeof(HydrationForMoisture)] = "hydrationForMoisture",
        [typeof(FlourKeptSealed)] = "flourKeptSealed",
        [typeof(HydrationForKneader)] = "hydrationForKneader",
        [typeof(FlourBlended)] = "flourBlended",
        [typeof(LittleSalt)] = "littleSalt",
        [typeof(MuchOil)] = "muchOil",
        [typeof(PrefermentAhead)] = "prefermentAhead",
        [typeof(PrefermentHardlyYeast)] = "prefermentHardlyYeast",
        [typeof(DissolveAndSplit)] = "dissolveAndSplit",
        [typeof(WaterRule)] = "waterRule",
        [typeof(WaterLimited)] = "waterLimited",
        [typeof(FrictionEstimated)] = "frictionEstimated",
        [typeof(WaterByHeatBalance)] = "waterByHeatBalance",
        [typeof(IceReplacesWater)] = "iceReplacesWater",
        [typeof(YeastIsWoken)] = "yeastIsWoken",
        [typeof(DoseForHours)] = "doseForHours",
        [typeof(FridgeAssumed)] = "fridgeAssumed",
        [typeof(DoseForAltitude)] = "doseForAltitude",
        [typeof(ColdDoseIsUncertain)] = "coldDoseIsUncertain",
        [typeof(ColdIsShort)] = "coldIsShort",
        [typeof(ColdIsLong)] = "coldIsLong",
        [typeof(RiseHiddenInTheCold)] = "riseHiddenInTheCold",
        [typeof(SugarSlowsYeast)] = "sugarSlowsYeast",
        [typeof(AlcoholInDough)] = "alcoholInDough",
        [typeof(CourseFollowsReadings)] = "courseFollowsReadings",
        [typeof(SpreadOnArea)] = "spreadOnArea",
        [typeof(SoakFromModel)] = "soakFromModel",
        [typeof(SoakFromRule)] = "soakFromRule",
        [typeof(SimmeredOff)] = "simmeredOff",
        [typeof(SaltInTheTins)] = "saltInTheTins",
        [typeof(AlcoholLeft)] = "alcoholLeft",
        [typeof(SoggyMiddle)] = "soggyMiddle",
    };

    public static IReadOnlyDictionary<Type, string> Conflicts { get; } = new Dictionary<Type, string>
    {
        [typeof(BallLargerThanBowl)] = "ballLargerThanBowl",
        [typeof(FridgeTooSmall)] = "fridgeTooSmall",
        [typeof(UnusualBall)] = "unusualBall",
        [typeof(PartsWithoutLabel)] = "partsWithoutLabel",
        [typeof(PaperAboveItsLimit)] = "paperAboveItsLimit",
        [typeof(EveryPieOnSecondDough)] = "everyPieOnSecondDough",
        [typeof(NoSensibleDose)] = "noSensibleDose",
        [typeof(BegunDoughOffItsHours)] = "begunDoughOffItsHours",
        [typeof(NothingPermitted)] = "nothingPermitted",
        [typeof(OwnPiesDoNotFit)] = "ownPiesDoNotFit",
        [typeof(GroupShortOfSlices)] = "groupShortOfSlices",
        [typeof(OnlyUnwantedLeft)] = "onlyUnwantedLeft",
        [typeof(MenuIncomplete)] = "menuIncomplete",
        [typeof(TooFewSlices)] = "tooFewSlices",
        [typeof(EaterShortOfSlices)] = "eaterShortOfSlices",
        [typeof(PinLeftOut)] = "pinLeftOut",
        [typeof(SplitRulesClash)] = "splitRulesClash",
        [typeof(NotesToSettle)] = "notesToSettle",
        [typeof(NoneOnHand)] = "noneOnHand",
        [typeof(MoreThanOnHand)] = "moreThanOnHand",
        [typeof(TooLateForColdFerment)] = "tooLateForColdFerment",
        [typeof(ServingTimeHasPassed)] = "servingTimeHasPassed",
        [typeof(NoFreeHands)] = "noFreeHands",
        [typeof(RulesClash)] = "rulesClash",
        [typeof(ChosenMixTimeDoesNotFit)] = "chosenMixTimeDoesNotFit",
        [typeof(OwnStepFindsNoRoom)] = "ownStepFindsNoRoom",
        [typeof(LastPieIsLate)] = "lastPieIsLate",
        [typeof(OwnPieWaits)] = "ownPieWaits",
        [typeof(SimmersTooThick)] = "simmersTooThick",
        [typeof(PotTooSmall)] = "potTooSmall",
        [typeof(SaltierThanAsked)] = "saltierThanAsked",
    };
}
