using CsCheck;
using GameNight.Planning.Dates;
using GameNight.Planning.Guests;
using GameNight.Planning.Timeline;
using GameNight.TestKit;
using NodaTime;

namespace GameNight.Planning.Tests.Dates;

public class DateModelTests
{
    private static readonly Instant Now = Instant.FromUtc(2026, 11, 30, 12, 0);

    private static readonly Gen<DateAnswer?> SomeAnswer = Gen.Int[0, 3].Select(number => number == 3 ? null : (DateAnswer?)number);

    [Fact]
    public void Heads_of_an_evening_are_a_whole_distribution() =>
        Gen.Select(SomeAnswer, Gen.Int[0, 4], Gen.Bool).Array[0, 40].Sample(people =>
        {
            var evening = Evening([.. people.Select((one, index) => AGuest(
                $"g{index}", one.Item1, household: one.Item2 == 0 ? null : $"h{one.Item2}", isHost: one.Item3))]);

            Assert.Equal(1, evening.Heads.Sum(), 1e-12);
            Assert.Equal(evening.Expected.Expected, evening.Heads.Select((p, heads) => p * heads).Sum(), 1e-12);
            Assert.Equal(evening.Expected.Expected, evening.Chances.Values.Sum(chance => chance.Value), 1e-9);
        }, iter: 300);

    [Fact]
    public void A_better_answer_never_makes_an_evening_worse() =>
        Gen.Select(SomeAnswer.Array[1, 25], Gen.Int[0, 24], Gen.Int[1, 25]).Sample((answers, which, quorum) =>
        {
            which %= answers.Length;
            var order = new DateAnswer?[] { DateAnswer.No, null, DateAnswer.AtAPinch, DateAnswer.Works };
            var better = order[Math.Min(3, Array.IndexOf(order, answers[which]) + 1)];

            var before = Evening([.. answers.Select((said, index) => AGuest($"g{index}", said))], quorum);
            answers[which] = better;
            var after = Evening([.. answers.Select((said, index) => AGuest($"g{index}", said))], quorum);

            Assert.True(after.Expected.Expected >= before.Expected.Expected - 1e-12);
            Assert.True(after.Quorum.Value >= before.Quorum.Value - 1e-12);
        }, iter: 300);

    [Fact]
    public void A_household_that_says_the_same_comes_together_or_not_at_all()
    {
        var evening = Evening([AGuest("a", DateAnswer.AtAPinch, household: "h"), AGuest("b", DateAnswer.AtAPinch, household: "h")], quorum: 2);

        var p = evening.Chances["a"].Value;
        Assert.Equal([1 - p, 0, p], evening.Heads.Select(chance => chance).ToArray());
        Assert.Equal(p, evening.Quorum.Value, 1e-12);
    }

    [Fact]
    public void Chances_of_nought_and_one_stay_what_they_are()
    {
        Assert.Equal(0, Evening([AGuest("a", DateAnswer.No)]).Quorum.Value);
        Assert.Equal(1, Evening([AGuest("h", null, isHost: true)]).Quorum.Value);
        Assert.Equal([0.0, 1.0], Evening([AGuest("h", null, isHost: true)]).Heads);
        Assert.Equal(0, Evening([AGuest("a", DateAnswer.Works, mustHave: true), AGuest("b", DateAnswer.No, mustHave: true)]).Quorum.Value);
        Assert.Equal(0, Evening([]).Quorum.Value);
    }

    [Fact]
    public void A_pinch_is_worth_what_the_guests_maybes_were_worth()
    {
        // By hand: Beta(0.6 * 6, 0.4 * 6) after four nights that weigh 1, .95, .9025, .857375 and all four kept.
        var past = Enumerable.Range(1, 4).Select(ago => new PastEvening(ago, AnswerState.Undecided, Came: true)).ToList();
        var weight = 1 + 0.95 + 0.9025 + 0.857375;

        var kept = Evening([AGuest("a", DateAnswer.AtAPinch) with { Past = past }]);
        var broken = Evening([AGuest("a", DateAnswer.AtAPinch) with { Past = [.. past.Select(night => night with { Came = false })] }]);

        Assert.Equal((3.6 + weight) / (6 + weight), kept.Chances["a"].Value, 1e-12);
        Assert.Equal(3.6 / (6 + weight), broken.Chances["a"].Value, 1e-12);
        Assert.Equal(Evening([AGuest("a", null)]).Chances["a"], Evening([AGuest("a", null) with { Past = past }]).Chances["a"]);
    }

