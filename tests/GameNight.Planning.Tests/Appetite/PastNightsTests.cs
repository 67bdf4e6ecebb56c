using CsCheck;
using GameNight.Planning.Appetite;
using GameNight.Planning.Guests;
using GameNight.Planning.Quantities;
using GameNight.TestKit;
using MathNet.Numerics;
using MathNet.Numerics.Integration;
using static GameNight.TestKit.Nights.NightBuilder;

namespace GameNight.Planning.Tests.Appetite;

public class PastNightsTests
{
    private static readonly AppetiteTable Table = SharedFolder.Tables.Appetite;
    private static readonly Grams Ball = new(320);

    private static readonly Gen<PastEvening> Evenings = Gen.Select(
        Gen.Int[1, 20], Gen.Enum<AnswerState>(), Gen.Bool, Gen.Int[0, 14], Gen.Bool, Gen.Enum<Hunger>(),
        (ago, answer, came, slices, ranOut, hunger) =>
            new PastEvening(ago, answer, came, came ? slices : null, new Grams(45), came ? ranOut : null, hunger));

    [Fact]
    public void Without_past_nights_the_table_is_believed()
    {
        var forecast = Forecast(Guest("a"), Guest("b", AnswerState.Undecided));

        Assert.Equal([0.95, 0.6], forecast.Eaters.Select(eater => eater.Chance.Value));
        Assert.Null(forecast.Past);
    }

    [Fact]
    public void Who_never_came_when_undecided_is_expected_less_and_who_always_did_more()
    {
        var nights = Enumerable.Range(1, 6).ToList();
        var forecast = Forecast(
            Guest("never", AnswerState.Undecided, [.. nights.Select(ago => new PastEvening(ago, AnswerState.Undecided, Came: false))]),
            Guest("always", AnswerState.Undecided, [.. nights.Select(ago => new PastEvening(ago, AnswerState.Undecided, Came: true))]));

        // By hand: a prior of 0.6 that weighs 6 nights, and six nights discounted by 0.95: 5.298.
        var weight = (1 - Math.Pow(0.95, 6)) / (1 - 0.95);
        Assert.Equal(0.6 * 6 / (6 + weight), forecast.Eaters[0].Chance.Value, 1e-12);
        Assert.Equal((0.6 * 6 + weight) / (6 + weight), forecast.Eaters[1].Chance.Value, 1e-12);
        var never = Assert.Single(forecast.Past!, row => row.EaterId == "never");
        Assert.Equal((6, 0.6), (never.Answered, never.ChanceBefore.Value));
        Assert.Equal(forecast.Eaters[0].Chance, never.Chance);
    }

    [Fact]
    public void Another_answer_says_nothing_of_this_one() => Assert.Equal(
        0.6,
        Forecast(Guest("a", AnswerState.Undecided, [new PastEvening(1, AnswerState.Coming, Came: false)])).Eaters[0].Chance.Value);

    [Fact]
    public void A_no_is_taken_at_its_word_whatever_was_before() => Assert.Equal(
        0,
        Forecast(Guest("a", AnswerState.NotComing, [new PastEvening(1, AnswerState.NotComing, Came: true, Slices: 9)])).Slices.Expected);

    [Fact]
    public void Slices_eaten_move_the_appetite_as_the_conjugate_says()
    {
        // By hand, in slices of 40 g: 0.95 pies of 250 g are 5.9375; the gamma has shape 1/0.45^2 and the rate that goes with it.
        var shape = 1 / (0.45 * 0.45);
        var rate = shape / 5.9375;
        var told = Forecast(Guest("a", past:
        [
            new PastEvening(1, AnswerState.Coming, true, 9), new PastEvening(3, AnswerState.Coming, true, 8),
        ]));

        var expected = (shape + 9 + 0.95 * 0.95 * 8) / (rate + 1 + 0.95 * 0.95);
        Assert.Equal(expected, Assert.Single(told.Past!).Slices, 1e-9);
        Assert.Equal(expected * told.Eaters[0].Chance.Value, told.Eaters[0].ExpectedSlices, 1e-9);
    }

    [Fact]
    public void Slices_of_another_size_count_by_their_dough()
    {
        var small = Forecast(Guest("a", past: [new PastEvening(1, AnswerState.Coming, true, 10, new Grams(20))]));
        var large = Forecast(Guest("a", past: [new PastEvening(1, AnswerState.Coming, true, 5, new Grams(40))]));

        Assert.True(small.Past![0].Slices < large.Past![0].SlicesBefore, "ten slices of half the size are five, fewer than the table's six");
        Assert.True(Math.Abs(small.Past[0].Slices - large.Past[0].Slices) < 0.4);
    }

    [Fact]
    public void A_companion_keeps_what_is_believed_of_everybody()
    {
        var guest = Guest("a", past: [new PastEvening(1, AnswerState.Coming, true, 0)]);
        var forecast = Forecast(guest with { Eaters = [.. guest.Eaters, AnEater("a+1")] });

        Assert.Equal(5.9375 * forecast.Eaters[1].Chance.Value, forecast.Eaters[1].ExpectedSlices, 1e-9);
        Assert.True(forecast.Eaters[0].ExpectedSlices < forecast.Eaters[1].ExpectedSlices);
    }

