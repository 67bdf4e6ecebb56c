using GameNight.Planning.Appetite;
using GameNight.Planning.Quantities;
using GameNight.Planning.Toppings;

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
            night.Begun is { } started ? Given(night, started, forecast, tables) : null, night.ShortageWeight));
    }

    /// <summary>So many as the begun dough gives. The second dough is mixed on the day and still follows the answers.</summary>
    private static DoughIsBegun Given(NightSnapshot night, BegunDough begun, SlicesForecast forecast, ReferenceTables tables)
    {
        var balls = LateChoices.Balls(night, begun);
        if (night.Menu.SecondDough is null)
        {
            return new DoughIsBegun(balls);
        }

        night = BegunDough.Opened(night);
        night = night with { Menu = NightSauceAndCheese.MenuOf(night, tables) };

        // As if there were no end of pies: nobody has to share, and what lies on the second dough comes on top of the balls.
        var uncontested = NightRequests.Split(night, forecast, SplitPlanner.MostPies, tables) with { MainBalls = null };
        var beside = SplitPlanner.PiesOnSecondDough(uncontested);
        return new DoughIsBegun(balls, beside > 0 ? new PieCount(beside) : null);
    }
}
