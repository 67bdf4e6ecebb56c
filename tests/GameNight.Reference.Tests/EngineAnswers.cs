using GameNight.Planning.Appetite;
using GameNight.Planning.Dough;
using GameNight.Planning.Fermentation;
using GameNight.Planning.Guests;
using GameNight.Planning.Quantities;
using GameNight.TestKit;
using GameNight.Web.Wording;
using NodaTime;

namespace GameNight.Reference.Tests;

/// <summary>What the engine says for each reference check, by the check's id.</summary>
public static class EngineAnswers
{
    private const double GramsPerOunce = 28.349523125;

    private static readonly DoughFormula Lehmann = Formula(0.58, 0.0175, oil: 0.01);
    private static readonly CardinalTemperatures Growth = new(2.8, 32.3, 45.4);

    public static IReadOnlyDictionary<string, Func<double>> ById { get; } = new Dictionary<string, Func<double>>
    {
        ["A1.water"] = () => RegulatedBatch(50).Water / RegulatedBatch(50).Flour * 100,
        ["A1.salt"] = () => RegulatedBatch(50).Salt / RegulatedBatch(50).Flour * 100,
        ["A1.yeast"] = () => RegulatedBatch(50).Yeast / RegulatedBatch(50).Flour * 100,
        ["A2.few"] = () => RegulatedBatch(50).Total / new Grams(250),
        ["A2.many"] = () => RegulatedBatch(55).Total / new Grams(180),
        ["A5.area"] = () => Shape(35, 0.26).AreaCm2,
        ["A5.thickness"] = () => 250 / Shape(35, 0.26).AreaCm2,
        ["B1.water"] = () => LehmannBatch().Water.Value / GramsPerOunce,
        ["B1.salt"] = () => LehmannBatch().Salt.Value / GramsPerOunce,
        ["B1.oil"] = () => LehmannBatch().Oil.Value / GramsPerOunce,
        ["B1.yeast"] = () => LehmannBatch().Yeast.Value / GramsPerOunce,
        ["B2"] = () => 100 * Formula(0.58, 0.0175, oil: 0.02).TotalPerFlour + 0.375,
        ["B12.activeDry"] = () => SharedFolder.Tables.Dough.Of(YeastForm.ActiveDry).MassPerFresh,
        ["B12.instant"] = () => SharedFolder.Tables.Dough.Of(YeastForm.Instant).MassPerFresh,
        ["C1"] = () => WaterFahrenheit(75, 65, 65, 8),
        ["C2"] = () => WaterFahrenheit(80, 65, 75, 35),
        ["C4.70to50"] = () => Ice(70, 50),
        ["C4.60to50"] = () => Ice(60, 50),
        ["C4.80to40"] = () => Ice(80, 40),
        ["C5"] = () => 10 * Ice(70, 50),
        ["D1.optimum"] = () => SharedFolder.Tables.Fermentation.Growth.OptimumCelsius,
        ["D1.highest"] = () => SharedFolder.Tables.Fermentation.Growth.HighestCelsius,
        ["D2"] = () => new CardinalTemperatures(5.04, 30, 45.48).RateAt(20),
        ["D3.8"] = () => Growth.RateAt(8),
        ["D3.15"] = () => Growth.RateAt(15),
        ["D3.25"] = () => Growth.RateAt(25),
        ["D3.40"] = () => Growth.RateAt(40),
        ["D5.2h"] = () => GrowthPercent(1.67, 2),
        ["D5.4h"] = () => GrowthPercent(1.67, 4),
        ["D5.6h"] = () => GrowthPercent(1.67, 6),
        ["D5.half"] = () => GrowthPercent(0.5, 6),
        ["D5.two"] = () => GrowthPercent(2, 6),
        ["D.regulated6h"] = () => GasLikeGrowth(25, 6).From(0.167).GasMillilitresPer100GramsFlour,
        ["D.regulated8h"] = () => GasLikeGrowth(25, 8).From(0.167).GasMillilitresPer100GramsFlour,
        ["D.association8h"] = () => GasLikeGrowth(23, 8).From(0.088).GasMillilitresPer100GramsFlour,
        ["D.cold3"] = () => ColdDose(3),
        ["D.cold5"] = () => ColdDose(5),
        ["D.cold7"] = () => ColdDose(7),
        ["E16"] = () => TemperatureProfile.LumpTimeConstant(0.25, 1200, 2800, 8).TotalMinutes,
        ["F10.1000"] = () => 101.325 * YeastDoseModel.PressureFactor(1000),
        ["F10.2000"] = () => 101.325 * YeastDoseModel.PressureFactor(2000),
        ["F10.3000"] = () => 101.325 * YeastDoseModel.PressureFactor(3000),
        ["H2"] = () => Enum.GetValues<Allergen>().Length,
        ["1.3.pmf0"] = () => SliceDistribution.Poisson(1.25).Probabilities[0],
        ["1.3.pmf3"] = () => SliceDistribution.Poisson(1.25).Probabilities[3],
        ["1.3.cdf2"] = () => SliceDistribution.Poisson(1.25).AtMost(2),
        ["1.3.loss1"] = () => SliceDistribution.Poisson(1.25).ExpectedShortage(1),
        ["1.3.loss4"] = () => SliceDistribution.Poisson(1.25).ExpectedShortage(4),
        ["1.8.cdf2"] = () => FivePeople().AtMost(2),
        ["1.8.cdf3"] = () => FivePeople().AtMost(3),
        ["1.11.p0"] = () => SliceDistribution.GammaPoisson(20, 43).Probabilities[0],
        ["1.11.p2"] = () => SliceDistribution.GammaPoisson(20, 43).Probabilities[2],
        ["1.11.mean"] = () => SliceDistribution.GammaPoisson(20, 43).Mean,
        ["1.15.sd"] = () => Math.Sqrt(TenGuests().Variance),
        ["1.15.cdf32"] = () => TenGuests().AtMost(32),
        ["1.15.over40"] = () => TenGuests().MoreThan(40),
        ["1.15.q90"] = () => TenGuests().Quantile(0.9),
        ["1.17.mean"] = () => TwelveGuests().Mean,
        ["1.17.variance"] = () => TwelveGuests().Variance,
        ["1.17.enough4"] = () => TwelveGuests().AtMost(32),
        ["1.17.shortage4"] = () => TwelveGuests().ExpectedShortage(32),
        ["1.17.pies90"] = () => PiesFor(0.1),
        ["1.17.pies95"] = () => PiesFor(0.05),
        ["U.oven"] = () => Unit.Fahrenheit.ToKept(450),
        ["U.fridge"] = () => Unit.Fahrenheit.ToKept(40),
        ["U.pound"] = () => Unit.Pounds.ToKept(1),
        ["U.foot"] = () => Unit.Inches.ToKept(12),
        ["U.salt"] = () => 3 * Teaspoon(HouseholdFood.TableSalt),
        ["U.yeast"] = () => 3 * Teaspoon(HouseholdFood.ActiveDryYeast),
        ["U.oil"] = () => Household.Of(HouseholdFood.OliveOil).GramsPerCup!.Value / (3 * Teaspoon(HouseholdFood.OliveOil)),
        ["U.sugar"] = () => 48 * Teaspoon(HouseholdFood.GranulatedSugar),
        ["U.honey"] = () => 48 * Teaspoon(HouseholdFood.Honey),
        ["U.water"] = () => Household.Of(HouseholdFood.Water).GramsPerCup!.Value,
        ["I6"] = () => 853 / Shape(14 * 2.54, 0.4).AreaCm2,
    };