    [Fact]
    public void A_night_that_ran_out_is_a_lower_bound() => Gen.Int[1, 14].Sample(slices =>
    {
        var (before, counted, atLeast) = (Mean(null, false), Mean(slices, false), Mean(slices, true));

        Assert.True(atLeast > counted, $"{slices}: {atLeast} is not over {counted}");
        Assert.True(atLeast >= before, $"{slices}: {atLeast} is under {before}");

        static double Mean(int? slices, bool ranOut) => Forecast(Guest("a", past: slices is null
            ? null
            : [new PastEvening(1, AnswerState.Coming, true, slices, RanOut: ranOut)])).Eaters[0].ExpectedSlices;
    });

    [Fact]
    public void A_lower_bound_is_what_a_general_library_integrates() =>
        Gen.Select(Gen.Double[2, 12], Gen.Double[0.4, 2], Gen.Int[1, 20], Gen.Double[0.5, 1.5]).Sample((shape, rate, slices, exposure) =>
        {
            var ours = new GammaPrior(shape, rate).After([new AtLeast(slices, exposure, 1)]);

            var most = 60 / rate;
            var mass = Integral(_ => 1);
            var mean = Integral(theta => theta) / mass;
            var variance = Integral(theta => theta * theta) / mass - mean * mean;
            Assert.Equal(1, ours.Mean / mean, 1e-4);
            Assert.Equal(1, ours.Shape / ours.Rate / ours.Rate / variance, 1e-3);

            // P(Poisson(m) >= s) is the lower regularised incomplete gamma function of s and m.
            double Integral(Func<double, double> of) => GaussLegendreRule.Integrate(
                theta => of(theta) * Math.Pow(theta, shape - 1) * Math.Exp(-rate * theta) * SpecialFunctions.GammaLowerRegularized(slices, theta * exposure),
                0, most, 512);
        }, iter: 60);

    [Fact]
    public void The_gamma_function_is_that_of_a_general_library() => Gen.Double[-9, 13].Sample(log =>
    {
        var x = Math.Exp(log);
        Assert.Equal(0, (LogGamma.Of(x) - SpecialFunctions.GammaLn(x)) / Math.Max(1, Math.Abs(SpecialFunctions.GammaLn(x))), 1e-11);
    });

    [Fact]
    public void A_group_of_big_eaters_moves_what_a_new_guest_is_believed_to_eat()
    {
        GuestSnapshot[] hungry = [.. Enumerable.Range(0, 8).Select(index => Guest(
            $"g{index}", past: [.. Enumerable.Range(1, 5).Select(ago => new PastEvening(ago, AnswerState.Coming, true, 8))]))];

        var few = Forecast([.. hungry[..4], Guest("new")]);
        var many = Forecast([.. hungry, Guest("new")]);

        Assert.Equal(5.9375, few.Eaters[^1].ExpectedSlices / few.Eaters[^1].Chance.Value, 1e-9);
        Assert.InRange(many.Eaters[^1].ExpectedSlices / many.Eaters[^1].Chance.Value, 6.2, 8);
        Assert.Equal(8, Assert.Single(many.Because.OfType<AppetiteFromPastNights>()).Guests);
    }

    [Fact]
    public void A_group_whose_undecided_never_come_is_learned_and_stays_between_nought_and_one()
    {
        GuestSnapshot[] guests = [.. Enumerable.Range(0, 6).Select(index => Guest(
            $"g{index}", AnswerState.Undecided, [.. Enumerable.Range(1, 8).Select(ago => new PastEvening(ago, AnswerState.Undecided, Came: false))]))];

        var forecast = Forecast([.. guests, Guest("new", AnswerState.Undecided)]);

        var learned = Assert.Single(forecast.Because.OfType<ChanceFromPastNights>());
        Assert.Equal((AnswerState.Undecided, 6), (learned.Answer, learned.Guests));
        Assert.InRange(forecast.Eaters[^1].Chance.Value, 0.02, 0.4);
        Assert.All(forecast.Eaters, eater => Assert.InRange(eater.Chance.Value, 0.005, 0.4));
    }

    [Fact]
    public void Whatever_happened_before_the_forecast_is_sound_and_the_order_of_guests_nothing() =>
        Gen.Select(Evenings.Array[0, 15].Array[1, 9], Gen.Int[0, 8]).Sample((pasts, turn) =>
        {
            GuestSnapshot[] guests = [.. pasts.Select((past, index) =>
                Guest($"g{index}", (AnswerState)(index % 5), past))];
            var forecast = Forecast(guests);
            var turned = Forecast([.. guests[(turn % guests.Length)..], .. guests[..(turn % guests.Length)]]);

            Assert.All(forecast.Eaters, eater => Assert.InRange(eater.Chance.Value, 0, 1));
            Assert.InRange(forecast.Slices.Expected, 0, 20 * guests.Length);
            Assert.Equal(forecast.Slices.Expected, turned.Slices.Expected, 1e-3);
        }, iter: 40);

    private static GuestSnapshot Guest(string id, AnswerState answer = AnswerState.Coming, IReadOnlyList<PastEvening>? past = null) =>
        new(id, answer, [AnEater(id)], Past: past);

    private static SlicesForecast Forecast(params GuestSnapshot[] guests) =>
        AppetiteModel.Forecast(guests, Ball, 8, Table).Forecast;
}
