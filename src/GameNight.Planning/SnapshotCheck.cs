using GameNight.Planning.Dough;
using GameNight.Planning.Fermentation;
using GameNight.Planning.Quantities;
using GameNight.Planning.Timeline;
using NodaTime;

namespace GameNight.Planning;

/// <summary>
/// Valid ranges of a snapshot, in one place for API and screens alike. The planner refuses a snapshot with problems.
/// </summary>
public sealed class SnapshotCheck(ReferenceTables tables)
{
    public const int MostGuests = 300;
    public const int MostEatersPerGuest = 12;
    public const int MostMenuItems = 60;
    public const int MostAway = 100;
    public const int LongestId = 64;
    public const int MostReadings = 200;

    /// <summary>Shopping, four steps for each batch, and the host's own.</summary>
    private const int MostBegunSteps = 1 + (4 * PieCount.Highest) + OwnStep.Most;

    public IReadOnlyList<SnapshotProblem> Problems(NightSnapshot night) =>
    [
        .. Guests(night), .. ForecastCheck.Problems(night, tables.Appetite), .. Kitchen(night.Kitchen), .. Formula(night), .. Shape("shape", night.Shape), .. MenuCheck.Problems(night.Menu),
        .. Hours(night), .. Problems(night.ByHand), .. OwnStepCheck.Problems(night.OwnSteps ?? []),
        .. night.Helpers is { } helpers && helpers.Count != night.Kitchen.Hands - 1
            ? [new SnapshotProblem("helpers", SnapshotFault.WrongCount, helpers.Count, night.Kitchen.Hands - 1, night.Kitchen.Hands - 1)]
            : Array.Empty<SnapshotProblem>(), .. Begun(night), .. HouseFoodCheck.Problems(night.Sauce, tables),
        .. HouseFoodCheck.Problems(night.CheeseBlend, tables), .. (night.Readings ?? []).SelectMany(Problems),
        .. night.Readings?.Count > MostReadings ? [new SnapshotProblem("readings", SnapshotFault.WrongCount, night.Readings.Count, 0, MostReadings)] : Array.Empty<SnapshotProblem>(),
    ];

    /// <summary>Also what only a clock can tell: readings from before the dough was mixed, of the future, or out of order.</summary>
    public IReadOnlyList<SnapshotProblem> Problems(NightSnapshot night, Instant now)
    {
        var readings = night.Readings ?? [];
        var mixing = night.Begun?.Steps.Where(step => step.Kind == StepKind.Mix).Select(step => (Instant?)step.Start).Min();
        return
        [
            .. Problems(night),
            .. readings.Any(reading => reading.At < mixing) ? [new SnapshotProblem("readings.at", SnapshotFault.BeforeMixing)] : Array.Empty<SnapshotProblem>(),
            .. readings.Any(reading => reading.At > now) ? [new SnapshotProblem("readings.at", SnapshotFault.InTheFuture)] : Array.Empty<SnapshotProblem>(),
            .. readings.Zip(readings.Skip(1)).Any(pair => pair.Second.At < pair.First.At)
                ? [new SnapshotProblem("readings.at", SnapshotFault.BackToFront)]
                : Array.Empty<SnapshotProblem>(),
        ];
    }

    private static IEnumerable<SnapshotProblem> Guests(NightSnapshot night)
    {
        if (night.Guests.Count > MostGuests)
        {
            yield return new("guests", SnapshotFault.WrongCount, night.Guests.Count, 0, MostGuests);
        }

        foreach (var guest in night.Guests.Where(guest => guest.Eaters.Count is < 1 or > MostEatersPerGuest))
        {
            yield return new(
                $"guests[{guest.Id}].eaters", SnapshotFault.WrongCount, guest.Eaters.Count, 1, MostEatersPerGuest);
        }

        foreach (var eater in night.Guests.SelectMany(guest => guest.Eaters).Where(eater => eater.Needs.KeptOff?.Count > MostMenuItems))
        {
            yield return new("guests.eaters.needs.keptOff", SnapshotFault.WrongCount, eater.Needs.KeptOff!.Count, 0, MostMenuItems);
        }

        var ids = night.Guests.Select(guest => guest.Id).ToList();
        var eaterIds = night.Guests.SelectMany(guest => guest.Eaters).Select(eater => eater.Id).ToList();
        foreach (var problem in Ids("guests", ids).Concat(Ids("guests.eaters", eaterIds)))
        {
            yield return problem;
        }
    }

