using GameNight.Planning.Heat;
using GameNight.Planning.Quantities;
using NodaTime;

namespace GameNight.Planning.Tests.Heat;

public class BallTimesTests
{
    [Fact]
    public void An_open_ball_on_the_counter_is_ready_in_about_two_hours()
    {
        var time = Tempered(250)!;

        Assert.InRange(time.Expected.TotalMinutes, 110, 140);
        Assert.Equal(0.7, time.Low / time.Expected, 1e-9);
        Assert.Equal(1.3, time.High / time.Expected, 1e-9);
    }

    [Fact]
    public void A_box_a_larger_ball_and_a_colder_room_take_longer()
    {
        var usual = Tempered(250)!.Expected;

        Assert.True(Tempered(250, place: DoughPlace.LiddedBox)!.Expected > usual);
        Assert.True(Tempered(350)!.Expected > usual);
        Assert.True(Tempered(250, room: 19)!.Expected > usual);
        Assert.True(Tempered(250, dough: 8)!.Expected < usual);
    }

    [Fact]
    public void In_a_cool_room_a_ball_is_warm_enough_near_the_rooms_temperature()
    {
        Assert.Equal(new Celsius(11.5), BallTimes.WarmEnough(new Celsius(15.5), AKitchen.Table));
        Assert.Equal(new Celsius(16), BallTimes.WarmEnough(new Celsius(20), AKitchen.Table));
        Assert.NotNull(Tempered(250, room: 15.5));
        Assert.Equal(Duration.Zero, Tempered(250, dough: 8, room: 12)!.High);
    }

    [Fact]
    public void A_ball_that_is_warm_already_needs_no_time() =>
        Assert.Equal(Duration.Zero, Tempered(250, dough: 17)!.High);

    [Fact]
    public void Few_balls_cool_at_their_own_pace_and_many_at_the_pace_of_the_fridge()
    {
        var one = Cold(1)!.Expected;

        Assert.Equal(one, Cold(8)!.Expected);
        Assert.True(Cold(150)!.Expected > one);
        Assert.Equal(2, Cold(400)!.Expected / Cold(200)!.Expected, 1e-9);
    }

    [Fact]
    public void A_fan_cools_faster_than_still_air_and_that_faster_than_a_box()
    {
        var (fan, still, box) = (Cold(4, DoughPlace.FanFridge)!, Cold(4, DoughPlace.StillFridge)!, Cold(4, DoughPlace.LiddedBox)!);

        Assert.True(fan.Expected < still.Expected && still.Expected < box.Expected);
        Assert.Equal(Duration.Zero, BallTimes.UntilCold(
            new Grams(250), 4, new Celsius(4.5), new Celsius(4), DoughPlace.LiddedBox, AKitchen.Dough, AKitchen.Table)!.Expected);
    }

    [Fact]
    public void No_balls_at_all_are_refused() => Assert.Throws<ArgumentOutOfRangeException>(() => Cold(0));

    private static Estimate<Duration>? Tempered(
        double grams, double dough = 4, double room = 22, DoughPlace place = DoughPlace.Counter) => BallTimes.UntilTempered(
        new Grams(grams), new Celsius(dough), new Celsius(room), place, AKitchen.Dough, AKitchen.Table);

    private static Estimate<Duration>? Cold(int balls, DoughPlace place = DoughPlace.LiddedBox) => BallTimes.UntilCold(
        new Grams(250), balls, new Celsius(24), new Celsius(4), place, AKitchen.Dough, AKitchen.Table);
}
