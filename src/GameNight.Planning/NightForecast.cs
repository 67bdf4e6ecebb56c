using GameNight.Planning.Appetite;
using GameNight.Planning.Quantities;

namespace GameNight.Planning;

/// <summary>Forecast and number of pies of a night: the plan's, and that of every option beside it.</summary>
internal static class NightForecast
{
    /// <param name="night">As it is handed in: what was chosen late is followed here.</param>
    public static (SlicesForecast Slices, PiePlan Pies) For(NightSnapshot night, ReferenceTables tables)
    {
        night = LateChoices.Followed(night);
        var (shape, ball) = night.Begun is { } begun
            ? (begun.Shape, begun.Dough.Ball.Value)
            : (night.Shape, night.ByHand.Ball ?? night.Shape.Ball);
        var (forecast, demand) = AppetiteModel.Forecast(
            night.Guests, ball, shape.SlicesPerPie, tables.Appetite, night.Courses, night.Length, night.Players);
        return (forecast, PieCountRule.For(
            demand, shape.SlicesPerPie, night.RunOutChance, night.ByHand.Pies,
            night.Begun is { } started ? LateChoices.Pies(night, started) : (PieCount?)null, night.ShortageWeight));
    }
}
