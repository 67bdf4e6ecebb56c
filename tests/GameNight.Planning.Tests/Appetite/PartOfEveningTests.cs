using CsCheck;
using GameNight.Planning.Appetite;
using GameNight.Planning.Guests;
using GameNight.Planning.Quantities;
using GameNight.Planning.Safety;
using GameNight.Planning.Timeline;
using GameNight.TestKit;
using NodaTime;
using static GameNight.TestKit.Nights.NightBuilder;

namespace GameNight.Planning.Tests.Appetite;

/// <summary>Coming late, leaving early, and how many may play.</summary>
public class PartOfEveningTests
{
    private static readonly Gen<Duration?> AnyTime = Gen.Int[-1, 600].Select(minutes => minutes < 0 ? (Duration?)null : Duration.FromMinutes(minutes));
    private static readonly Gen<Duration?> AnyLength = Gen.Int[0, 720].Select(minutes => minutes == 0 ? (Duration?)null : Duration.FromMinutes(minutes));

    private static AppetiteTable Table => SharedFolder.Tables.Appetite;

    [Theory]
    [InlineData(null, null, 240, 1)]
    [InlineData(0, 240, 240, 1)]
    [InlineData(90, null, 240, 0.8)]
    [InlineData(null, 90, 240, 0.8)]
    [InlineData(45, null, 240, 0.9)]
    [InlineData(180, null, 240, 0.35)]
    [InlineData(220, null, 240, 0.35)]
    [InlineData(90, null, null, 0.8)]
    [InlineData(60, null, 120, 0.8)]
    [InlineData(45, 135, 240, 0.8)]
    [InlineData(null, 0, 240, 0)]
    public void Who_misses_the_eating_eats_what_the_table_says(int? comes, int? leaves, int? length, double appetite) => Assert.Equal(
        appetite,
        PartOfEvening.Appetite(new Stay(Minutes(comes), Minutes(leaves)), Minutes(length), Table),
        1e-12);

    [Fact]
    public void To_come_later_or_to_leave_earlier_never_makes_hungrier() =>
        Gen.Select(AnyTime, AnyTime, AnyLength, Gen.Int[0, 120]).Sample((comes, leaves, length, more) =>
        {
            var said = PartOfEvening.Appetite(new Stay(comes, leaves), length, Table);
            var later = PartOfEvening.Appetite(new Stay((comes ?? Duration.Zero) + Duration.FromMinutes(more), leaves), length, Table);
            var earlier = PartOfEvening.Appetite(
                new Stay(comes, leaves is { } until ? Duration.Max(Duration.Zero, until - Duration.FromMinutes(more)) : Duration.FromMinutes(more)), length, Table);

            Assert.InRange(said, 0, 1);
            Assert.True(later <= said + 1e-12);
            Assert.True(leaves is null && more > 600 || earlier <= said + 1e-12);
        });

    [Fact]
    public void A_late_guest_moves_the_forecast_by_that_part_and_the_reason_says_so()
    {
        var whole = Of([Guest("a"), Guest("b")]);
        var late = Of([Guest("a"), Guest("b") with { Stay = new Stay(ComesAfter: Duration.FromMinutes(90)) }]);

        Assert.Equal(0.8 * whole.Eaters[1].ExpectedSlices, late.Eaters[1].ExpectedSlices, 1e-9);
        Assert.Equal(whole.Eaters[0], late.Eaters[0]);
        Assert.Equal(whole.People, late.People);
        var reason = Assert.Single(late.Because.OfType<LateAndEarlyCounted>());
        Assert.Equal((1, 0, Duration.FromHours(3)), (reason.Late, reason.Early, reason.EatingTime));
        Assert.Equal(0.8, reason.OfUsual.Value, 1e-12);
        Assert.Empty(whole.Because.OfType<LateAndEarlyCounted>());
    }

    [Fact]
    public void A_share_that_is_given_goes_before_the_times()
    {
        var guest = new GuestSnapshot(
            "a", AnswerState.Coming, [AnEater("a") with { Stays = new Share(0.5) }], Stay: new Stay(ComesAfter: Duration.FromHours(3)));

        Assert.Equal(0.5 * Of([Guest("a")]).Eaters[0].ExpectedSlices, Of([guest]).Eaters[0].ExpectedSlices, 1e-9);
    }

    [Fact]
    public void Chances_of_too_few_and_too_many_are_those_of_counting_every_outcome() =>
        Gen.Select(Gen.Select(Gen.Enum<AnswerState>(), Gen.Int[0, 2], Gen.Bool).Array[1, 7], Gen.Int[1, 9], Gen.Int[0, 9]).Sample((rows, fewest, more) =>
        {
            GuestSnapshot[] guests = [.. rows.Select((row, index) => new GuestSnapshot(
                $"g{index}", row.Item1,
                [.. Enumerable.Range(0, 1 + row.Item2).Select(eater => AnEater($"g{index}+{eater}", eatsHere: row.Item3))]))];
            var players = Of(guests, new PlayersWanted(fewest, fewest + more)).Players!;

            var (few, many) = (0.0, 0.0);
            for (var outcome = 0; outcome < 1 << guests.Length; outcome++)
            {
                var (chance, heads) = (1.0, 0);
                for (var index = 0; index < guests.Length; index++)
                {
                    var comes = Table.Of(guests[index].Answer).Probability;
                    var isHere = (outcome >> index & 1) == 1;
                    chance *= isHere ? comes : 1 - comes;
                    heads += isHere ? guests[index].Eaters.Count : 0;
                }

                few += heads < fewest ? chance : 0;
                many += heads > fewest + more ? chance : 0;
            }

            Assert.Equal(few, players.TooFew.Value, 1e-9);
            Assert.Equal(many, players.TooMany.Value, 1e-9);
        }, iter: 200);