    private static DoughFormula Formula(double water, double salt, double oil = 0) => new(
        new Share(water), new Share(salt), new Share(oil), new Share(0), false, YeastForm.Fresh, new Share(0), new Share(0));

    private static DoughBatch RegulatedBatch(double saltGrams) => DoughBatch.Weighing(
        new Grams(1000 + 1800 + saltGrams + 3), Formula(1000.0 / 1800, saltGrams / 1800), new Share(3.0 / 1800));

    private static DoughBatch LehmannBatch()
    {
        var flourGrams = 640 * GramsPerOunce;
        return DoughBatch.Weighing(
            new Grams(flourGrams * (Lehmann.TotalPerFlour + 0.00375)), Lehmann, new Share(0.00375));
    }

    private static PieShape Shape(double diameterCm, double thickness) => new(
        new Centimetres(diameterCm), thickness, new Centimetres(1.5), default, default, 8);

    private static Celsius FromFahrenheit(double fahrenheit) => new((fahrenheit - 32) / 1.8);

    private static double WaterFahrenheit(double dough, double flour, double room, double friction)
    {
        // The rule is a sum of temperatures: with three factors the offsets of 32 cancel.
        var water = WaterTemperature.For(
            FromFahrenheit(dough), FromFahrenheit(flour), FromFahrenheit(room), friction / 1.8, new Celsius(0));
        return water.Water.Expected.Value * 1.8 + 32;
    }

