using CsCheck;
using GameNight.Planning.Dough;
using GameNight.Planning.Quantities;
using GameNight.TestKit;

namespace GameNight.Planning.Tests.Dough;

public class HydrationTests
{
    private const double RoundOff = 1e-12;

    private static readonly FlourTable Table = SharedFolder.Tables.Flour;

    private static readonly Gen<KitchenFlour> Flours =
        from wheat in Gen.Enum<WheatKind>()
        from kept in Gen.Enum<FlourKept>()
        from humidity in Gen.Double[0.1, 0.9]
        from moisture in Gen.Double[0.08, 0.16]
        from known in Gen.Select(Gen.Bool, Gen.Bool)
        select new KitchenFlour(
            wheat, kept, known.Item1 ? new Share(humidity) : null, known.Item2 ? new Share(moisture) : null);

    [Fact]
    public void Moisture_never_moves_the_water_by_more_than_two_points_and_never_silently() =>
        Gen.Select(Formulas.Whole, Flours, Gen.Double[5, 40]).Sample((formula, flour, room) =>
        {
            var hydration = Hydration.For(formula, flour, new Celsius(room), Table);
            var moved = hydration.Water.Expected.Value - formula.Water.Value;

            Assert.InRange(moved, -0.02 - RoundOff, 0.02 + RoundOff);
            Assert.True(moved == 0 || hydration.Because.Any(reason => reason is HydrationForHumidity or HydrationForMoisture));
        });

    [Fact]
    public void Nothing_known_moves_nothing() => Formulas.Whole.Sample(formula =>
    {
        foreach (var flour in new[] { null, new KitchenFlour(WheatKind.Hard, FlourKept.Paper) })
        {
            var hydration = Hydration.For(formula, flour, new Celsius(21), Table);

            Assert.Equal(formula.Water, hydration.Water.Expected);
            Assert.DoesNotContain(hydration.Because, reason => reason is not FlourBlended);
        }
    });

    [Fact]
    public void A_dry_room_takes_more_water_and_a_moist_one_less() => Gen.Double[0.15, 0.8].Sample(humidity =>
    {
        var drier = Of(new KitchenFlour(WheatKind.Hard, FlourKept.Paper, new Share(humidity)));
        var moister = Of(new KitchenFlour(WheatKind.Hard, FlourKept.Paper, new Share(humidity + 0.1)));

        Assert.True(moister.Water.Expected <= drier.Water.Expected);
    });

    [Fact]
    public void A_usual_room_moves_the_water_by_little_and_says_by_how_much_it_would_have_been()
    {
        // By hand at 20 °C: hard wheat at 50 % rests at (12.06 + 11.89) / 2 = 11.98 %, a third of 2.02 below 14 is 13.33;
        // (62 + 14) * 86.67 / 86 - 13.33 = 63.27.
        var usual = Of(new KitchenFlour(WheatKind.Hard, FlourKept.Paper, new Share(0.5)), room: 20);
        Assert.Equal(0.6327, usual.Water.Expected.Value, 0.0002);

        var dry = Of(new KitchenFlour(WheatKind.Hard, FlourKept.Paper, new Share(0.2)), room: 20);
        var reason = Assert.IsType<HydrationForHumidity>(Assert.Single(dry.Because));
        Assert.Equal(0.64, dry.Water.Expected.Value, 1e-9);
        Assert.True(reason.Uncapped.Value > 0.65);
    }

    [Fact]
    public void A_sealed_tub_keeps_the_room_out_and_a_measured_moisture_overrules_both()
    {
        var humid = new KitchenFlour(WheatKind.Soft, FlourKept.Sealed, new Share(0.8));
        Assert.Equal(0.62, Of(humid).Water.Expected.Value);
        Assert.IsType<FlourKeptSealed>(Assert.Single(Of(humid).Because));

        // B4b by hand for 62 %: (62 + 14) * 87 / 86 - 13 = 63.88.
        var measured = Of(humid with { Moisture = new Share(0.13) });
        Assert.Equal(0.6388, measured.Water.Expected.Value, 0.0001);
        Assert.IsType<HydrationForMoisture>(Assert.Single(measured.Because));
        Assert.True(measured.Water.High.Value - measured.Water.Expected.Value < Of(humid).Water.High.Value - 0.62);
    }

    [Fact]
    public void What_the_kneader_left_out_comes_back_as_more_water_per_flour_beyond_the_cap()
    {
        // 1000 g flour and 620 g water, 60 g of the flour stayed out: 620 / 940.
        var batch = DoughBatch.Weighing(new Grams(1665), Formulas.Plain, default);
        var learned = KneadersCorrection.Learn(new Grams(60), batch);
        var hydration = Hydration.For(Formulas.Plain with { Kneader = learned }, null, new Celsius(21), Table);

        Assert.Equal(620.0 / 940, hydration.Water.Expected.Value, 1e-9);
        Assert.Contains(hydration.Because, reason => reason is HydrationForKneader);
    }

    [Fact]
    public void Corrections_of_two_nights_add_up_to_what_stayed_out_of_both()
    {
        var batch = DoughBatch.Weighing(new Grams(1665), Formulas.Plain, default);
        var twice = KneadersCorrection.Learn(new Grams(100), batch, KneadersCorrection.Learn(new Grams(100), batch));

        Assert.Equal(1 - 0.9 * 0.9, twice.StayedOut.Value, 1e-9);
        Assert.Throws<ArgumentOutOfRangeException>(() => KneadersCorrection.Learn(new Grams(126), batch));
    }

    private static Hydration Of(KitchenFlour flour, double room = 21) => Hydration.For(Formulas.Plain, flour, new Celsius(room), Table);
}
