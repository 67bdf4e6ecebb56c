using GameNight.Planning.Dough;
using GameNight.Planning.Fermentation;
using GameNight.Planning.Quantities;
using GameNight.Planning.Timeline;
using NodaTime;

namespace GameNight.Planning;

/// <summary>What to weigh and when for a second dough on the day of the night.</summary>
/// <param name="BallAt">Then it is divided; the balls stay at room temperature until they are shaped.</param>
/// <param name="ReadyAt">As it should be then.</param>
public sealed record RescuePlan(
    DoughPlan Dough, YeastDose Yeast, WaterTemperature Water, Instant MixAt, Instant BallAt, Instant ReadyAt)
{
    /// <summary>Times are looked for at this distance.</summary>
    private static readonly Duration Grid = Duration.FromMinutes(15);

    /// <summary>A night that was moved since leaves no dough out for longer.</summary>
    private static readonly Duration LongestInOnePlace = Duration.FromDays(1);

    /// <summary>Of the way from mixing to serving: when the dough is divided, most wanted first.</summary>
    private static readonly double[] DivideAfter = [0.33, 0.25, 0.4, 0.5, 0.2, 0.6];

    /// <summary>The dough that was chosen.</summary>
    internal static RescuePlan Of(NightSnapshot night, RescueDough rescue, ReferenceTables tables)
    {
        var begun = night.Begun!;
        var formula = begun.Dough.Formula with { Preferment = null };
        var hydration = Hydration.For(formula, night.Kitchen.Flour, night.Kitchen.Room, tables.Flour);
        var dough = DoughPlan.For(
            rescue.Balls.Value, begun.Shape, formula, night.Kitchen.BatchCapacity, begun.Dough.Ball.Value, hydration, tables.Dough);
        var journey = new DoughJourney(
            Mixed: new Celsius(tables.Dough.TargetDoughCelsius.Value),
            AtRoom: Within(rescue.BallAt - rescue.MixAt),
            InFridge: Duration.Zero,
            Tempering: Within(night.ServeAt - rescue.BallAt),
            night.Kitchen.Room,
            night.Kitchen.Fridge,
            night.Kitchen.AltitudeMetres,
            dough.Ball.Value,
            dough.Batches.Count > 0 ? dough.Batches.Max(batch => batch.Total) : dough.Ball.Value,
            night.Kitchen.Calibration);
        var yeast = YeastDoseModel.For(journey, formula, dough.Flour, null, tables.Fermentation, tables.Dough, tables.Materials);
        return new RescuePlan(
            dough.WithYeast(yeast.ShareOfFlour.Value).Rounded(night.Kitchen.Scale),
            yeast,
            WaterTemperature.For(NightRequests.Water(night, dough, tables.Dough), tables.Flour.Heat),
            rescue.MixAt,
            rescue.BallAt,
            night.ServeAt);
    }

    /// <summary>
    /// The times nearest to the wanted hours that hands and clock allow, with a dose that can be weighed; null when there is
    /// not enough time left.
    /// </summary>
    internal static (RescueDough Dough, RescuePlan Plan)? Soonest(NightSnapshot night, int balls, Instant now, ReferenceTables tables)
    {
        var hours = tables.Steps.RescueDough;
        var earliest = now + Duration.FromMinutes(5);
        var starts =
            from quarters in Enumerable.Range((int)(hours.ShortestHours * 4), (int)((hours.LongestHours - hours.ShortestHours) * 4) + 1)
            let mixAt = night.ServeAt - Grid * quarters
            where mixAt >= earliest
            orderby Math.Abs(quarters / 4.0 - hours.WantedHours), quarters
            select mixAt;
        foreach (var mixAt in starts)
        {
            var times = DivideAfter
                .Select(part => new RescueDough(new PieCount(balls), mixAt, mixAt + OnGrid((night.ServeAt - mixAt) * part)))
                .FirstOrDefault(one => Hands(night, one, tables).All(busy => night.Away.All(away => away.Until <= busy.From || away.From >= busy.Until)));
            if (times is not null && Of(night, times, tables) is { Yeast.Conflicts.Count: 0 } plan)
            {
                return (times, plan);
            }
        }

        return null;
    }

    /// <summary>Whether a dough of these times can still be baked for a night served then: its yeast follows the hours.</summary>
    public static bool Fits(RescueDough rescue, Instant serveAt, ReferenceTables tables) =>
        rescue.BallAt < serveAt
        && serveAt - rescue.MixAt >= Duration.FromHours(tables.Steps.RescueDough.ShortestHours)
        && serveAt - rescue.MixAt <= Duration.FromHours(tables.Steps.RescueDough.LongestHours);

    /// <summary>When the second dough needs hands: then they are not there for anything else.</summary>
    internal static IReadOnlyList<HostAway> Hands(NightSnapshot night, RescueDough rescue, ReferenceTables tables)
    {
        var knead = night.Kitchen.Kneading == KneadingWay.ByHand ? StepName.KneadByHand : StepName.KneadMixer;
        var made = rescue.MixAt + night.Kitchen.LengthOf(StepName.Mix, tables.Steps) + night.Kitchen.LengthOf(knead, tables.Steps);
        return
        [
            new HostAway(rescue.MixAt, made),
            new HostAway(
                Instant.Max(rescue.BallAt, made),
                Instant.Max(rescue.BallAt, made) + night.Kitchen.LengthOf(StepName.BallEach, tables.Steps) * rescue.Balls.Value),
        ];
    }

    private static Duration Within(Duration length) => Duration.Max(Duration.Zero, Duration.Min(length, LongestInOnePlace));

    private static Duration OnGrid(Duration length) => Duration.FromMinutes(5 * Math.Round(length.TotalMinutes / 5));
}
