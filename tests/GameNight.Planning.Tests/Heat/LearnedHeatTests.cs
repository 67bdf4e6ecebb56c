using CsCheck;
using GameNight.Planning.Heat;
using GameNight.Planning.Quantities;
using NodaTime;

namespace GameNight.Planning.Tests.Heat;

public class LearnedHeatTests
{
    private static readonly double[] Ten = [6, 10, 14, 18, 22, 26, 30, 34, 38, 42];

    [Fact]
    public void Ten_good_readings_find_how_fast_the_oven_really_heats() =>
        Gen.Double[0.5, 2].Sample(truth =>
        {
            var learned = Learn(Readings(truth, Ten));

            Assert.Equal(truth, learned.Multiplier.Expected, 0.08 * truth);
            Assert.InRange(truth, learned.Multiplier.Low, learned.Multiplier.High);
            Assert.Equal(10, learned.Readings);
        }, iter: 8);

    [Fact]
    public void Two_readings_leave_a_wider_band_than_ten()
    {
        var (two, ten) = (Learn(Readings(0.7, [20, 30])), Learn(Readings(0.7, Ten)));

        Assert.True(Width(two) > Width(ten));
        Assert.InRange(two.Multiplier.Expected, 0.65, 1);
    }

    [Fact]
    public void Readings_of_a_surface_that_is_hot_through_teach_nothing()
    {
        var learned = Learn([Reading(300, 250), Reading(320, 250), Reading(340, 249)]);

        Assert.Equal(1, learned.Multiplier.Expected, 0.05);
        Assert.Equal(AKitchen.Table.Ready.SpreadFactor, learned.Multiplier.High / learned.Multiplier.Expected, 0.02);
    }

    [Fact]
    public void Readings_that_scatter_narrow_the_band_less()
    {
        var scattered = Readings(1, Ten)
            .Select((reading, i) => reading with { Top = new Celsius(reading.Top.Value + (i % 2 == 0 ? 25 : -25)) }).ToList();

        Assert.True(Width(Learn(scattered)) > 1.5 * Width(Learn(Readings(1, Ten))));
        Assert.InRange(Learn(scattered).ResidualKelvin, 15, 30);
    }

    [Fact]
    public void What_was_learned_moves_when_the_surface_is_ready_and_narrows_its_band()
    {
        var (surface, oven) = (AKitchen.Surface(), AKitchen.Oven());
        var before = SurfaceReadiness.For(surface, oven, AKitchen.Table);
        var after = SurfaceReadiness.For(surface, oven, AKitchen.Table, Learn(Readings(0.7, Ten)));

        Assert.True(after.AfterAirIsHot!.Expected > before.AfterAirIsHot!.Expected);
        Assert.True(after.AfterAirIsHot.High / after.AfterAirIsHot.Low < before.AfterAirIsHot.High / before.AfterAirIsHot.Low);
        Assert.Equal(10, after.Readings);
    }

    [Fact]
    public void One_reading_may_be_a_slip_and_is_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Learn([Reading(20, 150)]));
        Assert.Throws<ArgumentOutOfRangeException>(() => Learn([Reading(20, 150), Reading(-1, 150)]));
        Assert.Throws<ArgumentOutOfRangeException>(() => Learn([Reading(20, 150), Reading(700, 150)]));
    }

    private static LearnedHeat Learn(IReadOnlyList<SurfaceReading> readings) =>
        LearnedHeat.From(AKitchen.Surface(), AKitchen.Oven(), readings, AKitchen.Table);

    private static double Width(LearnedHeat learned) => Math.Log(learned.Multiplier.High / learned.Multiplier.Low);

    private static List<SurfaceReading> Readings(double truth, double[] minutes)
    {
        var model = SurfaceHeat.Over(
            AKitchen.Surface(), AKitchen.Oven() with { HeatMultiplier = truth }, Duration.FromHours(1), AKitchen.Table);
        return [.. minutes.Select(minute => Reading(minute, model.TopAt(Duration.FromMinutes(minute))))];
    }

    private static SurfaceReading Reading(double minutes, double celsius) =>
        new(Duration.FromMinutes(minutes), new Celsius(celsius));
}