    private IEnumerable<SnapshotProblem> Kitchen(KitchenSnapshot kitchen)
    {
        var oven = tables.Safety.OvenAirCelsius;
        SnapshotProblem?[] all =
        [
            Range("kitchen.roomCelsius", kitchen.Room.Value, 5, 40),
            kitchen.Fridge is { } fridge ? Range("kitchen.fridgeCelsius", fridge.Value, -1, 14) : null,
            kitchen.Fridge is { } warm && warm > kitchen.Room
                ? new("kitchen.fridgeCelsius", SnapshotFault.WarmerThanRoom, warm.Value, -1, kitchen.Room.Value)
                : null,
            Range("kitchen.tapCelsius", kitchen.Tap.Value, 0, 35),
            Range("kitchen.ovenCelsius", kitchen.Oven.Value, oven.Low, oven.High),
            Range("kitchen.altitudeMetres", kitchen.AltitudeMetres, -400, 5000),
            Range("kitchen.batchCapacityGrams", kitchen.BatchCapacity.Value, 200, 50_000),
            Range("kitchen.piesPerBake", kitchen.PiesPerBake, 1, 6),
            Range("kitchen.hands", kitchen.Hands, 1, 8),
            Range("kitchen.preheatMinutes", kitchen.Preheat.TotalMinutes, 0, 180),
            Range("kitchen.soakMinutes", kitchen.Soak.TotalMinutes, 0, 180),
            Range("kitchen.bakeMinutes", kitchen.Bake.TotalMinutes, 1, 60),
            Range("kitchen.recoveryMinutes", kitchen.Recovery.TotalMinutes, 0, 60),
            kitchen.Calibration is { } cold
                ? Range("kitchen.calibration.cold", cold.Cold, FermentationCalibration.Least, FermentationCalibration.Most)
                : null,
            kitchen.Calibration is { } hot
                ? Range("kitchen.calibration.warm", hot.Warm, FermentationCalibration.Least, FermentationCalibration.Most)
                : null,
            kitchen.FridgeBalls is { } places ? Range("kitchen.fridgeBalls", places, 1, PieCount.Highest) : null,
            kitchen.Bowls is { } bowls ? Range("kitchen.bowls", bowls, 1, KitchenSnapshot.MostBowls) : null,
            kitchen.HobRings is { } rings ? Range("kitchen.hobRings", rings, 1, KitchenSnapshot.MostHobRings) : null,
            kitchen.Flour?.RoomHumidity is { } humidity
                ? Range("kitchen.flour.roomHumidity", humidity.Value, WheatIsotherm.DriestAir, WheatIsotherm.MoistestAir)
                : null,
            kitchen.Flour?.Moisture is { } moisture ? Range("kitchen.flour.moisture", moisture.Value, 0.08, 0.16) : null,
            kitchen.Scale is { } coarse ? Range("kitchen.scale.coarseGrams", coarse.Coarse.Value, 0.1, 10) : null,
            kitchen.Scale is { } fine ? Range("kitchen.scale.fineGrams", fine.Fine.Value, 0.001, fine.Coarse.Value) : null,
            kitchen.FrictionKelvin is { } friction
                ? Range("kitchen.frictionKelvin", friction, FrictionFactor.Least, FrictionFactor.Most)
                : null,
        ];
        return
        [
            .. all.OfType<SnapshotProblem>(),
            .. kitchen.Place is { } place
                ? place.Problems("kitchen.place", place.In(kitchen.Room, kitchen.Oven, kitchen.Preheat), tables.Materials)
                : [],
            .. Pace(kitchen.Pace ?? []),
        ];
    }