    [Fact]
    public void Who_is_needed_bounds_the_chance_and_a_no_of_theirs_rules_an_evening_out()
    {
        List<DateGuest> guests = [AGuest("a", DateAnswer.AtAPinch, mustHave: true), AGuest("b", DateAnswer.Works), AGuest("c", DateAnswer.Works)];
        var evening = Evening(guests, quorum: 1);

        Assert.Equal(evening.Chances["a"].Value, evening.Quorum.Value, 1e-12);
        var out_ = Evening([AGuest("a", DateAnswer.No, mustHave: true), .. guests.Skip(1)], quorum: 1);
        Assert.Equal(["a"], Assert.IsType<DateObstacle.MustHaveSaysNo>(Assert.Single(out_.Obstacles)).Guests);
        Assert.False(out_.CanBe);
    }

    [Fact]
    public void The_two_criteria_may_disagree_and_an_evening_that_cannot_be_wins_nothing()
    {
        // Twelve on the fence promise more heads than six who are sure; the six are the surer table of five.
        var guests = Enumerable.Range(0, 12).Select(index => new DateGuest($"g{index}", new Dictionary<string, DateAnswer>
        {
            ["fence"] = DateAnswer.AtAPinch,
            ["sure"] = index < 6 ? DateAnswer.Works : index < 7 ? DateAnswer.AtAPinch : DateAnswer.No,
        })).ToList();
        var request = ARequest(guests, quorum: 5) with { Options = [Option("fence", 12), Option("sure", 13), Option("gone", -1)] };

        var forecast = DateModel.Forecast(request, SharedFolder.Tables.Appetite);

        Assert.Equal("fence", forecast.BestAttended);
        Assert.Equal("sure", forecast.SurestQuorum);
        Assert.Equal("gone", forecast.Evenings[^1].Option.Id);
        Assert.IsType<DateObstacle.HasPassed>(Assert.Single(forecast.Evenings[^1].Obstacles));
    }

    [Fact]
    public void Who_missed_the_last_nights_counts_more_and_missing_twice_running_is_told()
    {
        DateGuest Of(string id, DateAnswer first, DateAnswer second, int missed) =>
            new(id, new Dictionary<string, DateAnswer> { ["1"] = first, ["2"] = second }, MissedInARow: missed);
        var guests = new[] { Of("a", DateAnswer.Works, DateAnswer.No, 0), Of("b", DateAnswer.No, DateAnswer.Works, 2) };
        var request = ARequest(guests, quorum: 1) with { Options = [Option("1", 12), Option("2", 13)] };

        var forecast = DateModel.Forecast(request, SharedFolder.Tables.Appetite);

        Assert.Equal(("1", "2"), (forecast.BestAttended, forecast.Fairest));
        Assert.Equal("2", forecast.Evenings[0].Option.Id);
        Assert.Equal(forecast.Evenings[0].Expected.Expected * (1 + 2 * DateModel.BonusPerMissedNight), forecast.Evenings[0].OverTheSeason, 1e-12);
        Assert.Equal(["b"], forecast.Evenings[1].MissAgain);
        Assert.Empty(forecast.Evenings[0].MissAgain);
    }

    [Fact]
    public void Days_off_and_evenings_taken_rule_an_evening_out_with_their_reason()
    {
        var option = Option("1", 12);
        var taken = new HostAway(option.ServeAt + Duration.FromHours(2), option.ServeAt + Duration.FromHours(5));
        var request = ARequest([], 1) with { Options = [option], EveningsTaken = [taken], DaysOff = [option.Day] };

        var evening = Assert.Single(DateModel.Forecast(request, SharedFolder.Tables.Appetite).Evenings);

        Assert.Equal(
            [new DateObstacle.DayOff(option.Day), new DateObstacle.EveningTaken(taken.From, taken.Until)], evening.Obstacles);
        var later = request with { EveningsTaken = [taken with { From = option.ServeAt + Duration.FromHours(3) }], DaysOff = [] };
        Assert.True(DateModel.Forecast(later, SharedFolder.Tables.Appetite).Evenings[0].CanBe);
    }

