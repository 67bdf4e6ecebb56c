using CsCheck;
using GameNight.Planning.Heat;
using GameNight.Planning.Quantities;
using NodaTime;

namespace GameNight.Planning.Tests.Heat;

public class SurfaceReadinessTests
{
    [Fact]
    public void A_usual_stone_is_ready_sooner_than_the_rule_of_thumb_and_both_are_said()
    {
        var ready = For(AKitchen.Surface());

        Assert.InRange(ready.AfterAirIsHot!.Expected.TotalMinutes, 10, 30);
        Assert.Equal(Duration.FromHours(1), ready.RuleOfThumb);
        Assert.True(ready.AfterAirIsHot.Low < ready.AfterAirIsHot.Expected && ready.AfterAirIsHot.Expected < ready.AfterAirIsHot.High);
    }

    [Fact]
    public void Thicker_takes_longer() =>
        Gen.Select(Gen.Enum<SurfaceKind>(), Gen.Double[0, 0.9], Gen.Double[180, 340]).Sample((kind, share, celsius) =>
        {
            var range = AKitchen.Table.Of(kind).ThicknessMillimetres;
            var millimetres = range.Low + share * (range.High - range.Low);
            var thin = For(AKitchen.Surface(kind, millimetres), AKitchen.Oven(celsius, 0)).AfterAirIsHot;
            var thick = For(AKitchen.Surface(kind, millimetres + 0.1 * (range.High - range.Low)), AKitchen.Oven(celsius, 0)).AfterAirIsHot;

            Assert.True(thin is not null && (thick is null || thin.Expected < thick.Expected));
        }, iter: 30);

    [Fact]
    public void A_tray_below_and_cold_iron_above_delay_it_and_a_fan_hastens_it()
    {
        var usual = For(AKitchen.Surface()).AfterAirIsHot!.Expected;

        Assert.True(Expected(AKitchen.Oven() with { Support = SurfaceSupport.SolidTray }) > usual);
        Assert.True(Expected(AKitchen.Oven(iron: AKitchen.Surface(SurfaceKind.CastIron, 8))) > usual);
        Assert.True(Expected(AKitchen.Oven() with { Air = OvenAir.Fan }) < usual);

        static Duration Expected(Oven oven) => For(AKitchen.Surface(), oven).AfterAirIsHot!.Expected;
    }

    [Fact]
    public void The_host_decides_which_leads_and_may_overrule_both()
    {
        var ready = For(AKitchen.Surface());

        Assert.Equal(ready.RuleOfThumb, ready.Soak(SoakLead.RuleOfThumb).Value);
        Assert.IsType<SoakFromRule>(Assert.Single(ready.Soak(SoakLead.RuleOfThumb).Because));
        Assert.Equal(ready.AfterAirIsHot!.Expected, ready.Soak(SoakLead.Model).Value);
        Assert.IsType<SoakFromModel>(Assert.Single(ready.Soak(SoakLead.Model).Because));
        Assert.Equal(Duration.FromMinutes(50), ready.Soak(SoakLead.Model, Duration.FromMinutes(50)).Value);
    }

    [Fact]
    public void A_surface_that_never_gets_ready_falls_back_to_the_rule_and_says_so()
    {
        var oven = AKitchen.Oven() with { HeatMultiplier = 0.2, Support = SurfaceSupport.SolidTray };
        var ready = For(AKitchen.Surface(SurfaceKind.FireBrick, 80), oven);

        Assert.Null(ready.AfterAirIsHot);
        Assert.Equal(new SoakFromRule(Duration.FromHours(1), IsForWantOfModel: true), Assert.Single(ready.Soak(SoakLead.Model).Because));
    }

    [Fact]
    public void A_stone_has_its_heat_back_in_ten_to_twenty_minutes_and_more_pie_takes_longer()
    {
        var usual = SurfaceReadiness.Recovery(AKitchen.Surface(), AKitchen.Oven(), AKitchen.Bakes(), AKitchen.Table)!;
        var heavy = SurfaceReadiness.Recovery(
            AKitchen.Surface(), AKitchen.Oven(), AKitchen.Bakes() with { Pie = Pie(600) }, AKitchen.Table)!;

        Assert.InRange(usual.Expected.TotalMinutes, 10, 20);
        Assert.InRange(usual.High - usual.Low, Duration.FromMinutes(5), Duration.FromMinutes(12));
        Assert.True(usual.Low < usual.Expected && usual.Expected < usual.High && usual.Expected < heavy.Expected);

        static PieHeat Pie(double grams) =>
            PieHeat.Of(new Grams(grams), new Grams(300), new Celsius(18), default, AKitchen.Dough, AKitchen.Table);
    }

    [Theory]
    [InlineData(SurfaceKind.CarbonSteel, 100, 250, "2 to 20 mm")]
    [InlineData(SurfaceKind.Cordierite, 1, 250, "5 to 50 mm")]
    [InlineData(SurfaceKind.Cordierite, 15, 595, "150 to 550 °C")]
    [InlineData(SurfaceKind.Aluminium, 3, 400, "150 to 350 °C")]
    [InlineData(SurfaceKind.CastIron, 5, 90, "150 to 550 °C")]
    [InlineData(SurfaceKind.CastIron, double.NaN, 250, "3 to 20 mm")]
    public void What_no_kitchen_has_is_refused_with_its_range(SurfaceKind kind, double millimetres, double celsius, string range)
    {
        var (surface, oven) = (AKitchen.Surface(kind, millimetres), AKitchen.Oven(celsius));

        var fault = Assert.Throws<ArgumentOutOfRangeException>(() => For(surface, oven));
        Assert.Contains(range, fault.Message, StringComparison.Ordinal);

        var problem = Assert.Single(surface.Problems("kitchen.surface", AKitchen.Table)
            .Concat(oven.Problems("kitchen.oven", surface, AKitchen.Table)));
        Assert.Equal(SnapshotFault.OutOfRange, problem.Fault);
        Assert.StartsWith($"{problem.Low:0} to {problem.High:0}", range, StringComparison.Ordinal);
    }

    [Fact]
    public void An_iron_above_has_its_range_too()
    {
        var oven = AKitchen.Oven(iron: AKitchen.Surface(SurfaceKind.CastIron, 60));

        Assert.Throws<ArgumentOutOfRangeException>(() => For(AKitchen.Surface(), oven));
        Assert.Equal(
            "kitchen.oven.ironAbove.thicknessMillimetres",
            Assert.Single(oven.Problems("kitchen.oven", AKitchen.Surface(), AKitchen.Table)).Field);
    }

    private static SurfaceReadiness For(BakingSurface surface, Oven? oven = null) =>
        SurfaceReadiness.For(surface, oven ?? AKitchen.Oven(), AKitchen.Table);
}
