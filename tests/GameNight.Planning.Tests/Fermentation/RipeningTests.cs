using CsCheck;
using GameNight.Planning.Dough;
using GameNight.Planning.Fermentation;
using GameNight.Planning.Quantities;
using GameNight.TestKit;
using NodaTime;

namespace GameNight.Planning.Tests.Fermentation;

public class RipeningTests
{
    private static readonly Instant Mixed = Instant.FromUtc(2026, 12, 3, 18, 0);

    private static readonly DoughFormula Formula = new(
        new Share(0.62), new Share(0.025), new Share(0.02), new Share(0), false, YeastForm.Instant, new Share(0.125), new Share(0.02));

    [Fact]
    public void A_dough_with_the_dose_for_its_hours_is_at_its_best_when_they_end() =>
        Gen.Select(Gen.Double[42, 70], Gen.Double[2.5, 7], Gen.Double[18, 26]).Sample((cold, fridge, room) =>
        {
            var journey = Journey(cold, fridge, room);
            var ripening = Ripened(journey, Dosed(journey));

            Assert.Equal(1, ripening.GasOfWanted, 1e-6);
            Assert.Equal(End(journey).ToUnixTimeSeconds(), ripening.Window.Best!.Value.ToUnixTimeSeconds(), 120.0);
        }, iter: 20);

    [Fact]
    public void The_window_runs_from_first_over_best_to_last_and_its_band_encloses_the_best() =>
        Gen.Select(Gen.Double[42, 70], Gen.Double[3, 7], Gen.Double[18, 26], Gen.Double[0.0005, 0.002]).Sample((cold, fridge, room, yeast) =>
        {
            var window = Ripened(Journey(cold, fridge, room), new Share(yeast)).Window;
            Instant?[] order = [window.From, window.Best, window.Until];
            Instant?[] band = [window.BestNotBefore, window.Best, window.BestNotAfter];

            Assert.All(new[] { order, band }, row => Assert.Equal(row.OfType<Instant>().Order(), row.OfType<Instant>()));
        }, iter: 20);

    [Fact]
    public void A_warm_fridge_makes_the_window_narrow()
    {
        var widths = new[] { 3.0, 5, 7 }.Select(fridge =>
        {
            var journey = Journey(48, fridge, 21);
            var window = Ripened(journey, Dosed(journey)).Window;
            return (window.Until ?? Mixed + Duration.FromDays(10)) - window.From!.Value;
        }).ToList();

        Assert.Equal(widths.OrderDescending(), widths);
        Assert.True(widths[0] > widths[2], string.Join(", ", widths));
    }

    [Fact]
    public void More_yeast_is_ready_earlier_and_so_is_a_warmer_fridge() =>
        Gen.Select(Gen.Double[42, 60], Gen.Double[3, 6], Gen.Double[0.0008, 0.0015]).Sample((cold, fridge, yeast) =>
        {
            var best = Best(Journey(cold, fridge, 21), yeast);

            // Nothing is ready before it has rested and tempered: there all that is quicker comes together, to the minute.
            var soonest = Mixed + Journey(cold, fridge, 21).AtRoom + Journey(cold, fridge, 21).Tempering + Duration.FromMinutes(10);
            Assert.All(
                [Best(Journey(cold, fridge, 21), yeast * 1.3), Best(Journey(cold, fridge + 1, 21), yeast)],
                sooner => Assert.True(sooner < best || (sooner == best && best <= soonest), $"{sooner} {best}"));
        }, iter: 15);

    [Fact]
    public void Cold_dough_hides_its_gas_and_rises_when_it_warms()
    {
        var journey = Journey(60, 4, 21);
        var ripening = Ripened(journey, Dosed(journey));
        var leaving = ripening.Course.Single(state => state.At == Mixed + journey.AtRoom + journey.InFridge);
        var shaped = ripening.Course[^1];

        Assert.Contains(ripening.Because, reason => reason is RiseHiddenInTheCold);
        Assert.InRange(leaving.Volume, 1, 1.1);
        Assert.True(leaving.GasMillilitresPer100GramsFlour > 60);
        Assert.Equal(DoughLook.Airy, shaped.Look);
        Assert.True(shaped.DissolvedMillilitresPer100GramsFlour < leaving.DissolvedMillilitresPer100GramsFlour);
    }

    [Fact]
    public void Gas_is_never_lost_and_never_more_dissolved_than_made() =>
        Gen.Select(Gen.Double[20, 90], Gen.Double[1, 9], Gen.Double[16, 28], Gen.Double[0.0003, 0.01]).Sample((cold, fridge, room, yeast) =>
        {
            var course = Ripened(Journey(cold, fridge, room), new Share(yeast)).Course;

            Assert.Equal(course.Select(state => state.GasMillilitresPer100GramsFlour).Order(), course.Select(state => state.GasMillilitresPer100GramsFlour));
            Assert.All(course, state => Assert.InRange(state.DissolvedMillilitresPer100GramsFlour, 0, state.GasMillilitresPer100GramsFlour));
            Assert.All(course, state => Assert.True(state.Volume >= 1));
            Assert.Equal(course.Select(state => state.At).Distinct().Order(), course.Select(state => state.At));
        }, iter: 20);

