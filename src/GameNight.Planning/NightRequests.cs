using GameNight.Planning.Appetite;
using GameNight.Planning.Dough;
using GameNight.Planning.Fermentation;
using GameNight.Planning.Quantities;
using GameNight.Planning.Sauce;
using GameNight.Planning.Timeline;
using GameNight.Planning.Toppings;
using NodaTime;

namespace GameNight.Planning;

/// <summary>Hands each model just what it needs of the night: the models do not know one another.</summary>
internal static class NightRequests
{
    public static SplitRequest Split(NightSnapshot night, SlicesForecast forecast, int pies, ReferenceTables tables)
    {
        var needs = night.Guests.SelectMany(guest => guest.Eaters).ToDictionary(eater => eater.Id);

        // Of companions nothing is known from past nights.
        var weights = night.Guests.ToDictionary(guest => guest.Eaters[0].Id, guest => FairOverTime.WeightPercent(guest.Past));
        var eating = forecast.Eaters.Where(eater => eater.ExpectedSlices > 0).ToList();

        // No more than is expected to be eaten is set aside by name: what is left over stays free for whoever is hungry.
        // When the pies hold less, the split cuts everybody in proportion and says so.
        var expected = (int)Math.Ceiling(eating.Sum(eater => eater.ExpectedSlices));
        var slices = SliceShares.Divide([.. eating.Select(eater => eater.ExpectedSlices)], expected);

        return new SplitRequest(
            [.. eating.Select((eater, index) =>
                new SplitEater(eater.EaterId, slices[index], needs[eater.EaterId].Needs, needs[eater.EaterId].Likes,
                    weights.GetValueOrDefault(eater.EaterId, FairOverTime.UsualPercent)))],
            [.. forecast.MustNotGroups.Select(group =>
            {
                // An own pie is sized by what its owners are planned: a second one for a hungry night would take a
                // pie from everybody else. So is a single pie of the second dough.
                var groupNeeds = needs[group.EaterIds[0]].Needs;
                var planned = eating.Select((eater, index) => group.EaterIds.Contains(eater.EaterId) ? slices[index] : 0).Sum();
                var isApart = groupNeeds.NeedsOwnPie || (planned <= night.Shape.SlicesPerPie
                    && night.Menu.SecondDough is not null && !night.Menu.Dough.IsPermittedFor(groupNeeds));
                return new MustNotGroup(group.EaterIds, groupNeeds, isApart ? planned : group.SlicesNineInTen);
            })],
            night.Menu,
            pies,
            night.Shape.SlicesPerPie,
            night.ByHand.Split?.Aim ?? SplitAim.WorstOff,
            night.ByHand.Split?.Parts ?? SplitRequest.UsualParts,
            night.ByHand.Split?.Pins,
            NightSauceAndCheese.Wetness(night, pies, tables),
            night.Menu.Items.Where(item => item.OnHand is not null || item.Pack is not null).ToDictionary(
                item => item.Id, item => new ItemStock(PerPie(night, item), item.OnHand, item.Pack)) is { Count: > 0 } stock ? stock : null,
            night.Begun is { } begun ? LateChoices.Balls(night, begun).Value : null);
    }

    /// <param name="sauce">Null when no formula says how long the sauce takes.</param>
    /// <param name="soak">Null for the kitchen's own.</param>
    /// <param name="tempering">What the balls need in their box.</param>
    public static TimelineRequest Timeline(
        NightSnapshot night, Instant now, DoughPlan dough, int pies, ToppingSplit split, SaucePlan? sauce, Duration? soak,
        Duration tempering, ReferenceTables tables)
    {
        var kitchen = night.Kitchen;
        return new TimelineRequest(
            night.ServeAt,
            now,
            [.. night.Away, .. night is { Begun: not null, Late.Rescue: { } rescue } ? RescuePlan.Hands(night, rescue, tables) : []],
            dough.Batches.Count,
            dough.Balls,
            dough.Balls == 0 ? 0 : pies,
            dough.Balls == 0 ? 0 : split.Pies.Count(pie => pie.IsKeptApart),
            kitchen.PiesPerBake,
            kitchen.Hands,
            kitchen.Kneading,
            night.ColdFerment,
            new StepDurations(
                Shop: Minutes(StepName.Shop),
                Mix: Minutes(StepName.Mix),
                Knead: Minutes(kitchen.Kneading == KneadingWay.ByHand ? StepName.KneadByHand : StepName.KneadMixer),
                BulkRest: Minutes(StepName.BulkRest),
                BallEach: Minutes(StepName.BallEach),
                Temper: tempering,
                Sauce: sauce?.Time ?? Minutes(StepName.Sauce),
                GrateCheese: Minutes(StepName.GrateCheese),
                PrepareToppings: Minutes(StepName.PrepareToppings),
                Preheat: kitchen.Preheat,
                Soak: soak ?? kitchen.Soak,
                Shape: Minutes(StepName.Shape),
                Top: Minutes(StepName.Top),
                Bake: kitchen.Bake,
                Recovery: kitchen.Recovery,
                Rack: Minutes(StepName.Rack),
                Serve: Minutes(StepName.Serve)),
            night.ByHand.MixAt,
            night.Begun?.Steps,
            dough.Formula.Preferment is { } preferment ? new PrefermentWork(Minutes(StepName.Preferment), preferment.Before) : null,
            dough.Balls > 0 && night.Menu.SecondDough is { } second && split.Pies.FirstOrDefault(pie => pie.IsOnSecondDough) is { } first
                ? new SecondDoughWork(Minutes(StepName.SecondMix), second.Recipe.Rise, first.Number)
                : null,
            night.OwnSteps,
            night.Helpers,
            night.Helpers is null ? null : tables.Steps.ForCooks,
            tables.Safety.Holding.LongestIn(kitchen.Room),
            dough.Formula.Yeast == tables.Dough.Activation.Form ? Duration.FromMinutes(tables.Dough.Activation.FoamMinutes) : null,
            kitchen.Bowls,
            kitchen.HobRings,
            BallsAhead(tempering, tables.Steps));

        Duration Minutes(StepName step) => kitchen.LengthOf(step, tables.Steps);
    }

