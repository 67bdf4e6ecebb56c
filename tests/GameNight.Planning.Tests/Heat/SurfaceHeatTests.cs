using CsCheck;
using GameNight.Planning.Heat;
using NodaTime;

namespace GameNight.Planning.Tests.Heat;

public class SurfaceHeatTests
{
    [Fact]
    public void Heat_that_is_stored_came_in_through_the_faces_less_what_pies_took() =>
        Gen.Select(AKitchen.Ovens, Gen.Double[5, 120], Gen.Double[8, 40]).Sample((oven, first, gap) =>
        {
            var evening = Over(oven, 3, AKitchen.Bakes(first, first + gap, first + 2 * gap));

            Assert.Equal(1, evening.ThroughFacesJPerM2 / evening.StoredJPerM2, 1e-6);
        }, iter: 60);

    [Fact]
    public void A_bare_surface_only_warms_and_never_beyond_its_oven() =>
        AKitchen.Ovens.Sample(oven =>
        {
            var evening = Over(oven, 3);
            // A millimetre of aluminium conducts so well that the last digits of its temperature are noise.
            const double noise = 1e-6;
            var (low, high) = (oven.Oven.Room.Value - noise, oven.Oven.SetPoint.Value + noise);

            Assert.All(evening.TopCelsius, celsius => Assert.InRange(celsius, low, high));
            Assert.All(evening.TopCelsius.Zip(evening.TopCelsius.Skip(1)), two => Assert.True(two.Second >= two.First - noise));
            Assert.All(evening.BottomCelsius, celsius => Assert.InRange(celsius, low, high));
            Assert.All(evening.IronCelsius, celsius => Assert.InRange(celsius, low, high));
            Assert.Equal(oven.Oven.IronAbove is null, evening.IronCelsius.IsEmpty);
        }, iter: 40);

    [Fact]
    public void Pies_cool_the_surface_and_never_below_boiling_water() =>
        Gen.Select(AKitchen.Ovens, Gen.Double[8, 30]).Sample((oven, gap) =>
        {
            var evening = Over(oven, 6, AKitchen.Bakes([.. Enumerable.Range(0, 5).Select(i => 180 + i * gap)]));

            Assert.Equal(5, evening.Dips.Length);
            Assert.All(evening.Dips, dip =>
            {
                Assert.True(dip.AtEndCelsius < dip.AtStartCelsius);
                Assert.True(dip.AtEndCelsius > AKitchen.Pie.BoilingCelsius);
            });
        }, iter: 30);

    [Fact]
    public void Twice_the_cells_and_half_the_step_move_its_being_ready_by_half_a_percent_or_two_steps() =>
        AKitchen.Ovens.Sample(oven =>
        {
            var coarse = Over(oven, 8);
            var fine = SurfaceHeat.Over(
                oven.Surface, oven.Oven, Duration.FromHours(8), AKitchen.Table, null, 2 * OvenRun.Cells, OvenRun.StepSeconds / 2);
            var ready = oven.Oven.SetPoint.Value - 5;
            if (fine.UntilTop(ready) is { } time)
            {
                Assert.Equal(
                    time.TotalSeconds, coarse.UntilTop(ready)!.Value.TotalSeconds,
                    Math.Max(0.005 * time.TotalSeconds, 2 * OvenRun.StepSeconds));
            }
        }, iter: 60);

    [Fact]
    public void Without_radiation_the_slab_follows_the_series() =>
        Gen.Double[0.05, 8].Sample(biot =>
        {
            var stone = new ThermalProperties(2, 2000, 900);
            var half = 0.02;
            var face = new FaceHeat(biot * stone.ConductivityWPerMK / half, 0);
            var slab = new SlabConduction(stone, 0, 2 * half, 100, 40);
            var series = OneTermSeries.For(BodyShape.PlaneWall, biot);

            for (var second = 1; second <= 1000; second++)
            {
                slab.Step(1, face, face);
                if (stone.DiffusivityM2PerS * second / (half * half) is var fourier && fourier > 0.25)
                {
                    Assert.Equal(series.LeftAt(fourier, position: 1), slab.TopCelsius / 100, 0.01);
                    Assert.Equal(series.LeftOnAverage(fourier), slab.MeanCelsius / 100, 0.01);
                }
            }
        }, iter: 30);

    [Fact]
    public void The_longer_the_pause_the_hotter_the_next_pie_starts()
    {
        var (quick, slow) = (Starts(10), Starts(25));

        Assert.True(quick[^1] < quick[0] - 1);
        Assert.All(quick.Skip(1).Zip(slow.Skip(1)), two => Assert.True(two.First < two.Second));

        List<double> Starts(double gap) =>
        [
            .. Over((AKitchen.Surface(), AKitchen.Oven()), 5, AKitchen.Bakes([.. Enumerable.Range(0, 6).Select(i => 90 + i * gap)]))
                .Dips.Select(dip => dip.AtStartCelsius),
        ];
    }

    [Fact]
    public void A_dip_is_back_only_when_the_next_pie_lets_it()
    {
        var dips = Over((AKitchen.Surface(), AKitchen.Oven()), 4, AKitchen.Bakes(120, 128, 200)).Dips;

        Assert.Null(dips[0].Back);
        Assert.InRange(dips[1].Back!.Value.TotalMinutes, 5, 30);
    }

    [Fact]
    public void Pies_on_top_of_one_another_are_refused()
    {
        Assert.Throws<ArgumentException>(() => Over((AKitchen.Surface(), AKitchen.Oven()), 4, AKitchen.Bakes(120, 125)));
        Assert.Throws<ArgumentException>(() => Over((AKitchen.Surface(), AKitchen.Oven()), 4, AKitchen.Bakes(-1)));
    }

    private static SurfaceTemperatures Over((BakingSurface Surface, Oven Oven) oven, double hours, Bakes? bakes = null) =>
        SurfaceHeat.Over(oven.Surface, oven.Oven, Duration.FromHours(hours), AKitchen.Table, bakes);
}
