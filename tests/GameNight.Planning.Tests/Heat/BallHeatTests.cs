using CsCheck;
using GameNight.Planning.Heat;
using GameNight.Planning.Quantities;
using NodaTime;

namespace GameNight.Planning.Tests.Heat;

public class BallHeatTests
{
    private static readonly Gen<(double Start, HeatPhase[] Phases)> Journeys =
        Gen.Select(Gen.Double[0, 30], AKitchen.Phases.Array[1, 5]);

    [Fact]
    public void Heat_that_is_stored_came_in_through_the_surface() =>
        Journeys.Sample(journey =>
        {
            var ball = BallHeat.Over(journey.Start, journey.Phases, AKitchen.Dough);

            var flowed = journey.Phases.Max(phase => Math.Abs(phase.SurroundingCelsius - journey.Start)) * AKitchen.Dough.HeatCapacityJPerKgK;
            Assert.Equal(ball.StoredJPerKg, ball.ThroughSurfaceJPerKg, 1e-6 * flowed);
            Assert.Equal(
                AKitchen.Dough.HeatCapacityJPerKgK * (ball.MeanCelsius[^1] - journey.Start), ball.StoredJPerKg, 1e-6 * flowed);
        }, iter: 200);

    [Fact]
    public void No_part_of_the_ball_leaves_the_range_of_what_was_around_it() =>
        Journeys.Sample(journey =>
        {
            var ball = BallHeat.Over(journey.Start, journey.Phases, AKitchen.Dough);
            var around = journey.Phases.Select(phase => phase.SurroundingCelsius).Append(journey.Start).ToList();
            var (low, high) = (around.Min() - 1e-9, around.Max() + 1e-9);

            Assert.All(ball.CoreCelsius, celsius => Assert.InRange(celsius, low, high));
            Assert.All(ball.SurfaceCelsius, celsius => Assert.InRange(celsius, low, high));
            Assert.All(ball.MeanCelsius, celsius => Assert.InRange(celsius, low, high));
        }, iter: 100);

    [Fact]
    public void More_heat_transfer_brings_every_part_nearer_to_its_place_at_every_minute() =>
        Gen.Select(AKitchen.Phases, Gen.Double[0, 30], Gen.Double[1.05, 3]).Sample((phase, start, factor) =>
        {
            var slow = BallHeat.Over(start, [phase], AKitchen.Dough);
            var fast = BallHeat.Over(start, [phase with { WPerM2K = phase.WPerM2K * factor }], AKitchen.Dough);

            for (var i = 1; i < slow.MeanCelsius.Length; i++)
            {
                Assert.True(Left(fast.MeanCelsius[i]) < Left(slow.MeanCelsius[i]) + 1e-9);
                Assert.True(Left(fast.CoreCelsius[i]) <= Left(slow.CoreCelsius[i]) + 1e-9);
            }

            double Left(double celsius) => Math.Abs(celsius - phase.SurroundingCelsius);
        }, iter: 60);

    [Fact]
    public void Twice_the_shells_and_half_the_step_change_less_than_half_a_percent() =>
        Gen.Select(Gen.Double[80, 600], Gen.Double[4, 15], Gen.Double[2, 8], Gen.Double[18, 27]).Sample((grams, h, fridge, room) =>
        {
            HeatPhase[] phases = [new(Duration.FromHours(6), new Grams(grams), room, h)];
            var coarse = BallHeat.Over(fridge, phases, AKitchen.Dough);
            var fine = BallHeat.Over(fridge, phases, AKitchen.Dough, 1, 2 * BallHeat.Shells, 15);

            var core = room - 0.35 * (room - fridge);
            Assert.Equal(1, coarse.UntilCore(core)!.Value / fine.UntilCore(core)!.Value, 0.005);
            for (var i = 0; i < coarse.MeanCelsius.Length; i++)
            {
                Assert.Equal(fine.MeanCelsius[i], coarse.MeanCelsius[i], 0.005 * (room - fridge));
                Assert.Equal(fine.CoreCelsius[i], coarse.CoreCelsius[i], 0.005 * (room - fridge));
            }
        }, iter: 30);

    [Fact]
    public void From_a_fourier_number_of_a_fifth_on_the_ball_follows_the_series() =>
        Gen.Select(Gen.Double[80, 1500], Gen.Double[2, 40]).Sample((grams, h) =>
        {
            var sphere = new DoughSphere(new Grams(grams), AKitchen.Dough);
            var series = OneTermSeries.For(BodyShape.Sphere, sphere.BiotAt(h));
            var ball = BallHeat.Over(20, [new HeatPhase(Duration.FromHours(8), new Grams(grams), 0, h)], AKitchen.Dough);

            for (var i = 0; i < ball.MeanCelsius.Length; i += 10)
            {
                if (sphere.FourierAfter(i * 60) is var fourier && fourier > 0.25)
                {
                    Assert.Equal(series.LeftOnAverage(fourier), ball.MeanCelsius[i] / 20, 0.01);
                    Assert.Equal(series.LeftAt(fourier), ball.CoreCelsius[i] / 20, 0.01);
                    Assert.Equal(series.LeftAt(fourier, position: 1), ball.SurfaceCelsius[i] / 20, 0.01);
                }
            }
        }, iter: 60);

