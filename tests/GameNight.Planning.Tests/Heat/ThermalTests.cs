using CsCheck;
using GameNight.Planning.Dough;
using GameNight.Planning.Heat;
using GameNight.Planning.Quantities;

namespace GameNight.Planning.Tests.Heat;

public class ThermalTests
{
    private static readonly Gen<DoughFormula> Formulas =
        from water in Gen.Double[0.45, 0.99]
        from salt in Gen.Double[0, 0.04]
        from oil in Gen.Double[0, 0.15]
        from sugar in Gen.Double[0, 0.1]
        from honey in Gen.Bool
        select new DoughFormula(
            new Share(water), new Share(salt), new Share(oil), new Share(sugar), honey, YeastForm.Instant, default, default);

    [Fact]
    public void All_of_a_dough_is_one_of_the_six_components() =>
        Formulas.Sample(formula =>
        {
            var dough = FoodComposition.Of(formula, AKitchen.Table);

            Assert.Equal(1, Enum.GetValues<FoodComponent>().Sum(dough.Of), 1e-6);
            Assert.Equal(
                dough.Of(FoodComponent.Fat),
                (formula.Oil.Value + AKitchen.Table.BreadFlour.Fat) / formula.TotalPerFlour, 1e-12);
        });

    [Fact]
    public void Wetter_dough_holds_and_conducts_more_heat_and_is_lighter() =>
        Gen.Select(Formulas, Gen.Double[1, 60]).Sample((formula, celsius) =>
        {
            var dry = FoodComposition.Of(formula, AKitchen.Table).At(celsius, AKitchen.Table);
            var wet = FoodComposition.Of(formula with { Water = new Share(formula.Water.Value + 0.01) }, AKitchen.Table)
                .At(celsius, AKitchen.Table);

            Assert.True(wet.HeatCapacityJPerKgK > dry.HeatCapacityJPerKgK);
            Assert.True(wet.ConductivityWPerMK > dry.ConductivityWPerMK);
            Assert.True(wet.DensityKgPerM3 < dry.DensityKgPerM3);
            Assert.InRange(wet.DiffusivityM2PerS, 1.1e-7, 1.6e-7);
        });

    [Fact]
    public void What_is_no_food_is_refused()
    {
        Assert.Throws<ArgumentException>(() => new FoodComposition(0.5, 0.2, 0, 0.2, 0, 0));
        Assert.Throws<ArgumentException>(() => new FoodComposition(1.2, -0.2, 0, 0, 0, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => new FoodComposition(1, 0, 0, 0, 0, 0).At(-5, AKitchen.Table));
        Assert.Throws<ArgumentOutOfRangeException>(() => new ThermalProperties(0, 1200, 2800));
        Assert.Throws<ArgumentOutOfRangeException>(() => new ThermalProperties(0.4, double.NaN, 2800));
    }

    [Fact]
    public void Higher_up_water_boils_cooler_and_gas_is_larger() =>
        Gen.Double[-400, 4990].Sample(metres =>
        {
            var (lower, higher) = (new Altitude(metres), new Altitude(metres + 10));

            Assert.True(higher.BoilingCelsius < lower.BoilingCelsius);
            Assert.True(higher.GasVolumeFactor > lower.GasVolumeFactor);
            Assert.Equal(Antoine(lower.PressurePascals), lower.BoilingCelsius, 0.25);
        });

    [Theory]
    [InlineData(-500)]
    [InlineData(8000)]
    [InlineData(double.NaN)]
    public void Nobody_bakes_that_low_or_high(double metres) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new Altitude(metres));

    [Theory]
    [InlineData(500)]
    [InlineData(23e6)]
    public void Ice_and_the_critical_point_do_not_boil(double pascals) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => WaterBoiling.CelsiusAt(pascals));

    [Fact]
    public void The_series_refuses_what_one_term_cannot_say()
    {
        var sphere = OneTermSeries.For(BodyShape.Sphere, 1);

        Assert.Throws<ArgumentOutOfRangeException>(() => sphere.LeftAt(0.1));
        Assert.Throws<ArgumentOutOfRangeException>(() => sphere.LeftAt(0.5, position: 1.1));
        Assert.Throws<ArgumentOutOfRangeException>(() => sphere.FourierWhenLeftAtCentre(1));
        Assert.Throws<ArgumentOutOfRangeException>(() => OneTermSeries.For(BodyShape.PlaneWall, 0));
    }

    [Fact]
    public void Roots_solve_their_equation_and_what_is_left_falls_from_centre_to_surface() =>
        Gen.Select(Gen.Enum<BodyShape>(), Gen.Double[-4, 4], Gen.Double[0.2, 2]).Sample((shape, logarithm, fourier) =>
        {
            var biot = Math.Pow(10, logarithm);
            var series = OneTermSeries.For(shape, biot);
            var z = series.Root;

            Assert.True(shape switch
            {
                BodyShape.PlaneWall => Math.Abs(z * Math.Sin(z) - biot * Math.Cos(z)),
                BodyShape.Sphere => Math.Abs((1 - biot) * Math.Sin(z) - z * Math.Cos(z)),
                BodyShape.Cylinder => 0,
            } < 1e-9 * (1 + biot));
            Assert.True(series.LeftAt(fourier) >= series.LeftOnAverage(fourier));
            Assert.True(series.LeftOnAverage(fourier) >= series.LeftAt(fourier, position: 1));
        });

    [Fact]
    public void Steel_browns_faster_than_stone_and_no_wet_base_is_hotter_than_boiling()
    {
        var ranked = SurfaceRanking.At(new Celsius(300), new Celsius(20), AKitchen.Dough, new Altitude(1609), AKitchen.Table);

        Assert.Equal(
            [SurfaceKind.Aluminium, SurfaceKind.CarbonSteel, SurfaceKind.CastIron, SurfaceKind.Cordierite, SurfaceKind.FireBrick],
            ranked.Select(row => row.Kind));
        Assert.Equal([1, 2, 3, 4, 5], ranked.Select(row => row.Rank));
        Assert.All(ranked, row => Assert.Equal(94.62, row.WetLayerCelsius, 0.02));
        Assert.DoesNotContain(
            SurfaceRanking.At(new Celsius(400), new Celsius(20), AKitchen.Dough, default, AKitchen.Table),
            row => row.Kind == SurfaceKind.Aluminium);
    }

    [Fact]
    public void A_pie_takes_more_the_more_it_weighs_and_no_dough_is_hotter_than_boiling_water()
    {
        var pie = AKitchen.Pie;
        var more = PieHeat.Of(new Grams(325), new Grams(300), new Celsius(18), default, AKitchen.Dough, AKitchen.Table);

        Assert.True(more.TotalJoules > pie.TotalJoules);
        Assert.Equal(pie.TotalJoules / 2, pie.ThroughSurfaceJoules.Expected, 1e-9);
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            PieHeat.Of(new Grams(325), new Grams(300), new Celsius(120), default, AKitchen.Dough, AKitchen.Table));
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            PieHeat.Of(new Grams(325), new Grams(9000), new Celsius(18), default, AKitchen.Dough, AKitchen.Table));
    }

    /// <summary>Another equation for the same: log10 p[mmHg] = 8.07131 - 1730.63 / (233.426 + T).</summary>
    private static double Antoine(double pascals) => 1730.63 / (8.07131 - Math.Log10(pascals / 133.322)) - 233.426;
}
