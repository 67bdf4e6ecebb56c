using GameNight.Nights.Erasure;
using GameNight.Nights.ForHosts;
using GameNight.Nights.Links;
using GameNight.Nights.Moving;
using GameNight.Nights.Records;
using GameNight.Nights.Tests.Moving;
using GameNight.Nights.Tests.Storage;
using GameNight.Planning.Appetite;
using GameNight.Planning.Guests;
using GameNight.TestKit.Nights;
using GameNight.TestKit.Postgres;
using NodaTime;

namespace GameNight.Nights.Tests.Erasure;

/// <summary>Guests of one night, and whether what came with seats, households and times moves along.</summary>
public sealed class OneOffTests(ClassDatabase database) : MovingTest(database)
{
    private static readonly Instant Over = Instant.FromUtc(2026, 12, 12, 18, 30) + LinkDirectory.KeptAfterNight;

    [Fact]
    public async Task A_guest_of_one_night_goes_with_its_links_and_their_count_stays()
    {
        var (group, night, guest) = await OnceAsync();
        await App.AnswerAsync(await App.LinkAsync(group, night, guest), Answers.Coming(companions: 1));

        await AtAsync(Over - Duration.FromMinutes(1));
        Assert.Equal("Passing Piet", (await App.InvitedAsync(group, night, guest)).Name);

        await AtAsync(Over + Duration.FromMinutes(1));
        Assert.DoesNotContain(await App.GuestList.GuestsAsync(group.Access, Cancellation), line => line.Id == guest);
        Assert.DoesNotContain(await Rows.EverythingAsync(Database), row => row.Contains("Passing Piet", StringComparison.Ordinal) && row.Contains($"{group.Id.Value}", StringComparison.Ordinal));
        Assert.Single(await Rows.ReadAsync(Database.AdminConnectionString, $"select 1 from answers where guest_id = '{guest.Value}'"));
    }

    [Fact]
    public async Task Who_is_kept_or_made_standing_stays_and_who_is_invited_again_stays_as_long()
    {
        var (group, night, kept) = await OnceAsync();
        var (standing, again) = (GuestId.New(), GuestId.New());
        await App.Invitations.InviteOnceAsync(group.Access, night, standing, "Standing Stan", PortionClass.Adult, Cancellation);
        await App.Invitations.InviteOnceAsync(group.Access, night, again, "Again Ann", PortionClass.Teen, Cancellation);
        var later = await App.OpenNightAsync(group, [again], facts => facts with { ServeAt = facts.ServeAt.PlusWeeks(2) });
        await App.GuestList.KeepAsync(group.Access, kept, Cancellation);
        await App.GuestList.StandAsync(group.Access, standing, isStanding: true, Cancellation);

        await AtAsync(Over + Duration.FromDays(1));
        var lines = (await App.GuestList.GuestsAsync(group.Access, Cancellation)).Where(line => !line.IsHost).ToDictionary(line => line.Id);
        Assert.Equal((false, false), (lines[kept].IsOneOff, lines[kept].IsStanding));
        Assert.Equal((false, true), (lines[standing].IsOneOff, lines[standing].IsStanding));
        Assert.True(lines[again].IsOneOff);

        await AtAsync(Over + Duration.FromDays(15));
        Assert.DoesNotContain(await App.GuestList.GuestsAsync(group.Access, Cancellation), line => line.Id == again);
        Assert.NotEqual(default, later);
    }

    [Fact]
    public async Task An_invitation_taken_back_takes_the_guest_of_one_night_along()
    {
        var (group, night, guest) = await OnceAsync();
        await App.Invitations.UninviteAsync(group.Access, night, guest, Cancellation);

        await App.Get<Retention>().EraseAsync(Cancellation);

        Assert.DoesNotContain(await App.GuestList.GuestsAsync(group.Access, Cancellation), line => line.Id == guest);
    }

    [Fact]
    public async Task Invited_once_twice_is_one_guest_and_a_name_is_needed()
    {
        var (group, night, guest) = await OnceAsync();

        Assert.IsType<SaveResult.Saved>(await App.Invitations.InviteOnceAsync(group.Access, night, guest, "Passing Piet", PortionClass.Adult, Cancellation));
        Assert.IsType<SaveResult.Refused>(await App.Invitations.InviteOnceAsync(group.Access, night, GuestId.New(), "  ", PortionClass.Adult, Cancellation));
        Assert.True(Assert.Single((await App.ViewAsync(group, night)).Guests, row => !row.IsHost).IsOneOff);
    }