    [Fact]
    public void Balls_start_evenly_at_the_mean_of_the_batch_they_were_divided_from()
    {
        HeatPhase[] phases =
        [
            new(Duration.FromHours(2), new Grams(1300), 18, 5),
            new(Duration.FromHours(1), new Grams(325), 4, 5),
        ];

        var dough = BallHeat.Over(26, phases, AKitchen.Dough);
        var balls = BallHeat.Over(dough.MeanCelsius[120], [phases[1]], AKitchen.Dough);

        Assert.True(dough.CoreCelsius[120] > dough.MeanCelsius[120] + 1);
        Assert.Equal(balls.CoreCelsius[30], dough.CoreCelsius[150], 1e-9);
        Assert.Equal(balls.MeanCelsius[60], dough.MeanCelsius[180], 1e-9);
    }

    [Fact]
    public void The_same_ball_keeps_its_warm_core_when_only_its_place_changes()
    {
        HeatPhase[] phases =
        [
            new(Duration.FromHours(1), new Grams(325), 4, 8),
            new(Duration.FromHours(1), new Grams(325), 20, 8),
        ];

        var ball = BallHeat.Over(24, phases, AKitchen.Dough);

        Assert.True(ball.CoreCelsius[65] < ball.CoreCelsius[60]);
        Assert.True(ball.SurfaceCelsius[65] > ball.SurfaceCelsius[60]);
    }

    [Fact]
    public void A_measured_dough_goes_on_from_what_was_measured()
    {
        HeatPhase cold = new(Duration.FromHours(3), new Grams(325), 4, 8);

        var measured = BallHeat.Over(24, [cold, cold with { MeasuredCelsius = 9 }], AKitchen.Dough);
        var anew = BallHeat.Over(9, [cold], AKitchen.Dough);

        Assert.Equal(anew.MeanCelsius[60], measured.MeanCelsius[240], 1e-9);
        Assert.Equal(measured.StoredJPerKg, measured.ThroughSurfaceJPerKg, 0.1);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(0.7)]
    [InlineData(7)]
    public void Steps_of_the_answer_do_not_change_it(double longestStepMinutes)
    {
        HeatPhase[] phases =
        [
            new(Duration.FromMinutes(95.5), new Grams(900), 21, 5),
            new(Duration.FromHours(40), new Grams(250), 4, 5),
            new(Duration.FromMinutes(100), new Grams(250), 22, 8),
        ];

        var ball = BallHeat.Over(25, phases, AKitchen.Dough, longestStepMinutes);
        var fine = BallHeat.Over(25, phases, AKitchen.Dough, 0.25);

        Assert.True(ball.Step.TotalMinutes <= longestStepMinutes + 1e-9);
        Assert.Equal(95.5 + 40 * 60 + 100, ball.Step.TotalMinutes * (ball.MeanCelsius.Length - 1), 1e-6);
        Assert.Equal(fine.MeanCelsius[^1], ball.MeanCelsius[^1], 0.05);
        Assert.Equal(fine.CoreCelsius[^1], ball.CoreCelsius[^1], 0.05);
    }

    [Fact]
    public void Three_days_allocate_their_answer_and_hardly_more()
    {
        HeatPhase[] phases = [new(Duration.FromHours(76), new Grams(325), 4, 5)];
        BallHeat.Over(24, phases, AKitchen.Dough);

        var before = GC.GetAllocatedBytesForCurrentThread();
        var ball = BallHeat.Over(24, phases, AKitchen.Dough);
        var allocated = GC.GetAllocatedBytesForCurrentThread() - before;

        Assert.InRange(allocated, 1, 3 * sizeof(double) * ball.MeanCelsius.Length + 8_000);
    }

    [Fact]
    public void Without_any_time_the_dough_stays_as_it_is()
    {
        var ball = BallHeat.Over(24, [], AKitchen.Dough);

        Assert.Equal([24], ball.MeanCelsius);
        Assert.Null(ball.UntilCore(20));
        Assert.Equal(Duration.Zero, ball.UntilCore(24));
    }

    public static TheoryData<double, HeatPhase> Impossible => new()
    {
        { 24, new HeatPhase(Duration.FromHours(1), new Grams(5), 4, 8) },
        { 24, new HeatPhase(Duration.FromHours(1), new Grams(60_000), 4, 8) },
        { 24, new HeatPhase(Duration.FromHours(1), new Grams(250), 200, 8) },
        { 24, new HeatPhase(Duration.FromHours(1), new Grams(250), double.NaN, 8) },
        { 24, new HeatPhase(Duration.FromHours(1), new Grams(250), 4, 0) },
        { 24, new HeatPhase(Duration.FromHours(-1), new Grams(250), 4, 8) },
        { 24, new HeatPhase(Duration.FromDays(30), new Grams(250), 4, 8) },
        { 24, new HeatPhase(Duration.FromHours(1), new Grams(250), 4, 8, MeasuredCelsius: 90) },
        { 90, new HeatPhase(Duration.FromHours(1), new Grams(250), 4, 8) },
    };

    [Theory]
    [MemberData(nameof(Impossible), DisableDiscoveryEnumeration = true)]
    public void What_no_dough_lives_through_is_refused(double start, HeatPhase phase) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => BallHeat.Over(start, [phase], AKitchen.Dough));
}
