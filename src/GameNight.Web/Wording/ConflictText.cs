using System.Diagnostics;
using GameNight.Planning;
using GameNight.Planning.Dough;
using GameNight.Planning.Fermentation;
using GameNight.Planning.Sauce;
using GameNight.Planning.Timeline;
using GameNight.Planning.Toppings;
using GameNight.Web.Wording.Texts;
using static GameNight.Web.Wording.Phrase;
using static GameNight.Web.Wording.QuantityText;

namespace GameNight.Web.Wording;

/// <summary>Says each conflict, and the nearest thing that would work. A test demands a sentence for every conflict.</summary>
/// <param name="zone">IANA zone of the night.</param>
/// <param name="nameOf">From an eater's id to a name.</param>
/// <param name="measures">What the reader reads.</param>
/// <param name="items">Menu item id to name; null where no menu is at hand.</param>
/// <param name="own">Names of own steps; null where there are none at hand.</param>
public sealed class ConflictText(
    string zone, Func<string, string> nameOf, Measures measures, IReadOnlyDictionary<string, string>? items = null,
    OwnStepNames? own = null)
{
    /// <summary>True for what is worth knowing although the night works.</summary>
    public static bool IsNotice(Conflict conflict) => conflict is LastPieIsLate or OwnPieWaits or OnlyUnwantedLeft or NoneOnHand or UnusualBall or PartsWithoutLabel or SimmersTooThick or SaltierThanAsked or EveryPieOnSecondDough;

    public string Say(Conflict conflict) => conflict switch
    {
        FridgeTooSmall c => Phrase.Count(Conflicts.ResourceManager, nameof(Conflicts.FridgeTooSmallOther), c.Balls - c.Places, c.Balls, c.Places),
        BallLargerThanBowl c => Fill(Conflicts.BallLargerThanBowl, measures.SayDough(c.Ball), measures.SayDough(c.Capacity)),
        UnusualBall c => Fill(Conflicts.UnusualBall, measures.SayDough(c.Ball), measures.SayDough(c.Least), measures.SayDough(c.Most)),
        PaperAboveItsLimit c => Fill(Conflicts.PaperAboveItsLimit, measures.Say(c.Oven), measures.Say(c.PaperUpTo)),
        EveryPieOnSecondDough c => Count(Conflicts.ResourceManager, nameof(Conflicts.EveryPieOnSecondDoughOther), c.Pies),
        PartsWithoutLabel c => Fill(Conflicts.PartsWithoutLabel, WordText.And([.. c.Names])),
        SimmersTooThick c => Fill(Conflicts.SimmersTooThick, Length(c.Asked), Length(c.Longest)),
        SaltierThanAsked c => Fill(Conflicts.SaltierThanAsked, Percent(c.Asked), Percent(c.Already)),
        PotTooSmall c => Fill(Conflicts.PotTooSmall, measures.Say(c.PerPot), measures.Say(c.Holds), Whole(c.Pots)),
        NoSensibleDose c => Fill(Conflicts.NoSensibleDose, Percent(c.NearestFresh)),
        BegunDoughOffItsHours c => Begun(c),
        NothingPermitted c => Fill(NothingPermittedFor(c.Because), nameOf(c.EaterId)),
        OwnPiesDoNotFit c => Count(
            Conflicts.ResourceManager, nameof(Conflicts.OwnPiesDoNotFitOther), c.EaterIds.Count,
            Names(c.EaterIds), Pies(c.PiesNeeded), c.Pies, c.PiesNeeded),
        GroupShortOfSlices c => Fill(Conflicts.GroupShortOfSlices, Names(c.EaterIds), Slices(c.Wanted), c.Permitted),
        OnlyUnwantedLeft c => Fill(Conflicts.OnlyUnwantedLeft, nameOf(c.EaterId)),
        TooFewSlices c => Fill(Conflicts.TooFewSlices, Slices(c.Wanted), c.Slices, Pies(c.PiesNeeded)),
        EaterShortOfSlices c => Fill(Conflicts.EaterShortOfSlices, nameOf(c.EaterId), Slices(c.Wanted), c.Planned),
        PinLeftOut { Because: PinFault.NoSuchPie } c => Fill(Conflicts.PinOnNoPie, c.PieNumber),
        PinLeftOut { Because: PinFault.TooManyParts } c => Fill(Conflicts.PinsFillMoreThanThePie, c.PieNumber),
        PinLeftOut { Because: PinFault.NotOnMenu } c => Fill(Conflicts.PinNotOnMenu, c.PieNumber),
        PinLeftOut { Because: PinFault.MustNotBeThere } c => Fill(Conflicts.PinOnOwnPie, c.PieNumber),
        SplitRulesClash c => Clash(c),
        NotesToSettle c => Count(Conflicts.ResourceManager, nameof(Conflicts.NotesToSettleOther), c.EaterIds.Count, Names(c.EaterIds)),
        NoneOnHand c => Count(
            Conflicts.ResourceManager, nameof(Conflicts.NoneOnHandOther), c.ItemIds.Count, WordText.And([.. c.ItemIds.Select(ItemOf)])),
        MoreThanOnHand c => Fill(Conflicts.MoreThanOnHand, measures.Say(c.Needed), ItemOf(c.ItemId), measures.Say(c.OnHand)),
        MenuIncomplete c => Missing(c.Missing),
        TooLateForColdFerment c => Fill(
            Conflicts.TooLateForColdFerment, At(c.NeededMixAt), At(c.EarliestServeAt), Length(c.HoursPossible)),
        ServingTimeHasPassed c => Fill(Conflicts.ServingTimeHasPassed, At(c.ServeAt)),
        NoFreeHands c => NoFree(c),
        OwnStepFindsNoRoom c => NoRoom(c, (own ?? OwnStepNames.None).Of(c.Number)),
        RulesClash c => Fill(Conflicts.RulesClash, Length(c.By), WordText.And([.. c.Steps.Select(WordText.Say)])),
        ChosenMixTimeDoesNotFit c => Fill(
            Conflicts.ChosenMixTimeDoesNotFit, At(c.MixAt), At(c.EarliestMixAt), At(c.LatestMixAt)),
        LastPieIsLate { PiesPerBakeNeeded: 1, HandsNeeded: { } hands } c => Fill(Conflicts.LastPieIsLateForHands, Length(c.AfterFirst), hands),
        LastPieIsLate { PiesPerBakeNeeded: { } pies, HandsNeeded: { } hands } c => Count(
            Conflicts.ResourceManager, nameof(Conflicts.LastPieIsLateOther), hands, Length(c.AfterFirst), pies),
        LastPieIsLate c => Fill(Conflicts.LastPieStaysLate, Length(c.AfterFirst)),
        OwnPieWaits c => Fill(Conflicts.OwnPieWaits, c.PieNumber, Length(c.Waits)),
        _ => throw new UnreachableException($"No wording for {conflict.GetType().Name}."),
    };

    private static string Begun(BegunDoughOffItsHours conflict)
    {
        var (cold, shortest, longest) = (Length(conflict.Cold), Whole(conflict.Shortest.TotalHours), Whole(conflict.Longest.TotalHours));
        var risesTo = Percent(Math.Round(conflict.GasOfWanted, 1));
        return conflict.GasOfWanted switch
        {
            > 1.05 => Fill(Conflicts.BegunDoughRisesMore, cold, shortest, longest, risesTo),
            < 0.95 => Fill(Conflicts.BegunDoughRisesLess, cold, shortest, longest, risesTo),
            _ => Fill(Conflicts.BegunDoughRisesEnough, cold, shortest, longest),
        };
    }

    private string NoFree(NoFreeHands conflict)
    {
        var word = WordText.Say(conflict.Step);
        var step = conflict.Number > 0 ? Fill(Conflicts.NumberedStep, word, conflict.Number) : word;
        var (from, until) = (At(conflict.WindowFrom), At(conflict.WindowUntil));
        return (conflict.NearestFree, conflict.ServeAtThen) switch
        {
            ({ } free, { } serve) => Fill(Conflicts.NoFreeHandsButEither, step, from, until, At(free), At(serve)),
            ({ } free, null) => Fill(Conflicts.NoFreeHandsButFree, step, from, until, At(free)),
            (null, { } serve) => Fill(Conflicts.NoFreeHandsButLater, step, from, until, At(serve)),
            (null, null) => Fill(Conflicts.NoFreeHands, step, from, until),
        };
    }

    private string NoRoom(OwnStepFindsNoRoom conflict, string name) => (conflict, conflict.NearestFree) switch
    {
        ({ OvenTakenFrom: { } from, OvenTakenUntil: { } until }, { } free) => Fill(Conflicts.OwnStepOvenButFree, name, At(from), At(until), At(free)),
        ({ OvenTakenFrom: { } from, OvenTakenUntil: { } until }, null) => Fill(Conflicts.OwnStepOven, name, At(from), At(until)),
        ({ WindowFrom: { } from, WindowUntil: { } until, TakenBy: { Count: > 0 } kinds }, { } free) => Fill(
            Conflicts.OwnStepTakenButFree, name, At(from), At(until), WordText.And([.. kinds.Select(WordText.Say)]), At(free)),
        ({ WindowFrom: { } from, WindowUntil: { } until, TakenBy: { Count: > 0 } kinds }, null) => Fill(
            Conflicts.OwnStepTaken, name, At(from), At(until), WordText.And([.. kinds.Select(WordText.Say)])),
        ({ WindowFrom: { } from, WindowUntil: { } until }, { } free) => Fill(Conflicts.OwnStepAwayButFree, name, At(from), At(until), At(free)),
        ({ WindowFrom: { } from, WindowUntil: { } until }, null) => Fill(Conflicts.OwnStepAway, name, At(from), At(until)),
        (_, { } free) => Fill(Conflicts.OwnStepNoTimeButFree, name, At(free)),
        _ => Fill(Conflicts.OwnStepNoTime, name),
    };

    private string Clash(SplitRulesClash clash)
    {
        var rules = Fill(ClashWords.CannotAllHold, Names(clash.EaterIds), WordText.And([.. clash.Rules.Select(Rule)]));
        return clash.Nearest.Count == 0
            ? Fill(ClashWords.AndNothingAlone, rules)
            : Count(ClashWords.ResourceManager, nameof(ClashWords.AndNearestOther), clash.Nearest.Count, rules, WordText.ListOuter(clash.Nearest.Select(Change)));
    }

    private string Rule(SplitRule rule) => rule.Rule switch
    {
        SplitRuleKind.KeepsDiet => Fill(ClashWords.KeepsDiet, nameOf(rule.EaterId!), WordText.Say(rule.Diet!.Value)),
        SplitRuleKind.Avoids => Fill(ClashWords.Avoids, nameOf(rule.EaterId!), WordText.Say(rule.Allergen!.Value)),
        SplitRuleKind.MustNotTouch => Fill(ClashWords.MustNotTouch, nameOf(rule.EaterId!), WordText.Say(rule.Allergen!.Value)),
        SplitRuleKind.KeptOff => Fill(ClashWords.KeptOff, nameOf(rule.EaterId!), ItemOf(rule.ItemId!)),
        SplitRuleKind.Settled => Fill(ClashWords.Settled, rule.Number),
        SplitRuleKind.OnHand => Fill(ClashWords.OnHand, ItemOf(rule.ItemId!)),
        SplitRuleKind.Wetness => ClashWords.Wetness,
        SplitRuleKind.Apart => Fill(ClashWords.Apart, ItemOf(rule.ItemId!), ItemOf(rule.OtherItemId!)),
        SplitRuleKind.NumberOfPies => Pies(rule.Number!.Value),
        SplitRuleKind.Dough => ClashWords.Dough,
        SplitRuleKind.NoPlainBase => ClashWords.NoPlainBase,
        SplitRuleKind.NoPlainCheese => ClashWords.NoPlainCheese,
    };

    /// <summary>Must-nots are never among what could be changed.</summary>
    private string Change(SplitRule rule) => rule.Rule switch
    {
        SplitRuleKind.Settled => Fill(ClashWords.LetGoOfPie, rule.Number),
        SplitRuleKind.OnHand => Fill(ClashWords.GetMore, ItemOf(rule.ItemId!)),
        SplitRuleKind.Wetness => ClashWords.SettleSomethingWet,
        SplitRuleKind.Apart => Fill(ClashWords.LetMeet, ItemOf(rule.ItemId!), ItemOf(rule.OtherItemId!)),
        SplitRuleKind.NumberOfPies => Fill(ClashWords.MakePies, Pies(rule.Number!.Value)),
        SplitRuleKind.Dough => ClashWords.AnotherDough,
        SplitRuleKind.NoPlainBase => ClashWords.OfferNoSauce,
        SplitRuleKind.NoPlainCheese => ClashWords.OfferNoCheese,
        _ => Rule(rule),
    };

    private string ItemOf(string id) => items?.GetValueOrDefault(id) ?? Words.Something;

    private string At(NodaTime.Instant at) => Moment(at, zone);

    private string Names(IReadOnlyList<string> ids) => WordText.And([.. ids.Select(nameOf)]);

    private static string Missing(MenuRole role) => role switch
    {
        MenuRole.Base => Conflicts.NoBaseOnMenu,
        MenuRole.Cheese => Conflicts.NoCheeseOnMenu,
        MenuRole.Topping => Conflicts.NoToppingOnMenu,
    };

    private static string NothingPermittedFor(NothingPermittedBecause cause) => cause switch
    {
        NothingPermittedBecause.Dough => Conflicts.NothingPermittedDough,
        NothingPermittedBecause.Base => Conflicts.NothingPermittedBase,
        NothingPermittedBecause.Cheese => Conflicts.NothingPermittedCheese,
        NothingPermittedBecause.Kitchen => Conflicts.NothingPermittedKitchen,
    };
}
