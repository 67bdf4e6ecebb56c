using Bunit;
using GameNight.Nights.ForHosts;
using GameNight.Nights.Records;
using GameNight.Planning;
using GameNight.Planning.Appetite;
using GameNight.Planning.Guests;
using GameNight.Planning.Quantities;
using GameNight.Web.Host.GuestList;
using GameNight.Web.Host.Plan;
using NodaTime;

namespace GameNight.Web.Tests.Panels;

/// <summary>The guests of a night in the order a host asks for them, and who is there for a part of it.</summary>
public class GuestGroupsTests : BunitContext
{
    [Fact]
    public void Who_waits_stands_first_in_line_and_everybody_stands_once()
    {
        InvitedGuest[] guests =
        [
            Guest("Host", null, isHost: true), Guest("Silent", null), Guest("Second", Presence.Coming) with { WaitingPlace = 2 },
            Guest("First", Presence.Coming) with { WaitingPlace = 1 }, Guest("Seated", Presence.Coming), Guest("Perhaps", Presence.Undecided),
            Guest("Away", Presence.NotComing),
        ];

        var groups = GuestGroup.Of(guests, "", GuestFilter.Everybody);

        Assert.Equal(["First Second", "Host Seated", "Perhaps", "Silent", "Away"], groups.Select(group => string.Join(' ', group.Guests.Select(guest => guest.Name))));
        Assert.Equal(guests.Length, groups.Sum(group => group.Guests.Count));
    }

    [Fact]
    public void Two_hundred_guests_are_found_by_name_and_by_what_they_said()
    {
        InvitedGuest[] guests = [.. Enumerable.Range(0, 200).Select(number => Guest($"Guest {number}", Presence.Coming) with
        {
            IsLate = number == 7,
            IsAfterAnswerBy = number == 8,
            Answer = Saying(Presence.Coming) with { ComesAtMinute = number == 9 ? 21 * 60 : null },
        })];

        Assert.Equal("Guest 150", Assert.Single(Assert.Single(GuestGroup.Of(guests, " guest 150 ", GuestFilter.Everybody)).Guests).Name);
        Assert.Equal(["Guest 7", "Guest 8"], Assert.Single(GuestGroup.Of(guests, "", GuestFilter.Late)).Guests.Select(guest => guest.Name));
        Assert.Equal("Guest 9", Assert.Single(Assert.Single(GuestGroup.Of(guests, "", GuestFilter.InPart)).Guests).Name);
        Assert.Empty(GuestGroup.Of(guests, "nobody of that name", GuestFilter.Everybody));
    }

    [Fact]
    public void A_row_says_who_said_it_when_they_come_and_that_they_wait()
    {
        var guest = Guest("Rui", Presence.Coming) with
        {
            Answer = Saying(Presence.Coming) with { ComesAtMinute = 21 * 60, LeavesAtMinute = 22 * 60 },
            SaidBy = SaidBy.Host,
            WaitingPlace = 3,
            Household = "Hearth",
            IsOneOff = true,
            IsAfterAnswerBy = true,
        };

        var row = Render<GuestRow>(with => with.Add(p => p.Guest, guest).Add(p => p.MayOrganise, true)).Markup;

        Assert.All(
            ["from about 21:00", "until about 22:00", "(noted by a host)", "waits at place 3", "household Hearth", "only this night", "(after the time to answer)", "Keep Rui in the group"],
            said => Assert.Contains(said, row, StringComparison.Ordinal));
        Assert.DoesNotContain("<button", Render<GuestRow>(with => with.Add(p => p.Guest, guest)).Markup, StringComparison.Ordinal);
    }

    [Fact]
    public void Who_comes_late_and_what_is_on_the_table_by_then_is_said()
    {
        var at = Instant.FromUtc(2026, 12, 12, 20, 0);
        PartOfTheNight[] parts =
        [
            new("a", AnswerState.Coming, at, null, 4, 3, 5, 0), new("b", AnswerState.Undecided, null, at, 3, 0, 6, 2),
            new("c", AnswerState.Coming, at, at + Duration.FromHours(1), 2, 8, 0, 0),
        ];

        var said = Render<InPartPanel>(with => with.Add(p => p.Parts, parts).Add(p => p.NameOf, id => $"<{id}>").Add(p => p.Zone, "Europe/Berlin"))
            .FindAll("li span").Select(span => span.TextContent);

        Assert.Equal(
            [
                "<a> comes at about 21:00: 4 slices to keep or bake late.", "Serving begins before: 3 pies are on the table by then, 5 of 8 come later.",
                "<b>, if they come leaves at about 21:00: 3 slices before that.", "2 pies are on the table only after that.",
                "<c> is there from about 21:00 to about 22:00: 2 slices.", "Serving begins before: all 8 pies are on the table by then, so the slices are to be kept.",
            ],
            said);
    }

    [Theory]
    [InlineData(4, 4, 0.82, "5 or more come with a chance of 82 %.")]
    [InlineData(3, null, 0.0, "Fewer than 3 come with a chance of 10 %.")]
    public void The_chance_of_too_few_or_too_many_players_is_said(int fewest, int? most, double tooMany, string said)
    {
        var forecast = new PlayersForecast(
            new PlayersWanted(fewest, most), new Estimate<double>(4, 3, 6), new Share(most is null ? 0.1 : 0), new Share(tooMany));

        var line = Render<PlayersLine>(with => with.Add(p => p.Played, new Played("Lantern lanes", forecast.Wanted)).Add(p => p.Forecast, forecast));

        Assert.Contains(said, line.Markup, StringComparison.Ordinal);
        Assert.Contains("3 to 6 are expected at the game", line.Markup, StringComparison.Ordinal);
        Assert.Empty(Render<PlayersLine>(with => with.Add(p => p.Played, null).Add(p => p.Forecast, null)).Markup.Trim());
    }

    private static InvitedGuest Guest(string name, Presence? presence, bool isHost = false) => new(
        GuestId.New(), name, PortionClass.Adult, isHost, presence is { } said ? Saying(said) : null, null, false, [], null, false, false, "", false);

    private static AnswerFacts Saying(Presence presence) => new(presence, false, Hunger.AsUsual, [], new Dictionary<string, Liking>());
}
