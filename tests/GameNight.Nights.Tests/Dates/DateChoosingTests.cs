using GameNight.Nights.Dates;
using GameNight.Nights.Records;
using GameNight.Nights.Tests.Storage;
using GameNight.Planning.Dates;
using GameNight.TestKit.Nights;
using GameNight.TestKit.Postgres;
using NodaTime;

namespace GameNight.Nights.Tests.Dates;

public sealed class DateChoosingTests(ClassDatabase database) : DatesTest(database)
{
    [Fact]
    public async Task The_chosen_evening_is_a_night_to_which_everybody_asked_is_invited_and_told_once()
    {
        var question = await AskAsync(3);
        await Book.AnswerAsync(await LinkAsync(question, 0), Says(DateAnswer.Works), Cancellation);
        await Book.AnswerAsync(await LinkAsync(question, 1), Says(DateAnswer.No), Cancellation);
        var night = NightId.New();

        Assert.Equal(new ChoosingResult.Chosen(night), await Choosing.ChooseAsync(question.Group.Access, question.Id, First, night, Cancellation));
        Assert.Equal(new ChoosingResult.Chosen(night), await Choosing.ChooseAsync(question.Group.Access, question.Id, First, NightId.New(), Cancellation));
        Assert.Equal(
            new ChoosingResult.ChosenOtherwise(night, First),
            await Choosing.ChooseAsync(question.Group.Access, question.Id, Second, NightId.New(), Cancellation));
        await DeliverAsync();
        await InviteAsync(question.Group, night);

        var view = await Sending.ViewAsync(question.Group, night);
        Assert.Equal(("January table", First, "Europe/Berlin"), (view.Facts.Title, view.Facts.ServeAt, view.Facts.Zone));
        Assert.Equal(4, view.Guests.Count);
        Assert.All(view.Guests, guest => Assert.Null(guest.Answer));
        Assert.Equal(["Invitation guest1", "Invitation guest2", "Invitation guest3"], Sent(night));
        Assert.All(Carrier.Letters.Where(letter => letter.Night.Night == night), letter => Assert.Equal(2, letter.OutOfEvenings));
    }

    [Fact]
    public async Task Two_hosts_who_choose_at_once_make_one_night_and_one_message_each()
    {
        var question = await AskAsync(4);

        var results = await Task.WhenAll(Enumerable.Range(0, 8).Select(host => Task.Run(() => Choosing.ChooseAsync(
            question.Group.Access, question.Id, host % 2 == 0 ? First : Second, NightId.New(), Cancellation))));

        var night = Assert.Single(await Sending.Nights.NightsAsync(question.Group.Access, Cancellation));
        Assert.Contains(new ChoosingResult.Chosen(night.Id), results);
        Assert.All(results, result => Assert.Equal(
            night.Id, result switch { ChoosingResult.Chosen one => one.Night, ChoosingResult.ChosenOtherwise other => other.Night, _ => default }));
        Assert.Equal(["4"], await Rows.ReadAsync(Database.AdminConnectionString, $"select count(*)::text from messages where group_id = '{question.Group.Id.Value}'"));
    }

    [Fact]
    public async Task What_works_is_a_hint_on_the_invitation_and_answers_for_nobody()
    {
        var question = await AskAsync(2);
        await Book.AnswerAsync(await LinkAsync(question, 0), Says(DateAnswer.Works, DateAnswer.No), Cancellation);
        var night = NightId.New();
        await Choosing.ChooseAsync(question.Group.Access, question.Id, First, night, Cancellation);

        var link = await Sending.LinkAsync(question.Group, night, question.Guests[0]);
        Assert.Equal((DateAnswer.Works, null), ((await Sending.LookAsync(link))!.SaidOfDate, (await Sending.LookAsync(link))!.Answer));
        Assert.Null((await Sending.LookAsync(await Sending.LinkAsync(question.Group, night, question.Guests[1])))!.SaidOfDate);
        Assert.Equal(link, (await LookAsync(await LinkAsync(question, 0))).Invitation);

        await Sending.AnswerAsync(link, Answers.NotComing());
        Assert.Null((await Sending.LookAsync(link))!.SaidOfDate);
    }

    [Fact]
    public async Task The_night_has_last_times_choices()
    {
        var question = await AskAsync(1);
        await Sending.OpenNightAsync(question.Group, question.Guests, facts => facts with
        {
            EndsAt = facts.ServeAt.PlusHours(6),
            MostCompanions = 1,
            Bring = "Olives",
            ShortestColdHours = 45,
        });
        var night = NightId.New();

        await Choosing.ChooseAsync(question.Group.Access, question.Id, Second, night, Cancellation);

        var facts = (await Sending.ViewAsync(question.Group, night)).Facts;
        Assert.Equal((Second, Second.PlusHours(6), 1, "Olives", 45), (facts.ServeAt, facts.EndsAt!.Value, facts.MostCompanions, facts.Bring, facts.ShortestColdHours));
    }

    [Fact]
    public async Task An_evening_that_is_over_or_not_asked_about_cannot_be_chosen()
    {
        var question = await AskAsync(1);

        Assert.IsType<ChoosingResult.NotAnOption>(await Choosing.ChooseAsync(question.Group.Access, question.Id, First.PlusDays(1), NightId.New(), Cancellation));
        Clock.Reset(Instant.FromUtc(2027, 1, 10, 12, 0));
        Assert.IsType<ChoosingResult.HasPassed>(await Choosing.ChooseAsync(question.Group.Access, question.Id, First, NightId.New(), Cancellation));
        Assert.IsType<DateObstacle.HasPassed>((await SeenAsync(question)).Forecast.Evenings[^1].Obstacles[0]);
        Assert.IsType<ChoosingResult.Chosen>(await Choosing.ChooseAsync(question.Group.Access, question.Id, Second, NightId.New(), Cancellation));
    }
}