    [Theory]
    [InlineData(30, typeof(ColdIsShort))]
    [InlineData(90, typeof(ColdIsLong))]
    public void Hours_outside_the_usual_ones_say_what_they_cost(double cold, Type reason) =>
        Assert.Contains(Ripened(Journey(cold, 5, 21), new Share(0.001)).Because, one => one.GetType() == reason);

    [Fact]
    public void A_look_that_fits_moves_little_and_an_early_rise_brings_the_best_forward()
    {
        var journey = Journey(48, 5, 21);
        var yeast = Dosed(journey);
        var unseen = Ripened(journey, yeast);
        var asExpected = Ripened(journey, yeast, Look(30, DoughLook.AsBalled));
        var early = Ripened(journey, yeast, Look(30, DoughLook.Airy));

        Assert.Equal(unseen.Window.Best, asExpected.Window.Best);
        Assert.True(early.Window.Best < unseen.Window.Best - Duration.FromHours(3), $"{early.Window.Best} {unseen.Window.Best}");
        Assert.True(early.BandFactor < unseen.BandFactor);
        Assert.Contains(early.Because, reason => reason is CourseFollowsReadings { Readings: 1, GasFactor: > 1.1 });
    }

    [Fact]
    public void A_fridge_measured_warmer_than_thought_and_a_dough_measured_warm_bring_the_best_forward()
    {
        var journey = Journey(48, 4, 21);
        var yeast = Dosed(journey);
        var best = Ripened(journey, yeast).Window.Best;

        var warmFridge = Ripened(journey, yeast, new DoughReading(Mixed + Duration.FromHours(12), null, new Celsius(7), null)).Window.Best;
        var warmDough = Ripened(journey, yeast, new DoughReading(Mixed + Duration.FromHours(6), new Celsius(12), null, null)).Window.Best;

        Assert.True(warmFridge < best - Duration.FromHours(5), $"{warmFridge} {best}");
        Assert.True(warmDough < best, $"{warmDough} {best}");
    }

    [Fact]
    public void A_reading_from_before_mixing_counts_for_nothing()
    {
        var journey = Journey(48, 4, 21);

        Assert.Equivalent(
            Ripened(journey, new Share(0.001)), Ripened(journey, new Share(0.001), Look(-2, DoughLook.Fallen)), strict: true);
    }

    [Fact]
    public void What_is_seen_of_several_doughs_finds_the_kitchen_s_own_factor()
    {
        var journey = Journey(48, 5, 21);
        var yeast = Dosed(journey);
        var table = SharedFolder.Tables.Fermentation;

        // A kitchen that gasses one and a half times as fast in the cold: its doughs look as that course says.
        var truth = Ripened(journey with { Calibration = new FermentationCalibration(1.5, 1) }, yeast).Course;
        var belief = CalibrationBelief.Prior(FermentationCalibration.None, table.BandFactor);
        for (var night = 0; night < 4; night++)
        {
            foreach (var state in truth.Where(state => state.Volume is > 1.02 and < 2.5).TakeLast(2))
            {
                var fresh = yeast.Percent / SharedFolder.Tables.Dough.Of(Formula.Yeast).MassPerFresh;
                belief = belief.After(new DoughRun(journey, Formula, belief.Expected, table, SharedFolder.Tables.Materials), fresh, state.At - Mixed, state.Look);
            }
        }

        Assert.InRange(belief.Expected.Cold, 1.2, 1.9);
        Assert.True(belief.VarianceCold < CalibrationBelief.Prior(FermentationCalibration.None, table.BandFactor).VarianceCold);
    }

    private static DoughReading Look(double hours, DoughLook look) => new(Mixed + Duration.FromHours(hours), null, null, look);

    private static Instant Best(DoughJourney journey, double yeast) =>
        Ripened(journey, new Share(yeast)).Window.Best ?? Mixed + Duration.FromDays(11);

    private static Instant End(DoughJourney journey) => Mixed + journey.AtRoom + journey.InFridge + journey.Tempering;

    private static Share Dosed(DoughJourney journey) => YeastDoseModel.For(
        journey, Formula, new Grams(1000), null, SharedFolder.Tables.Fermentation, SharedFolder.Tables.Dough, SharedFolder.Tables.Materials).ShareOfFlour.Value;

    private static Ripening Ripened(DoughJourney journey, Share yeast, params IReadOnlyList<DoughReading> readings) => RipeningModel.For(
        journey, Formula, yeast, Mixed, readings, (Duration.FromHours(40), Duration.FromHours(72)),
        SharedFolder.Tables.Fermentation, SharedFolder.Tables.Dough, SharedFolder.Tables.Materials);

    private static DoughJourney Journey(double coldHours, double fridge, double room) => new(
        new Celsius(24), Duration.FromHours(2.5), Duration.FromMinutes(Math.Round(60 * coldHours)), Duration.FromHours(2), new Celsius(room),
        new Celsius(fridge), 0, new Grams(325), new Grams(1300));
}