    /// <summary>
    /// As much as tempering may take longer nine times in ten: of all steps before the first pie it is the least certain, and warm balls
    /// can wait, so that here a buffer helps most and costs nothing.
    /// </summary>
    private static Duration BallsAhead(Duration tempering, StepTable table) => Duration.Max(
        TimelineLimits.ReadyAhead, Duration.Min(TimelineLimits.BallsReadyAhead, tempering * (table.BandOf(StepName.Temper) - 1)));

    /// <summary>
    /// Flour and preferment have the room's temperature; milk and the like are taken to be as warm as the water.
    /// </summary>
    public static WaterRequest Water(NightSnapshot night, DoughPlan dough, DoughTable table)
    {
        var (kitchen, formula) = (night.Kitchen, dough.AsWeighed);
        return new WaterRequest(
            new Celsius(table.TargetDoughCelsius.Value),
            Flour: kitchen.Room,
            kitchen.Room,
            kitchen.FrictionKelvin ?? table.Of(kitchen.Kneading).KelvinOfTheSum,
            kitchen.Tap,
            formula.EffectiveHydration,
            FrictionIsLearned: kitchen.FrictionKelvin is not null,
            new Celsius(table.Ice.Celsius),
            formula.Preferment is { } preferment
                ? new FermentedAhead(
                    kitchen.Room, preferment.OfFlour, new Share(preferment.OfFlour.Value * preferment.WaterPerFlour.Value))
                : null,
            formula.Yeast == table.Activation.Form
                ? new YeastWaking(
                    new Celsius(table.Activation.Celsius),
                    new Share(table.Activation.ShareOfWater),
                    Duration.FromMinutes(table.Activation.FoamMinutes))
                : null);
    }
    /// <summary>When the last of the sauce is made; without a timeline it is eaten fresh.</summary>
    public static Instant SauceReady(NightSnapshot night, HostTimeline timeline) => timeline.Steps
        .Where(step => step.Kind == StepKind.Sauce)
        .Select(step => step.End)
        .DefaultIfEmpty(night.ServeAt)
        .Max();

    /// <summary>Where the dough is and how long. Without a timeline the wanted hours stand in for it.</summary>
    public static DoughJourney Journey(
        NightSnapshot night, HostTimeline timeline, DoughPlan dough, Duration tempering, ReferenceTables tables)
    {
        var (mix, cold) = LastBatch(timeline);
        var nominalRoom = tables.Steps.MinutesOf(StepName.Mix)
            + tables.Steps.MinutesOf(StepName.KneadByHand)
            + tables.Steps.MinutesOf(StepName.BulkRest);

        return new DoughJourney(
            Mixed: new Celsius(tables.Dough.TargetDoughCelsius.Value),
            AtRoom: mix is not null && cold is not null ? cold.Start - mix.Start : Duration.FromMinutes(nominalRoom),
            InFridge: timeline.Steps.Count > 0 ? timeline.ColdFermentLength : night.ColdFerment.Wanted,
            tempering,
            night.Kitchen.Room,
            night.Kitchen.Fridge,
            night.Kitchen.AltitudeMetres,
            dough.Ball.Value,
            dough.Batches.Count > 0 ? dough.Batches.Max(batch => batch.Total) : dough.Ball.Value,
            night.Kitchen.Calibration);
    }

