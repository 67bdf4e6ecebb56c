using GameNight.Nights.Records;
using GameNight.Planning;
using GameNight.Planning.Quantities;

namespace GameNight.Nights.PastNights;

/// <summary>The slices of a night: planned, baked, left, and what follows from them. What was not noted stays unknown.</summary>
/// <param name="PlannedPies">Null when no plan was ever made.</param>
/// <param name="Wanted">What the plan expected people to eat.</param>
/// <param name="BakedPies">Null when not noted.</param>
/// <param name="Left">Null when not noted, or not for every pie.</param>
public sealed record SlicesAccount(
    int SlicesPerPie, PieCount? PlannedPies, Estimate<double>? Wanted, PieCount? BakedPies, double? Left)
{
    public int? Planned => PlannedPies?.Value * SlicesPerPie;

    public int? Baked => BakedPies?.Value * SlicesPerPie;

    /// <summary>Null when something is not noted, or when more would be left than was baked.</summary>
    public double? Eaten => Baked - Left is { } eaten and >= 0 ? eaten : null;

    /// <param name="otherwise">Slices per pie when the plan has no pie to count them on.</param>
    public static SlicesAccount Of(NightPlan? plan, int otherwise, BakeLogFacts? log) => new(
        PerPie(plan) ?? otherwise,
        plan?.Pies.Count.Value,
        plan?.Slices.Slices,
        log?.Baked,
        log is null ? null : LeftOf(log));

    public static int? PerPie(NightPlan? plan) => plan?.Split.Pies is [var first, ..] ? first.Sectors.Sum(sector => sector.Slices) : null;

    /// <summary>As noted for all pies together; else the sum, once as many pies were counted as were baked.</summary>
    private static double? LeftOf(BakeLogFacts log)
    {
        var counted = log.Pies.Where(pie => pie.SlicesLeft is not null).ToList();
        return log.SlicesLeft
            ?? (log.Baked is { } baked && counted.Count >= baked.Value && counted.Count > 0
                ? counted.Sum(pie => pie.SlicesLeft!.Value)
                : null);
    }
}