    private static double Teaspoon(HouseholdFood food) => Household.Of(food).GramsPerTeaspoon!.Value;

    private static double Ice(double tapFahrenheit, double neededFahrenheit) => WaterTemperature.IceFor(
        FromFahrenheit(tapFahrenheit).Value, FromFahrenheit(neededFahrenheit).Value);

    private static FermentationModel At(double celsius, double hours, FermentationTable? table = null) => new(
        new TemperatureProfile(celsius, [new DoughPhase(Duration.FromHours(hours), celsius, Duration.FromHours(1))]),
        table ?? SharedFolder.Tables.Fermentation);

    /// <summary>The published figures were derived with one set of cardinal temperatures for both growth and gas.</summary>
    private static FermentationModel GasLikeGrowth(double celsius, double hours)
    {
        var table = SharedFolder.Tables.Fermentation;
        return At(celsius, hours, table with
        {
            Gas = table.Gas with
            {
                LowestCelsius = table.Growth.LowestCelsius,
                OptimumCelsius = table.Growth.OptimumCelsius,
                HighestCelsius = table.Growth.HighestCelsius,
            },
        });
    }

    private static double GrowthPercent(double yeastPercent, double hours) =>
        (At(27, hours).From(yeastPercent).YeastPercent / yeastPercent - 1) * 100;

    private static double ColdDose(double fridgeCelsius)
    {
        var tau = Duration.FromHours(1.57);
        var profile = new TemperatureProfile(24,
        [
            new DoughPhase(Duration.FromHours(2), 24, tau),
            new DoughPhase(Duration.FromHours(60), fridgeCelsius, tau),
            new DoughPhase(Duration.FromHours(3), 22, tau),
        ]);
        var table = SharedFolder.Tables.Fermentation;
        return YeastDoseModel.Solve(new FermentationModel(profile, table), table.Target.MillilitresPer100GramsFlour);
    }

    private static SliceDistribution FivePeople() => Sum(
        new[] { .1, .2, .3, .4, .5 }.Select(chance => SliceDistribution.Certainly(1).WithChance(chance)));

    private static SliceDistribution TenGuests() =>
        Sum(Enumerable.Repeat(SliceDistribution.GammaPoisson(9, 3), 10));

    private static SliceDistribution TwelveGuests() => Sum(Enumerable.Range(0, 12).Select(guest => SliceDistribution
        .Poisson(guest < 8 ? 3 : 2)
        .WithChance(guest < 6 ? .95 : guest < 10 ? .6 : .2)));

    private static double PiesFor(double runOutChance) =>
        PieCountRule.For(TwelveGuests(), 8, new Share(runOutChance), null).Count.Value.Value;

    private static SliceDistribution Sum(IEnumerable<SliceDistribution> all) =>
        all.Aggregate(SliceDistribution.None, (sum, one) => sum + one);
}