    /// <summary>
    /// Mixing and cold ferment of the batch that is balled last: the shortest in the cold, which the dose is worked out for and
    /// the course shows. Null without a timeline.
    /// </summary>
    private static (TimelineStep? Mix, TimelineStep? Cold) LastBatch(HostTimeline timeline)
    {
        var cold = timeline.Steps.Where(step => step.Kind == StepKind.ColdFerment).MaxBy(step => step.Start);
        return (timeline.Steps.FirstOrDefault(step => step.Kind == StepKind.Mix && step.Number == cold?.Number), cold);
    }

    /// <summary>The course of the dough with the yeast that goes in; null without a dough.</summary>
    public static Ripening? Ripening(
        NightSnapshot night, HostTimeline timeline, DoughPlan dough, DoughJourney journey, Share yeast, ReferenceTables tables)
    {
        if (dough.Balls == 0)
        {
            return null;
        }

        var limits = tables.Steps.ColdFerment;
        var (mix, _) = LastBatch(timeline);
        return RipeningModel.For(
            journey,
            dough.Formula,
            yeast,
            mix?.Start ?? night.ServeAt - journey.AtRoom - journey.InFridge - journey.Tempering,
            night.Readings ?? [],
            (Duration.FromHours(limits.ShortestHours), Duration.FromHours(limits.LongestHours)),
            tables.Fermentation,
            tables.Dough,
            tables.Materials);
    }

    /// <summary>What the hours of now do to a dough that was begun for others; null while they lie in the window.</summary>
    public static BegunDoughOffItsHours? OffItsHours(
        NightSnapshot night, HostTimeline timeline, Duration tempering, ReferenceTables tables)
    {
        var (cold, window) = (timeline.ColdFermentLength, night.ColdFerment);
        if (night.Begun is not { } begun || (cold >= window.Shortest && cold <= window.Longest))
        {
            return null;
        }

        var journey = Journey(night, timeline, begun.Dough, tempering, tables) with { InFridge = cold };
        var gas = YeastDoseModel.GasOfWanted(
            journey, begun.Dough.Formula, begun.Yeast.ShareOfFlour.Value, tables.Fermentation, tables.Dough, tables.Materials);
        return new BegunDoughOffItsHours(cold, window.Shortest, window.Longest, gas);
    }

    /// <summary>Sauce, cheese and every item of the menu, from the sectors they go on.</summary>
    public static (SpreadAmount Sauce, SpreadAmount Cheese, IReadOnlyList<ItemAmount> Amounts) Spreads(
        NightSnapshot night, ToppingSplit split)
    {
        var shape = night.Shape;
        var piesWorth = night.Menu.Items.ToDictionary(item => item.Id, _ => 0.0);
        var combinations = split.Combinations.ToDictionary(combination => combination.Letter);
        foreach (var sector in split.Pies.SelectMany(pie => pie.Sectors))
        {
            foreach (var id in combinations[sector.Letter].ItemIds)
            {
                piesWorth[id] += (double)sector.Slices / shape.SlicesPerPie;
            }
        }

        var sauce = Spread(MenuRole.Base, shape.SauceAreaCm2, night.ByHand.SaucePerPie);
        var cheese = Spread(MenuRole.Cheese, shape.CheeseAreaCm2, night.ByHand.CheesePerPie);
        var amounts = night.Menu.Items
            .Where(item => item.GramsPerCm2 > 0 && piesWorth[item.Id] > 0)
            .Select(item => new ItemAmount(item.Id, SpreadAmount.WithBand(PerPie(night, item) * piesWorth[item.Id])))
            .ToList();
        return (sauce, cheese, amounts);

        SpreadAmount Spread(MenuRole role, double areaCm2, Grams? byHand)
        {
            var items = night.Menu.Of(role).Where(item => item.GramsPerCm2 > 0).ToList();
            var typical = items.MaxBy(item => (piesWorth[item.Id], -night.Menu.Items.ToList().IndexOf(item)));
            return SpreadAmount.For(areaCm2, typical?.GramsPerCm2 ?? 0, items.Sum(item => piesWorth[item.Id]), byHand);
        }
    }

    /// <summary>What lies on a pie that carries the item all over; an item without mass stays without.</summary>
    public static Grams PerPie(NightSnapshot night, MenuItem item) => item.GramsPerCm2 == 0 ? default : item.Role switch
    {
        MenuRole.Base => night.ByHand.SaucePerPie ?? new Grams(night.Shape.SauceAreaCm2 * item.GramsPerCm2),
        MenuRole.Cheese => night.ByHand.CheesePerPie ?? new Grams(night.Shape.CheeseAreaCm2 * item.GramsPerCm2),
        MenuRole.Topping => new Grams(night.Shape.SauceAreaCm2 * item.GramsPerCm2),
    };
}
