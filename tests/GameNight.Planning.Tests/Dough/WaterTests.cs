using CsCheck;
using GameNight.Planning.Dough;
using GameNight.Planning.Quantities;
using GameNight.TestKit;
using NodaTime;

namespace GameNight.Planning.Tests.Dough;

public class WaterTests
{
    private static readonly HeatRow Heat = SharedFolder.Tables.Flour.Heat;

    private static readonly YeastWaking Waking = new(new Celsius(37), new Share(0.1), Duration.FromMinutes(10));

    private static readonly Gen<WaterRequest> Requests =
        from dough in Gen.Double[20, 28]
        from room in Gen.Double[5, 39]
        from friction in Gen.Double[-9.9, 44.9]
        from tap in Gen.Double[0, 35]
        from hydration in Gen.Double[0.45, 1]
        from preferment in Gen.Double[0.02, 0.4]
        from parts in Gen.Select(Gen.Bool, Gen.Bool)
        select new WaterRequest(
            new Celsius(dough), new Celsius(room), new Celsius(room), friction, new Celsius(tap), new Share(hydration),
            Ice: new Celsius(-18),
            Preferment: parts.Item1 ? new FermentedAhead(new Celsius(room), new Share(preferment), new Share(preferment)) : null,
            Activation: parts.Item2 ? Waking : null);

    [Fact]
    public void Warmer_rooms_and_more_friction_never_want_warmer_water() => Requests.Sample(request =>
    {
        var here = WaterTemperature.For(request, Heat).Water.Expected;
        var warmer = request with { Room = new Celsius(request.Room.Value + 1), Flour = new Celsius(request.Flour.Value + 1) };

        Assert.True(WaterTemperature.For(warmer, Heat).Water.Expected <= here);
        Assert.True(WaterTemperature.For(request with { FrictionKelvin = request.FrictionKelvin + 1 }, Heat).Water.Expected <= here);
        Assert.True(WaterTemperature.For(request with { Dough = new Celsius(request.Dough.Value + 1) }, Heat).Water.Expected >= here);
    });

    [Fact]
    public void Tap_ice_and_waking_water_mix_to_what_is_said() => Requests.Sample(request =>
    {
        var water = WaterTemperature.For(request, Heat);
        var (own, ice) = (request.Activation?.OfWater.Value ?? 0, water.IceShare.Value);
        if (ice == 0)
        {
            return;
        }

        // Heat above water at 0 °C, in kelvins of water: ice owes its melting and its own cold.
        var heat = own * (request.Activation?.Water.Value ?? 0)
            + (1 - own - ice) * request.Tap.Value
            - ice * (79.7 + 2.1 / 4.186 * 18);
        Assert.Equal(water.Water.Expected.Value, heat, 1e-9);
    });

    [Fact]
    public void Every_limit_is_said() => Requests.Sample(request =>
    {
        var (needed, water) = (WaterTemperature.Rule(request), WaterTemperature.For(request, Heat));

        // At the limit itself it is rounding that decides.
        var off = Math.Abs(needed - water.Water.Expected.Value);
        Assert.True(off is > 0 and < 1e-9 || off > 0 == water.Because.Any(reason => reason is WaterLimited));
        Assert.InRange(water.Rest?.Value ?? water.Water.Expected.Value, 0, WaterTemperature.HottestCelsius);
    });

    [Fact]
    public void Water_stays_below_what_harms_yeast_and_says_so()
    {
        var water = For(dough: 28, room: 8, friction: 6.7, tap: 10);

        Assert.Equal(WaterTemperature.HottestCelsius, water.Water.Expected.Value);
        Assert.Contains(water.Because, reason => reason is WaterLimited { NeededCelsius: > 60 });
    }

