using CsCheck;
using GameNight.Planning.Dough;
using GameNight.Planning.Timeline;
using NodaTime;

namespace GameNight.Planning.Tests.Timeline;

/// <summary>Nights of every kind, sensible and not: lags, counts and unavailable hours at random.</summary>
internal static class RandomNights
{
    private static readonly Gen<HostAway> AnyAway =
        Gen.Select(Gen.Int[-6 * 24 * 60, 12 * 60], Gen.Int[-30, 14 * 60], (from, minutes) => new HostAway(
            Evening.SaturdayAt(19, 30) + Duration.FromMinutes(from),
            Evening.SaturdayAt(19, 30) + Duration.FromMinutes(from + minutes)));

    private static readonly Gen<StepDurations> AnyDurations =
        from shop in Gen.Int[0, 120]
        from mix in Gen.Int[0, 20]
        from knead in Gen.Int[0, 25]
        from bulk in Gen.Int[0, 240]
        from ballSeconds in Gen.Int[0, 200]
        from temper in Gen.Int[0, 180]
        from preparation in Gen.Int[0, 90].Array[3]
        from oven in Gen.Int[0, 90].Array[2]
        from pie in Gen.Int[0, 9].Array[6]
        select new StepDurations(
            Duration.FromMinutes(shop),
            Duration.FromMinutes(mix),
            Duration.FromMinutes(knead),
            Duration.FromMinutes(bulk),
            Duration.FromSeconds(ballSeconds),
            Duration.FromMinutes(temper),
            Duration.FromMinutes(preparation[0]),
            Duration.FromMinutes(preparation[1]),
            Duration.FromMinutes(preparation[2]),
            Duration.FromMinutes(oven[0]),
            Duration.FromMinutes(oven[1]),
            Duration.FromMinutes(pie[0]),
            Duration.FromMinutes(pie[1]),
            Duration.FromSeconds(30 + (60 * pie[2])),
            Duration.FromMinutes(2 * pie[3]),
            Duration.FromMinutes(pie[4]),
            Duration.FromMinutes(pie[5]));

    private static readonly Gen<ColdFerment> AnyFerment =
        Gen.Select(Gen.Int[0, 48], Gen.Int[0, 24], Gen.Int[0, 24], (shortest, wanted, longest) => new ColdFerment(
            Duration.FromHours(shortest),
            Duration.FromHours(shortest + wanted),
            Duration.FromHours(shortest + wanted + longest)));

    /// <summary>Usual durations with random counts and hours, or everything at random.</summary>
    public static readonly Gen<TimelineRequest> Any =
        from pies in Gen.Int[0, 25]
        from own in Gen.Int[0, 2]
        from spareBalls in Gen.Int[0, 2]
        from batches in Gen.Int[1, 4]
        from atOnce in Gen.Int[1, 4]
        from hands in Gen.Int[1, 3]
        from isByHand in Gen.Bool
        from hoursAhead in Gen.Int[1, 160]
        from away in AnyAway.Array[0, 8]
        from durations in Gen.OneOf(Gen.Const(Evening.Durations), AnyDurations)
        from ferment in Gen.OneOf(Gen.Const(Evening.ColdFerment), AnyFerment)
        from mixBefore in Gen.Int[20 * 60, 80 * 60]
        from prefermentHours in Gen.Frequency((3, Gen.Const(0)), (1, Gen.Int[1, 30]))
        from isOnTwoDoughs in Gen.Frequency((2, Gen.Const(false)), (1, Gen.Const(true)))
        from second in Gen.Select(Gen.Int[0, 20], Gen.Int[0, 180], Gen.Int[1, 3])
        from wakes in Gen.Frequency((2, Gen.Const(0)), (1, Gen.Int[1, 20]))
        from bowls in Gen.Frequency((2, Gen.Const(0)), (1, Gen.Int[1, 4]))
        from rings in Gen.Frequency((2, Gen.Const(0)), (1, Gen.Int[1, 2]))
        from ahead in Gen.Int[0, 60]
        from isMixChosen in Gen.Frequency((3, Gen.Const(false)), (1, Gen.Const(true)))
        select Evening.Usual with
        {
            Now = Evening.Usual.ServeAt - Duration.FromHours(hoursAhead),
            Away = away,
            Batches = batches,
            Balls = pies + spareBalls,
            Pies = pies,
            OwnPies = Math.Min(own, pies),
            PiesPerBake = atOnce,
            Hands = hands,
            Kneading = isByHand ? KneadingWay.ByHand : KneadingWay.Mixer,
            ColdFerment = ferment,
            Durations = durations,
            SecondDough = isOnTwoDoughs && pies > 0
                ? new SecondDoughWork(Duration.FromMinutes(second.Item1), Duration.FromMinutes(second.Item2), Math.Min(second.Item3, pies))
                : null,
            Preferment = prefermentHours > 0
                ? new PrefermentWork(Duration.FromMinutes(10), Duration.FromHours(prefermentHours))
                : null,
            YeastWakes = wakes > 0 ? Duration.FromMinutes(wakes) : null,
            Bowls = bowls > 0 ? bowls : null,
            HobRings = rings > 0 ? rings : null,
            BallsAhead = Duration.FromMinutes(ahead),
            MixAt = isMixChosen ? Evening.Usual.ServeAt - Duration.FromMinutes(mixBefore) : null,
        };

    /// <summary>The same night some time later, with everything that has a time.</summary>
    public static TimelineRequest Later(this TimelineRequest request, Duration by) => request with
    {
        ServeAt = request.ServeAt + by,
        Now = request.Now + by,
        Away = [.. request.Away.Select(away => new HostAway(away.From + by, away.Until + by))],
        MixAt = request.MixAt + by,
    };
}
