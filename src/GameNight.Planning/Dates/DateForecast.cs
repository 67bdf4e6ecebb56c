using GameNight.Planning.Quantities;

namespace GameNight.Planning.Dates;

/// <summary>What an evening promises.</summary>
/// <param name="Heads">Probability of each number of people, from 0.</param>
/// <param name="Expected">People expected.</param>
/// <param name="Quorum">Chance that enough people come, and everybody without whom there is no night.</param>
/// <param name="OverTheSeason">Expected, with a bonus for who missed the last nights; what evenings are ranked by.</param>
/// <param name="Chances">By guest.</param>
/// <param name="MissAgain">Guests who missed the last night and say no to this one.</param>
/// <param name="Obstacles">Empty for an evening that can be chosen.</param>
public sealed record DateOutlook(
    DateOption Option,
    IReadOnlyList<double> Heads,
    Estimate<double> Expected,
    Share Quorum,
    double OverTheSeason,
    IReadOnlyDictionary<string, Share> Chances,
    int Works,
    int AtAPinch,
    int No,
    int Silent,
    IReadOnlyList<string> MissAgain,
    IReadOnlyList<DateObstacle> Obstacles)
{
    public bool CanBe => Obstacles.Count == 0;
}

/// <summary>The evenings, best first; those that cannot be come last.</summary>
/// <param name="BestAttended">Most people expected; null when no evening can be.</param>
/// <param name="SurestQuorum">The best chance that enough come. It may be another one than <paramref name="BestAttended"/>.</param>
/// <param name="Fairest">Best with the bonus for who missed the last nights.</param>
/// <param name="Because">What past nights moved for everybody.</param>
public sealed record DateForecast(
    IReadOnlyList<DateOutlook> Evenings, string? BestAttended, string? SurestQuorum, string? Fairest, IReadOnlyList<Reason> Because);