    [Fact]
    public void A_dough_of_forty_hours_needs_its_time_and_hands()
    {
        var lead = new DoughLead(
            Duration.FromMinutes(35), Duration.FromMinutes(120), Duration.FromMinutes(20), Duration.FromMinutes(120), Duration.FromMinutes(19),
            new ColdFerment(Duration.FromHours(40), Duration.FromHours(48), Duration.FromHours(72)));
        var work = lead.Mixing + lead.Rest + lead.Balling + lead.Tempering + lead.FirstPie;
        var justInTime = new DateOption("1", Now + work + Duration.FromHours(40), new LocalDate(2026, 12, 2));

        Assert.Empty(Obstacles(justInTime));
        var tooLate = Assert.IsType<DateObstacle.DoughTooLate>(Assert.Single(Obstacles(justInTime with { ServeAt = justInTime.ServeAt - Duration.FromMinutes(1) })));
        Assert.Equal(Now - Duration.FromMinutes(1), tooLate.MixBy);

        var far = justInTime with { ServeAt = Now + Duration.FromDays(10) };
        var from = far.ServeAt - work - Duration.FromHours(72);
        var until = far.ServeAt - work - Duration.FromHours(40);
        var busy = new HostAway(from - Duration.FromDays(1), until + Duration.FromDays(1));
        Assert.Equal(new DateObstacle.NoHandsForDough(from, until), Assert.Single(Obstacles(far, busy)));
        Assert.Empty(Obstacles(far, busy with { Until = until }));

        IReadOnlyList<DateObstacle> Obstacles(DateOption option, params IReadOnlyList<HostAway> away) => DateModel.Forecast(
            ARequest([], 1) with { Options = [option], Dough = lead, HandsAway = away }, SharedFolder.Tables.Appetite).Evenings[0].Obstacles;
    }

    [Fact]
    public void Two_hundred_guests_and_forty_evenings_agree_with_a_count_by_lot()
    {
        var lots = new Random(7);
        var guests = Enumerable.Range(0, 200).Select(index => new DateGuest($"g{index}", Enumerable.Range(0, 40)
            .Where(_ => lots.Next(5) > 0).ToDictionary(option => $"{option}", _ => (DateAnswer)lots.Next(3)))).ToList();
        var request = ARequest(guests, quorum: 90) with { Options = [.. Enumerable.Range(0, 40).Select(day => Option($"{day}", 12 + day))] };

        var evening = DateModel.Forecast(request, SharedFolder.Tables.Appetite).Evenings[0];

        var chances = evening.Chances.Values.Select(chance => chance.Value).ToList();
        var draws = Enumerable.Range(0, 20_000).Count(_ => chances.Count(chance => lots.NextDouble() < chance) >= 90) / 20_000.0;
        Assert.Equal(draws, evening.Quorum.Value, 0.015);
        Assert.Equal(1, evening.Heads.Sum(), 1e-10);
    }

    private static DateGuest AGuest(
        string id, DateAnswer? said, string? household = null, bool mustHave = false, bool isHost = false) => new(
            id,
            said is { } answer ? new Dictionary<string, DateAnswer> { ["1"] = answer } : [],
            Household: household,
            MustHave: mustHave,
            IsHost: isHost);

    private static DateOption Option(string id, int daysOn) =>
        new(id, Now + Duration.FromDays(daysOn) + Duration.FromHours(6), Now.InUtc().Date.PlusDays(daysOn));

    private static DateOutlook Evening(IReadOnlyList<DateGuest> guests, int quorum = 1) =>
        DateModel.Forecast(ARequest(guests, quorum) with { Options = [Option("1", 12)] }, SharedFolder.Tables.Appetite).Evenings[0];

    private static DateRequest ARequest(IReadOnlyList<DateGuest> guests, int quorum) =>
        new([], guests, quorum, Now, null, [], [], [], Duration.FromHours(3));
}
