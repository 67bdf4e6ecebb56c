using CsCheck;
using GameNight.Planning.Dough;
using GameNight.Planning.Quantities;
using GameNight.TestKit;

namespace GameNight.Planning.Tests.Dough;

public class FlourMoistureTests
{
    private static readonly FlourTable Table = SharedFolder.Tables.Flour;

    private static readonly Gen<(WheatKind Wheat, double Celsius, double Humidity)> Air =
        Gen.Select(Gen.Enum<WheatKind>(), Gen.Double[-4, 49], Gen.Double[0.11, 0.89]);

    [Fact]
    public void Moister_air_makes_moister_kernels_and_warmer_air_drier_ones() => Air.Sample(air =>
    {
        var wheat = Table.Of(air.Wheat);
        foreach (var law in new Func<Celsius, Share, Share>[] { wheat.ByHenderson, wheat.ByChungPfost })
        {
            var here = law(new Celsius(air.Celsius), new Share(air.Humidity));

            Assert.True(law(new Celsius(air.Celsius), new Share(air.Humidity + 0.01)) > here);
            Assert.True(law(new Celsius(air.Celsius + 1), new Share(air.Humidity)) < here);
        }
    });

    [Fact]
    public void The_expected_moisture_lies_between_the_two_laws_and_the_band_holds_both() => Air.Sample(air =>
    {
        var wheat = Table.Of(air.Wheat);
        var (celsius, humidity) = (new Celsius(air.Celsius), new Share(air.Humidity));
        var (one, other) = (wheat.ByHenderson(celsius, humidity).Value, wheat.ByChungPfost(celsius, humidity).Value);
        var moisture = Hydration.MoistureInRoom(air.Wheat, celsius, humidity, Table);

        Assert.InRange(moisture.Expected.Value, Math.Min(one, other), Math.Max(one, other));
        Assert.True(moisture.Low.Value < Math.Min(one, other) && moisture.High.Value > Math.Max(one, other));
    });

    [Theory]
    [InlineData(21, 0.05)]
    [InlineData(21, 0.95)]
    [InlineData(-10, 0.5)]
    [InlineData(60, 0.5)]
    public void The_laws_refuse_air_they_were_not_fitted_on(double celsius, double humidity)
    {
        var wheat = Table.Of(WheatKind.Hard);

        Assert.Throws<ArgumentOutOfRangeException>(() => wheat.ByHenderson(new Celsius(celsius), new Share(humidity)));
        Assert.Throws<ArgumentOutOfRangeException>(() => wheat.ByChungPfost(new Celsius(celsius), new Share(humidity)));
    }

    [Fact]
    public void Basis_and_back_is_where_one_was() => Gen.Select(Gen.Double[0.45, 1], Gen.Double[0.06, 0.18]).Sample((water, moisture) =>
    {
        var (share, wet) = (new Share(water), new Share(moisture));

        Assert.Equal(water, FlourMoisture.AbsorptionOnBasis(FlourMoisture.AbsorptionAsIs(share, wet), wet).Value, 1e-12);
        Assert.Equal(500, FlourMoisture.OnBasis(FlourMoisture.AsIs(new Grams(500), wet), wet).Value, 1e-9);
        Assert.Equal(water, FlourMoisture.AbsorptionAsIs(share, new Share(FlourMoisture.Basis)).Value, 1e-12);
    });

    [Fact]
    public void A_dried_sample_tells_the_moisture_and_a_wrong_one_is_refused()
    {
        Assert.Equal(0.12, FlourMoisture.FromDrying(new Grams(20), new Grams(17.6)).Value, 1e-12);
        Assert.Throws<ArgumentOutOfRangeException>(() => FlourMoisture.FromDrying(new Grams(20), new Grams(20)));
        Assert.Throws<ArgumentOutOfRangeException>(() => FlourMoisture.FromDrying(default, default));
        Assert.Throws<ArgumentOutOfRangeException>(() => FlourMoisture.OnBasis(new Grams(20), new Share(0.5)));
    }
}
