using GameNight.Planning.Guests;

namespace GameNight.Planning.Toppings;

/// <summary>
/// Who got least of what they like on past nights counts more tonight. Our own rule: the share of their best that a guest
/// missed, night by night, each night back counting a tenth less, beside one imagined night on which nothing was missed; a
/// guest who missed half of it all weighs 1.5, and nobody ever more. It moves the sum over all eaters only: nobody is worse
/// off than the worst-off would be without it.
/// </summary>
public static class FairOverTime
{
    public const int UsualPercent = 100;
    public const int MostPercent = 150;

    private const double EachNightBack = 0.9;

    /// <returns>100 to 150.</returns>
    public static int WeightPercent(IReadOnlyList<PastEvening>? past)
    {
        var known = (past ?? []).Where(evening => evening is { Served: not null, Came: not false }).ToList();
        var counted = known.Sum(evening => Math.Pow(EachNightBack, evening.NightsAgo - 1));
        var missed = known.Sum(evening => Math.Pow(EachNightBack, evening.NightsAgo - 1) * (1 - Math.Min(1, evening.Served!.Value.Value)));
        return UsualPercent + (int)Math.Round(Math.Min(MostPercent - UsualPercent, UsualPercent * missed / (1 + counted)));
    }
}