    private static IEnumerable<SnapshotProblem> Pace(IReadOnlyList<StepPace> pace)
    {
        foreach (var step in pace)
        {
            if (Range("kitchen.pace.minutes", step.Minutes, StepPace.Least, StepPace.Most) is { } problem)
            {
                yield return problem;
            }
        }

        if (pace.Any(step => !StepPace.Known.Contains(step.Step)) || pace.Select(step => step.Step).Distinct().Count() < pace.Count)
        {
            yield return new("kitchen.pace", SnapshotFault.WrongCount, pace.Count, 0, StepPace.Known.Count);
        }
    }

    /// <summary>A dough that is begun came out of a plan; what arrives from elsewhere must at least look like it did.</summary>
    private IEnumerable<SnapshotProblem> Begun(NightSnapshot night)
    {
        if (night.Begun is not { } begun)
        {
            return [];
        }

        var (dough, steps) = (begun.Dough, begun.Steps.ToLookup(step => step.Kind));
        SnapshotProblem?[] all =
        [
            Range("begun.dough.balls", dough.Balls, 1, PieCount.Highest),
            Range(
                "begun.dough.ballGrams", dough.Ball.Value.Value,
                Math.Min(tables.Dough.Ranges.BallGrams.Low, begun.Shape.Ball.Value),
                Math.Max(tables.Dough.Ranges.BallGrams.High, begun.Shape.Ball.Value)),
            dough.Batches.Sum(batch => (long)batch.Balls) == dough.Balls && dough.Batches.All(batch => batch.Balls > 0)
                ? null
                : new("begun.dough.batches", SnapshotFault.WrongCount, dough.Batches.Count, 1, dough.Balls),
            begun.Steps.Count <= MostBegunSteps && steps[StepKind.Shop].Count() == 1 && steps[StepKind.Mix].Any()
                && steps[StepKind.Ball].Select(step => step.Number).Order().SequenceEqual(dough.Batches.Select(batch => batch.Number).Order())
                && begun.Steps.Select(step => step.Id).Distinct().Count() == begun.Steps.Count
                ? null
                : new("begun.steps", SnapshotFault.WrongCount, begun.Steps.Count, 1, MostBegunSteps),
            begun.Steps.Any(step => step.End < step.Start) ? new("begun.steps", SnapshotFault.BackToFront) : null,
        ];
        return
        [
            .. all.OfType<SnapshotProblem>(),
            .. FormulaCheck.Problems("begun.dough.formula", dough.Formula, tables.Dough),
            .. Shape("begun.shape", begun.Shape),
        ];
    }

    private IEnumerable<SnapshotProblem> Formula(NightSnapshot night) =>
    [
        .. FormulaCheck.Problems("formula", night.Formula, tables.Dough),
        .. Range("runOutChance", night.RunOutChance.Value, tables.Appetite.RunOutChance.Low, tables.Appetite.RunOutChance.High) is { } chance
            ? [chance]
            : Array.Empty<SnapshotProblem>(),
    ];

    private IEnumerable<SnapshotProblem> Shape(string path, PieShape shape)
    {
        var ranges = tables.Dough.Ranges;
        var widestRim = Math.Min(ranges.RimCentimetres.High, shape.Diameter.Value / 3);
        var widestInset = Math.Max(0, shape.Diameter.Value / 2 - shape.Rim.Value - 1);
        SnapshotProblem?[] all =
        [
            Range($"{path}.diameterCentimetres", shape.Diameter.Value, ranges.DiameterCentimetres.Low, ranges.DiameterCentimetres.High),
            Range($"{path}.thicknessGramsPerCm2", shape.ThicknessGramsPerCm2, ranges.ThicknessGramsPerCm2.Low, ranges.ThicknessGramsPerCm2.High),
            Range($"{path}.rimCentimetres", shape.Rim.Value, ranges.RimCentimetres.Low, widestRim),
            Range($"{path}.sauceInsetCentimetres", shape.SauceInset.Value, 0, widestInset),
            Range($"{path}.cheeseInsetCentimetres", shape.CheeseInset.Value, 0, widestInset),
            shape.OilInset is { } oil ? Range($"{path}.oilInsetCentimetres", oil.Value, 0, widestInset) : null,
            Range($"{path}.slicesPerPie", shape.SlicesPerPie, PieShape.FewestSlices, PieShape.MostSlices),
        ];
        return all.OfType<SnapshotProblem>();
    }

