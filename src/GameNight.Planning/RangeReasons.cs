using System.Text.RegularExpressions;

namespace GameNight.Planning;

/// <summary>Which reason belongs to the range of a field, for API and screens alike.</summary>
public static partial class RangeReasons
{
    /// <summary>By the end of a field's path, without indexes and without the id that a field of a list ends with.</summary>
    private static readonly Dictionary<string, RangeReason> ByPath = new(StringComparer.Ordinal)
    {
        ["kitchen.roomCelsius"] = RangeReason.RoomOfDough,
        ["knead.room"] = RangeReason.RoomOfDough,
        ["kitchen.fridgeCelsius"] = RangeReason.FridgeOfDough,
        ["kitchen.tapCelsius"] = RangeReason.TapWater,
        ["kitchen.ovenCelsius"] = RangeReason.OvenAir,
        ["kitchen.altitudeMetres"] = RangeReason.AirPressure,
        ["kitchen.batchCapacityGrams"] = RangeReason.Bowl,
        ["kitchen.piesPerBake"] = RangeReason.PiesInOven,
        ["kitchen.hands"] = RangeReason.Hands,
        ["kitchen.preheatMinutes"] = RangeReason.Preheat,
        ["kitchen.soakMinutes"] = RangeReason.Soak,
        ["kitchen.bakeMinutes"] = RangeReason.Bake,
        ["kitchen.recoveryMinutes"] = RangeReason.Recovery,
        ["kitchen.calibration.cold"] = RangeReason.Calibration,
        ["kitchen.calibration.warm"] = RangeReason.Calibration,
        ["roomHumidity"] = RangeReason.AirHumidity,
        ["flour.moisture"] = RangeReason.FlourMoisture,
        ["kitchen.moisture"] = RangeReason.FlourMoisture,
        ["coarseGrams"] = RangeReason.CoarseScale,
        ["fineGrams"] = RangeReason.FineScale,
        ["kitchen.frictionKelvin"] = RangeReason.Friction,
        ["thicknessMillimetres"] = RangeReason.SurfaceThickness,
        ["ironThicknessMillimetres"] = RangeReason.SurfaceThickness,
        ["widthCentimetres"] = RangeReason.SurfaceSide,
        ["depthCentimetres"] = RangeReason.SurfaceSide,
        ["setPointCelsius"] = RangeReason.SurfaceOven,
        ["place.readings.afterSwitchOnMinutes"] = RangeReason.SurfaceTime,
        ["place.readings.topCelsius"] = RangeReason.SurfaceThermometer,
        ["begun.dough.balls"] = RangeReason.BallsOfANight,
        ["late.ballsKept"] = RangeReason.BallsOfANight,
        ["late.redivided.balls"] = RangeReason.BallsOfANight,
        ["late.rescue.balls"] = RangeReason.BallsOfANight,
        ["byHand.pies"] = RangeReason.BallsOfANight,
        ["log.baked"] = RangeReason.BallsOfANight,
        ["byHand.ballGrams"] = RangeReason.Ball,
        ["begun.dough.ballGrams"] = RangeReason.Ball,
        ["formula.water"] = RangeReason.Water,
        ["formula.salt"] = RangeReason.Salt,
        ["formula.oil"] = RangeReason.Oil,
        ["formula.sugar"] = RangeReason.Sugar,
        ["formula.heldBackFlour"] = RangeReason.HeldBack,
        ["formula.kneader.stayedOut"] = RangeReason.HeldBack,
        ["formula.loss"] = RangeReason.Loss,
        ["formula.extras.ofFlour"] = RangeReason.Extra,
        ["formula.extras.water"] = RangeReason.PartOfAWhole,
        ["formula.flours.ofFlour"] = RangeReason.PartOfAWhole,
        ["formula.preferment.ofYeast"] = RangeReason.PartOfAWhole,
        ["menu.items.waterShare"] = RangeReason.PartOfAWhole,
        ["waterShare"] = RangeReason.PartOfAWhole,
        ["guests.eaters.stays"] = RangeReason.PartOfAWhole,
        ["late.accepted"] = RangeReason.PartOfAWhole,
        ["cheeseBlend.shareLowMoisture"] = RangeReason.PartOfAWhole,
        ["cheeseBlend.shareHard"] = RangeReason.PartOfAWhole,
        ["cheeseBlend.shareFresh"] = RangeReason.PartOfAWhole,
        ["formula.flours"] = RangeReason.WholeBlend,
        ["cheeseBlend.blend"] = RangeReason.WholeBlend,
        ["formula.flours.absorption"] = RangeReason.Absorption,
        ["formula.flours.protein"] = RangeReason.Protein,
        ["formula.preferment.ofFlour"] = RangeReason.PrefermentFlour,
        ["formula.preferment.waterPerFlour"] = RangeReason.PrefermentWater,
        ["formula.preferment.beforeMinutes"] = RangeReason.PrefermentHours,
        ["formula.soaker.ofFlour"] = RangeReason.SoakerFlour,
        ["formula.soaker.waterPerFlour"] = RangeReason.SoakerWater,
        ["runOutChance"] = RangeReason.RunOut,
        ["shape.diameterCentimetres"] = RangeReason.Diameter,
        ["shape.thicknessGramsPerCm2"] = RangeReason.Thickness,
        ["shape.rimCentimetres"] = RangeReason.Rim,
        ["shape.sauceInsetCentimetres"] = RangeReason.Inset,
        ["shape.cheeseInsetCentimetres"] = RangeReason.Inset,
        ["shape.oilInsetCentimetres"] = RangeReason.Inset,
        ["shape.slicesPerPie"] = RangeReason.Slices,
        ["menu.items.gramsPerCm2"] = RangeReason.ToppingMass,
        ["gramsPerCm2"] = RangeReason.ToppingMass,
        ["menu.mostToppings"] = RangeReason.Toppings,
        ["coldFerment.shortestMinutes"] = RangeReason.ColdHours,
        ["coldFerment.longestMinutes"] = RangeReason.ColdHours,
        ["draft.coldHours"] = RangeReason.ColdHoursOfNight,
        ["readings.doughCelsius"] = RangeReason.ReadDough,
        ["knead.dough"] = RangeReason.ReadDough,
        ["readings.fridgeCelsius"] = RangeReason.ReadFridge,
        ["byHand.yeast"] = RangeReason.YeastByHand,
        ["byHand.saucePerPieGrams"] = RangeReason.SpreadByHand,
        ["byHand.cheesePerPieGrams"] = RangeReason.SpreadByHand,
        ["shortageWeight"] = RangeReason.ShortageWeight,
        ["draft.shortageWeight"] = RangeReason.ShortageWeight,
        ["lengthMinutes"] = RangeReason.EveningLength,
        ["guests.past.nightsAgo"] = RangeReason.PastAgo,
        ["guests.past.slices"] = RangeReason.PastSlices,
        ["guests.past.sliceGrams"] = RangeReason.PastSlice,
        ["guests.past.appetite"] = RangeReason.PastAppetite,
        ["late.redivided.diameterCentimetres"] = RangeReason.LateDiameter,
        ["late.redivided.thicknessGramsPerCm2"] = RangeReason.LateThickness,
        ["late.rescue.minutesToBall"] = RangeReason.RescueTime,
        ["sauce.formula.tomatoGrams"] = RangeReason.Tomato,
        ["sauce.formula.salt"] = RangeReason.SauceSalt,
        ["sauce.formula.tinSalt"] = RangeReason.TinSalt,
        ["sauce.formula.simmerMinutes"] = RangeReason.Simmer,
        ["sauce.formula.parts.grams"] = RangeReason.SaucePart,
        ["sauce.formula.pot.diameterCentimetres"] = RangeReason.PotSize,
        ["sauce.formula.pot.holdsGrams"] = RangeReason.PotSize,
        ["sauce.formula.diameterCentimetres"] = RangeReason.PotSize,
        ["sauce.formula.holdsGrams"] = RangeReason.PotSize,
        ["sauce.formula.pot.evaporationGramsPerMinutePerCm2"] = RangeReason.Evaporation,
        ["sauce.formula.evaporates"] = RangeReason.Evaporation,
        ["sauce.tins"] = RangeReason.TinSize,
        ["cheeseBlend.blend.drained"] = RangeReason.Drained,
        ["cheeseBlend.drained"] = RangeReason.Drained,
        ["effort"] = RangeReason.Effort,
        ["sleep"] = RangeReason.MinuteOfADay,
        ["work"] = RangeReason.MinuteOfADay,
        ["knead.flour"] = RangeReason.FlourCelsius,
        ["knead.water"] = RangeReason.WaterCelsius,
        ["knead.preferment"] = RangeReason.PrefermentCelsius,
        ["knead.stayedOut"] = RangeReason.StayedOut,
        ["begun.dough.batches"] = RangeReason.BatchesOfADough,
        ["begun.steps"] = RangeReason.StepsOfADough,
        ["readings.parts"] = RangeReason.SomethingRead,
        ["sauce.tins.count"] = RangeReason.EveryTinSize,
        ["draft.mostCompanions"] = RangeReason.Companions,
        ["guests.eaters"] = RangeReason.Companions,
        ["log.heads"] = RangeReason.Companions,
        ["log.left"] = RangeReason.SlicesLeft,
        ["guests"] = RangeReason.LongList,
        ["away"] = RangeReason.LongList,
        ["readings"] = RangeReason.LongList,
        ["menu.items"] = RangeReason.LongList,
        ["courses"] = RangeReason.LongList,
        ["formula.extras"] = RangeReason.LongList,
        ["formula.flours.count"] = RangeReason.LongList,
        ["place.readings"] = RangeReason.LongList,
        ["guests.past"] = RangeReason.LongList,
        ["draft.courses"] = RangeReason.LongList,
        ["work.count"] = RangeReason.LongList,
        ["formula.extras.name"] = RangeReason.NameLength,
        ["formula.flours.name"] = RangeReason.NameLength,
        ["formula.preferment.name"] = RangeReason.NameLength,
        ["formula.soaker.name"] = RangeReason.NameLength,
        ["name"] = RangeReason.NameLength,
    };

    /// <param name="field">A path in JSON terms, such as <c>night.kitchen.roomCelsius</c>.</param>
    /// <returns>Null for a field that is in no range.</returns>
    public static RangeReason? Of(string field)
    {
        for (var path = Index().Replace(field, ""); ; path = path[(path.IndexOf('.', StringComparison.Ordinal) + 1)..])
        {
            if (ByPath.TryGetValue(path, out var reason))
            {
                return reason;
            }

            if (!path.Contains('.', StringComparison.Ordinal))
            {
                return null;
            }
        }
    }

    /// <summary>Why a list or a text has that length and no other.</summary>
    public static RangeReason? OfCount(string field) => Of($"{field}.count") ?? Of(field);

    [GeneratedRegex(@"\[[^\]]*\]|-[^.\]]*$")]
    private static partial Regex Index();
}