    [Fact]
    public async Task Seats_households_times_and_lines_move_with_the_group()
    {
        var (group, night, once) = await OnceAsync(facts => facts with { Seats = 2, Played = new Played("Lantern lanes", new PlayersWanted(2, 4)) });
        var guests = new[] { await App.AddGuestAsync(group, "Ines"), await App.AddGuestAsync(group, "Rui") };
        await App.GuestList.HouseholdAsync(group.Access, guests, "The Elms", Cancellation);
        foreach (var guest in guests)
        {
            await App.Invitations.InviteAsync(group.Access, night, guest, Cancellation);
        }

        var late = Answers.Coming();
        await App.AnswerAsync(
            await App.LinkAsync(group, night, guests[0]),
            late with { Facts = late.Facts with { ComesAtMinute = 21 * 60, LeavesAtMinute = 22 * 60 } });
        await App.Told.SetAsync(
            group.Access, night, guests[1], new ToldAnswer(Presence.Coming, false, Hunger.Less, [PortionClass.Child], AloneIfNeeded: true), 0, Guid.NewGuid(), Cancellation);
        var first = await ExportAsync(group.Access);

        var imported = Assert.IsType<ImportResult.Imported>(await ImportAsync(group.Host, first));
        var access = (await App.Groups.EnterAsync(group.Host, imported.Group, Cancellation))!;

        Assert.Equal(Lasting(first), Lasting(await ExportAsync(access)));
        var view = (await App.Nights.NightAsync(access, night, Cancellation))!;
        var waiting = view.Guests.Single(row => row.Id == guests[1]);
        Assert.Equal((1, SaidBy.Host, "The Elms", true), (waiting.WaitingPlace, waiting.SaidBy, waiting.Household, waiting.Answer!.AloneIfNeeded));
        Assert.True(view.Guests.Single(row => row.Id == once).IsOneOff);
        Assert.Equal((2, 2, "Lantern lanes"), (view.Facts.Seats, view.SeatsTaken, view.Facts.Played!.Name));
    }

    [Theory]
    [InlineData("$.guests[1].household", "")]
    [InlineData("$.nights[0].facts.seats", "0")]
    [InlineData("$.nights[0].facts.players", "5")]
    [InlineData("$.nights[0].invited[1].answer.facts.comesAtMinute", "1440")]
    [InlineData("$.nights[0].invited[1].answer.waitingNumber", "0")]
    public async Task A_document_with_what_cannot_be_is_refused(string path, string value)
    {
        var (group, night, once) = await OnceAsync(facts => facts with { Seats = 5, Played = new Played("Lantern lanes", new PlayersWanted(2, 4)) });
        await App.AnswerAsync(await App.LinkAsync(group, night, once), Answers.Coming());
        var document = But(await ExportAsync(group.Access), node =>
        {
            var (guests, facts) = (node["guests"]!.AsArray(), node["nights"]![0]!["facts"]!);
            var invited = node["nights"]![0]!["invited"]!.AsArray().Single(row => row!["answer"] is not null)!["answer"]!;
            switch (path)
            {
                case "$.guests[1].household":
                    guests[1]!["household"] = value;
                    break;
                case "$.nights[0].facts.seats":
                    facts["seats"] = 0;
                    break;
                case "$.nights[0].facts.players":
                    facts["played"]!["players"]!["fewest"] = 5;
                    break;
                case "$.nights[0].invited[1].answer.facts.comesAtMinute":
                    invited["facts"]!["comesAtMinute"] = 1440;
                    break;
                default:
                    invited["waitingNumber"] = 0;
                    break;
            }
        });

        var refused = Assert.IsType<ImportResult.Refused>(await ImportAsync(group.Host, document));

        Assert.Equal(path, Assert.Single(refused.Problems).Path);
    }

    private async Task<(FoundedGroup Group, NightId Night, GuestId Guest)> OnceAsync(Func<NightFacts, NightFacts>? but = null)
    {
        var group = await App.FoundGroupAsync();
        var night = await App.OpenNightAsync(group, [], but);
        var guest = GuestId.New();
        Assert.IsType<SaveResult.Saved>(await App.Invitations.InviteOnceAsync(
            group.Access, night, guest, "Passing Piet", PortionClass.Adult, Cancellation));
        return (group, night, guest);
    }

    private async Task AtAsync(Instant at)
    {
        App.Clock.Reset(at);
        await App.Get<Retention>().EraseAsync(Cancellation);
    }
}