    private static IEnumerable<SnapshotProblem> Hours(NightSnapshot night)
    {
        var (ferment, day) = (night.ColdFerment, Duration.FromDays(1));
        if (night.Away.Count > MostAway)
        {
            yield return new("away", SnapshotFault.WrongCount, night.Away.Count, 0, MostAway);
        }

        foreach (var away in night.Away.Where(away => away.Until <= away.From))
        {
            yield return new("away", SnapshotFault.BackToFront);
        }

        if (ferment.Shortest > ferment.Wanted || ferment.Wanted > ferment.Longest)
        {
            yield return new("coldFerment", SnapshotFault.BackToFront);
        }

        if (Range("coldFerment.shortestMinutes", ferment.Shortest.TotalMinutes, 0, 7 * day.TotalMinutes) is { } shortest)
        {
            yield return shortest;
        }

        if (Range("coldFerment.longestMinutes", ferment.Longest.TotalMinutes, 0, 7 * day.TotalMinutes) is { } longest)
        {
            yield return longest;
        }
    }

    /// <summary>One reading of the dough, whenever it was taken.</summary>
    public static IReadOnlyList<SnapshotProblem> Problems(DoughReading reading)
    {
        SnapshotProblem?[] all =
        [
            reading.Dough is null && reading.Fridge is null && reading.Look is null
                ? new("readings.parts", SnapshotFault.WrongCount, 0, 1, 3)
                : null,
            reading.Dough is { } dough ? Range("readings.doughCelsius", dough.Value, -2, 45) : null,
            reading.Fridge is { } fridge ? Range("readings.fridgeCelsius", fridge.Value, -2, 20) : null,
        ];
        return [.. all.OfType<SnapshotProblem>()];
    }

    /// <summary>Only what a host set by hand.</summary>
    public IReadOnlyList<SnapshotProblem> Problems(ByHand hand)
    {
        var ball = tables.Dough.Ranges.BallGrams;
        SnapshotProblem?[] all =
        [
            hand.Ball is { } grams ? Range("byHand.ballGrams", grams.Value, ball.Low, ball.High) : null,
            hand.Yeast is { } yeast ? AboveRange("byHand.yeast", yeast.Value, 0, 0.05) : null,
            hand.SaucePerPie is { } sauce ? Range("byHand.saucePerPieGrams", sauce.Value, 0, 1000) : null,
            hand.CheesePerPie is { } cheese ? Range("byHand.cheesePerPieGrams", cheese.Value, 0, 1000) : null,
        ];
        return [.. all.OfType<SnapshotProblem>(), .. SplitCheck.Problems(hand.Split)];
    }

    /// <summary>Only what a host chose after the dough was begun.</summary>
    public static IReadOnlyList<SnapshotProblem> Problems(LateChoices? late) => [.. ForecastCheck.Late(late)];

    internal static SnapshotProblem? Range(string field, double given, double low, double high) =>
        given >= low && given <= high ? null : new(field, SnapshotFault.OutOfRange, given, low, high);

    /// <summary>More than the low end, up to the high end.</summary>
    internal static SnapshotProblem? AboveRange(string field, double given, double low, double high) =>
        given > low && given <= high ? null : new(field, SnapshotFault.OutOfRange, given, low, high, IsAboveLow: true);

    internal static IEnumerable<SnapshotProblem> Ids(string field, List<string> ids)
    {
        if (ids.Any(id => id.Length is 0 or > LongestId))
        {
            yield return new(field, SnapshotFault.BadId, 0, 1, LongestId);
        }

        if (ids.Distinct(StringComparer.Ordinal).Count() != ids.Count)
        {
            yield return new(field, SnapshotFault.Repeated);
        }
    }
}
