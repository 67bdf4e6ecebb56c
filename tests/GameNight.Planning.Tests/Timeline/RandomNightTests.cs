using CsCheck;
using GameNight.Planning.Timeline;
using NodaTime;

namespace GameNight.Planning.Tests.Timeline;

public class RandomNightTests
{
    private const int QuickNights = 1000;
    private const int SolvedNights = 10;

    private static readonly Effort Little = new(1);

    [Fact]
    public void Keeps_every_lag_on_random_nights_placed_quickly() =>
        RandomNights.Any.Sample(night => KeepsItsRules(night, Effort.Quick), iter: QuickNights, threads: 1);

    [Fact]
    public void Keeps_every_lag_on_random_nights_placed_by_the_solver() =>
        RandomNights.Any.Sample(night => KeepsItsRules(night, Little), iter: SolvedNights, threads: 1);

    [Fact]
    public void Gives_the_same_answer_to_the_same_request() => RandomNights.Any.Sample(
        night => Described(night.Plan(Little)) == Described(night.Plan(Little)), iter: SolvedNights, threads: 1);

    [Fact]
    public void Moves_every_step_with_the_night() => Gen.Select(RandomNights.Any, Gen.Int[-100_000, 100_000]).Sample(
        (night, minutes) =>
        {
            var by = Duration.FromMinutes(minutes);

            var here = night.Plan(Little);
            var there = night.Later(by).Plan(Little);

            return here.Steps.Select(step => step with { Start = step.Start + by, End = step.End + by })
                .SequenceEqual(there.Steps);
        },
        iter: SolvedNights,
        threads: 1);

    [Fact]
    public void Has_the_last_pie_no_later_with_more_hands() => RandomNights.Any.Sample(
        night =>
        {
            var alone = night.Plan(Little);
            var helped = (night with { Hands = night.Hands + 1 }).Plan(Little);

            return alone.Quality != TimelineQuality.Proved
                || helped.Quality != TimelineQuality.Proved
                || helped.LastPieAt <= alone.LastPieAt;
        },
        iter: SolvedNights,
        threads: 1);

    [Fact]
    public void Is_never_worse_by_the_solver_than_placed_quickly() => RandomNights.Any.Sample(
        night =>
        {
            var quick = night.Plan(Effort.Quick);
            var solved = night.Plan(Little);

            return quick.Steps.Count == 0 || (solved.Steps.Count > 0 && (night.MixAt is not null || solved.LastPieAt <= quick.LastPieAt));
        },
        iter: SolvedNights,
        threads: 1);

    private static bool KeepsItsRules(TimelineRequest night, Effort effort)
    {
        var timeline = night.Plan(effort);

        Assert.Empty(TimelineCheck.Breaches(night, timeline));
        Assert.True(night.Pies == 0 || timeline.Steps.Count > 0 || timeline.Conflicts.Count > 0);
        if (timeline.Steps.Count > 0)
        {
            Assert.Equal(night.ServeAt, timeline.FirstPieAt);
            Assert.InRange(timeline.ColdFermentLength, night.ColdFerment.Shortest, night.ColdFerment.Longest);
        }

        return true;
    }

    private static string Described(HostTimeline timeline) =>
        $"{timeline with { Steps = [], Conflicts = [] }}\n{string.Join('\n', timeline.Steps)}\n{string.Join('\n', timeline.Conflicts)}";
}