    [Fact]
    public void Nobody_asks_for_players_where_nobody_said_how_many()
    {
        Assert.Null(Of([Guest("a")]).Players);
        Assert.Null(Of([Guest("a")], new PlayersWanted()).Players);
        Assert.Equal(0, Of([Guest("a")], new PlayersWanted(Fewest: 1)).Players!.TooMany.Value);
    }

    [Fact]
    public void Times_and_players_that_cannot_be_are_told()
    {
        var check = new SnapshotCheck(SharedFolder.Tables);
        IReadOnlyList<string> Fields(NightSnapshot night) => [.. check.Problems(night).Select(problem => $"{problem.Field} {problem.Fault}")];
        NightSnapshot Staying(Stay stay) => ANight().Build() with { Guests = [Guest("a") with { Stay = stay }] };

        Assert.Empty(Fields(Staying(new Stay(Duration.Zero, Duration.FromHours(24)))));
        Assert.Equal(["guests[a].stay BackToFront"], Fields(Staying(new Stay(Duration.FromHours(2), Duration.FromHours(2)))));
        Assert.Equal(["guests[a].stay.comesAfterMinutes OutOfRange"], Fields(Staying(new Stay(Duration.FromHours(-1)))));
        Assert.Equal(["players BackToFront"], Fields(ANight().Build() with { Players = new PlayersWanted(5, 4) }));
        Assert.Equal(["players.fewest OutOfRange"], Fields(ANight().Build() with { Players = new PlayersWanted(0) }));
    }

    [Fact]
    public void The_plan_cautions_about_kept_slices_and_says_which_pies_come_before_a_late_guest()
    {
        var planner = new NightPlanner(SharedFolder.Tables);
        var night = ANight().WithGuests(9).Build();
        night = night with { Guests = [.. night.Guests.Skip(1), night.Guests[0] with { Stay = new Stay(Duration.FromMinutes(40), Duration.FromMinutes(75)) }] };

        var plan = planner.Plan(night, Now, Effort.Quick);

        Assert.Contains(plan.Cautions, caution => caution.Kind == CautionKind.SlicesKept);
        Assert.DoesNotContain(planner.Plan(ANight().WithGuests(9).Build(), Now, Effort.Quick).Cautions, caution => caution.Kind == CautionKind.SlicesKept);
        var part = Assert.Single(PartOfTheNight.Of(night, plan));
        Assert.Equal((night.ServeAt + Duration.FromMinutes(40), night.ServeAt + Duration.FromMinutes(75)), (part.ComesAt, part.LeavesAt));
        var served = plan.Timeline.Steps.Where(step => step.Kind == StepKind.Serve).Select(step => step.End).ToList();
        Assert.Equal(served.Count, part.PiesBefore + part.PiesWhileThere + part.PiesAfter);
        Assert.True(part is { PiesBefore: > 0, PiesWhileThere: > 0, PiesAfter: > 0 });
        Assert.All(served.Order().Take(part.PiesBefore), at => Assert.True(at < part.ComesAt));
        Assert.Equal(plan.Slices.Eaters[^1].ExpectedSlices / plan.Slices.Eaters[^1].Chance.Value, part.Slices, 1e-9);
    }

    [Fact]
    public void A_night_to_which_nobody_comes_is_a_plan_of_no_pies()
    {
        var night = ANight().WithGuests(4, AnswerState.NotComing).But(one => one with { Players = new PlayersWanted(3, 5) }).Build();

        var plan = new NightPlanner(SharedFolder.Tables).Plan(night, Now, Effort.Quick);

        Assert.Equal((0, 0, 0.0), (plan.Pies.Count.Value.Value, plan.Dough.Balls, plan.Slices.People.Expected));
        Assert.Equal(1, plan.Slices.Players!.TooFew.Value, 1e-12);
        Assert.Empty(PartOfTheNight.Of(night, plan));
    }

    private static Duration? Minutes(int? minutes) => minutes is { } of ? Duration.FromMinutes(of) : null;

    private static GuestSnapshot Guest(string id) => new(id, AnswerState.Coming, [AnEater(id)]);

    private static SlicesForecast Of(IReadOnlyList<GuestSnapshot> guests, PlayersWanted? players = null) =>
        AppetiteModel.Forecast(guests, new Grams(320), 8, Table, players: players).Forecast;
}