    [Fact]
    public void Ice_replaces_water_when_the_tap_is_not_cold_enough()
    {
        // Needed: 66 - 28 - 28 - 13.3 = -3.3, so 0 °C; share (20 - 0) / (20 + 79.7), and less of it from a freezer.
        Assert.Equal(20 / 99.7, For(22, 28, 13.3, 20).IceShare.Value, 1e-9);
        Assert.Equal(20 / (99.7 + 18 * 2.1 / 4.186), For(22, 28, 13.3, 20, ice: -18).IceShare.Value, 1e-9);
    }

    [Fact]
    public void A_preferment_is_a_fourth_temperature()
    {
        var request = Request(24, 20, 8, 10) with { Preferment = new FermentedAhead(new Celsius(26), new Share(0.3), new Share(0.3)) };

        Assert.Equal(4 * 24 - 20 - 20 - 26 - 8, WaterTemperature.Rule(request), 1e-9);
    }

    [Fact]
    public void The_rest_of_the_water_makes_up_for_what_the_yeast_is_woken_in()
    {
        // Rule: 72 - 21 - 21 - 6.7 = 23.3; 0.1 at 37 and 0.9 at (23.3 - 3.7) / 0.9.
        var water = WaterTemperature.For(Request(24, 21, 6.7, 14) with { Activation = Waking }, Heat);

        Assert.Equal(23.3, water.Water.Expected.Value, 1e-9);
        Assert.Equal(19.6 / 0.9, water.Rest!.Value.Value, 1e-9);
        Assert.Contains(water.Because, reason => reason is YeastIsWoken { Foam.TotalMinutes: 10 });
        Assert.Throws<ArgumentOutOfRangeException>(() => WaterTemperature.For(
            Request(24, 21, 6.7, 14) with { Activation = Waking with { OfWater = new Share(0.6) } }, Heat));
    }

    [Fact]
    public void Waking_yeast_in_a_hot_kitchen_is_limited_by_ice_water_and_says_so()
    {
        var water = WaterTemperature.For(Request(22, 28, 9, 20) with { Activation = Waking }, Heat);

        Assert.Equal(3.7, water.Water.Expected.Value, 1e-9);
        Assert.Contains(water.Because, reason => reason is WaterLimited { NeededCelsius: < 0 });
    }

    [Fact]
    public void A_measured_dough_gives_the_friction_that_makes_the_rule_right() => Requests.Sample(request =>
    {
        var water = new Celsius(20);
        var needed = request with { Activation = null };
        var measured = new Celsius(
            (request.Flour.Value + request.Room.Value + 20 + (request.Preferment?.Temperature.Value ?? 0) + request.FrictionKelvin)
            / (request.Preferment is null ? 3 : 4));
        var learned = FrictionFactor.Learn(measured, request.Flour, request.Room, water, request.Preferment?.Temperature);

        Assert.Equal(request.FrictionKelvin, learned, 1e-9);
        Assert.Equal(20, WaterTemperature.Rule(needed with { Dough = measured, FrictionKelvin = learned }), 1e-9);
    });

    [Fact]
    public void A_friction_that_cannot_be_is_refused() => Assert.Throws<ArgumentOutOfRangeException>(
        () => FrictionFactor.Learn(new Celsius(60), new Celsius(20), new Celsius(20), new Celsius(20)));

    [Fact]
    public void Without_flour_at_another_temperature_the_balance_of_heat_wants_the_doughs_own()
    {
        var request = Request(22, 22, 0, 10);

        Assert.Equal(22, WaterTemperature.HeatBalance(request, Heat, 0), 1e-9);
        Assert.Throws<ArgumentOutOfRangeException>(() => WaterTemperature.For(request with { Hydration = default }, Heat));
    }

    private static WaterRequest Request(double dough, double room, double friction, double tap) => new(
        new Celsius(dough), new Celsius(room), new Celsius(room), friction, new Celsius(tap), new Share(0.62));

    private static WaterTemperature For(double dough, double room, double friction, double tap, double ice = 0) =>
        WaterTemperature.For(Request(dough, room, friction, tap) with { Ice = new Celsius(ice) }, Heat);
}
