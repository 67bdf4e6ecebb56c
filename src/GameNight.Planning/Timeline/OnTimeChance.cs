using GameNight.Planning.Quantities;
using NodaTime;

namespace GameNight.Planning.Timeline;

/// <summary>How likely the timeline keeps its times although steps take longer or shorter than planned.</summary>
/// <param name="FirstPie">The first pie is on the table within <see cref="OnTime.Tolerance"/> of the serving time.</param>
/// <param name="LastPie">The last one within <see cref="OnTime.LastTolerance"/> of its own.</param>
/// <param name="FirstLateNineInTen">The first pie is no later than this after the serving time, nine times in ten.</param>
/// <param name="LastLateNineInTen">The same for the last pie and its planned time.</param>
/// <param name="Decisive">
/// Steps that most often decide when the first pie is there, with the share of evenings in which they do; the most first.
/// </param>
public sealed record OnTimeChance(
    Share FirstPie, Share LastPie, Duration FirstLateNineInTen, Duration LastLateNineInTen, IReadOnlyList<DecisiveStep> Decisive);

/// <summary>A step of the chain that nothing else waits beside: a minute longer there is a minute later on the table.</summary>
public sealed record DecisiveStep(string StepId, Share Evenings);
