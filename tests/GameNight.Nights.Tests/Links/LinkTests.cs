using GameNight.Nights.ForGuests;
using GameNight.Nights.ForHosts;
using GameNight.Nights.Links;
using GameNight.Nights.Records;
using GameNight.Nights.Tests.Storage;
using GameNight.TestKit.Nights;
using GameNight.TestKit.Postgres;
using NodaTime;

namespace GameNight.Nights.Tests.Links;

public sealed class LinkTests(ClassDatabase database) : NightsTest(database)
{
    [Fact]
    public async Task The_database_holds_a_hash_of_the_link_and_nowhere_the_link()
    {
        var night = await App.OpenNightForOneGuestAsync();
        await App.AnswerAsync(night.Link, Answers.Coming().WithNote("No nuts"));

        var everything = await Rows.EverythingAsync(Database);

        var hash = Convert.ToHexStringLower(night.Link.Hash());
        var asBytes = Convert.ToHexStringLower(System.Text.Encoding.ASCII.GetBytes(night.Link.Text));
        Assert.Single(everything, row => row.Contains(hash, StringComparison.OrdinalIgnoreCase));
        Assert.DoesNotContain(everything, row => row.Contains(night.Link.Text, StringComparison.Ordinal));
        Assert.DoesNotContain(everything, row => row.Contains(asBytes, StringComparison.OrdinalIgnoreCase));
    }

    [Theory]
    [InlineData(null)]
    [InlineData("")]
    [InlineData("short")]
    [InlineData("AAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAA=")]
    [InlineData("AAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAA'")]
    [InlineData("ÄAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAA")]
    public async Task What_cannot_be_a_link_is_no_link(string? text)
    {
        Assert.Null(LinkToken.TryParse(text));

        Assert.Equal(
            new InvitationLookup.LinkNotValid(IsExpired: false), await App.GuestBook.LookAsync(null, Cancellation));
    }

    [Fact]
    public async Task A_guessed_link_opens_nothing()
    {
        var guessed = LinkToken.TryParse(new string('A', LinkToken.Length))!.Value;

        Assert.Null(await App.LookAsync(guessed));
        Assert.Equal(new AnswerResult.LinkNotValid(IsExpired: false), await App.AnswerAsync(guessed, Answers.Coming()));
        Assert.False(await App.GuestBook.DisownAsync(guessed, Cancellation));
    }

    [Fact]
    public async Task A_link_ends_a_month_after_its_night()
    {
        var night = await App.OpenNightForOneGuestAsync();
        var served = (await App.ViewAsync(night.Group, night.Night)).ServeAt;

        App.Clock.Reset(served + Duration.FromDays(30));
        Assert.NotNull(await App.LookAsync(night.Link));

        App.Clock.AdvanceMinutes(1);
        Assert.Equal(
            new InvitationLookup.LinkNotValid(IsExpired: true), await App.GuestBook.LookAsync(night.Link, Cancellation));
        Assert.Equal(new AnswerResult.LinkNotValid(IsExpired: true), await App.AnswerAsync(night.Link, Answers.Coming()));
    }

    [Fact]
    public async Task A_night_that_moves_takes_its_links_along()
    {
        var night = await App.OpenNightForOneGuestAsync();
        var view = await App.ViewAsync(night.Group, night.Night);
        await App.Nights.ChangeNightAsync(
            night.Group.Access, night.Night, view.Facts with { ServeAt = view.Facts.ServeAt.PlusDays(60) }, view.Version,
            Cancellation);

        App.Clock.Reset(view.ServeAt + Duration.FromDays(45));

        Assert.NotNull(await App.LookAsync(night.Link));
    }

    [Fact]
    public async Task A_renewed_link_ends_the_old_one()
    {
        var night = await App.OpenNightForOneGuestAsync();
        await App.GuestBook.DisownAsync(night.Link, Cancellation);
        await App.Invitations.RenewLinkAsync(night.Group.Access, night.Night, night.Guest, Cancellation);

        var renewed = await App.LinkAsync(night.Group, night.Night, night.Guest);

        Assert.NotEqual(night.Link, renewed);
        Assert.Null(await App.LookAsync(night.Link));
        Assert.False((await App.LookAsync(renewed))!.WasDisowned);
    }

    [Fact]
    public async Task A_link_renewed_many_times_at_once_is_one_working_link()
    {
        var night = await App.OpenNightForOneGuestAsync();

        await Task.WhenAll(Enumerable.Range(0, 8).Select(
            _ => App.Invitations.RenewLinkAsync(night.Group.Access, night.Night, night.Guest, Cancellation)));

        Assert.NotNull(await App.LookAsync(await App.LinkAsync(night.Group, night.Night, night.Guest)));
        Assert.Equal(["Answer", "LookBack"], await Rows.ReadAsync(
            Database.AdminConnectionString,
            $"select scope from link_directory where subject = '{night.Guest.Value}' order by scope"));
    }

    [Fact]
    public async Task A_guest_taken_off_and_invited_again_gets_another_link()
    {
        var night = await App.OpenNightForOneGuestAsync();
        await App.Invitations.UninviteAsync(night.Group.Access, night.Night, night.Guest, Cancellation);
        Assert.Null(await App.LookAsync(night.Link));

        await App.Invitations.InviteAsync(night.Group.Access, night.Night, night.Guest, Cancellation);

        Assert.Null(await App.LookAsync(night.Link));
        Assert.NotNull(await App.LookAsync(await App.LinkAsync(night.Group, night.Night, night.Guest)));
    }

    [Fact]
    public async Task One_guests_link_opens_no_other_guest_night_or_scope()
    {
        var group = await App.FoundGroupAsync();
        var (ines, jo) = (await App.AddGuestAsync(group, "Ines"), await App.AddGuestAsync(group, "Jo"));
        var first = await App.OpenNightAsync(group, [ines, jo]);
        var second = await App.OpenNightAsync(group, [ines, jo]);
        LinkToken[] links =
        [
            await App.LinkAsync(group, first, ines), await App.LinkAsync(group, first, jo),
            await App.LinkAsync(group, second, ines), await App.LinkAsync(group, second, jo),
        ];

        await App.AnswerAsync(links[0], Answers.Coming());

        var seen = await Task.WhenAll(links.Select(App.LookAsync));
        Assert.Equal([(first, ines), (first, jo), (second, ines), (second, jo)], seen.Select(view => (view!.Night, view.Guest)));
        Assert.Equal([1, 0, 0, 0], seen.Select(view => view!.Revision));
        foreach (var scope in Enum.GetValues<LinkScope>().Where(scope => scope != LinkScope.Answer))
        {
            Assert.IsType<LinkLookup<LinkHolder>.Unknown>(await App.Get<LinkDirectory>().FindAsync(links[0], scope, Cancellation));
        }
    }

    [Fact]
    public async Task The_same_link_can_be_shown_again_and_by_another_process()
    {
        var night = await App.OpenNightForOneGuestAsync();
        await using var restarted = NightsApp.On(Database.AppConnectionString);

        Assert.Equal(night.Link, await App.LinkAsync(night.Group, night.Night, night.Guest));
        Assert.Equal(night.Link, await restarted.LinkAsync(night.Group, night.Night, night.Guest));
    }

    [Fact]
    public void A_link_does_not_print_itself_and_a_short_secret_is_refused()
    {
        Assert.Equal("(link)", $"{LinkToken.TryParse(new string('A', LinkToken.Length))}");
        Assert.Throws<ArgumentException>(() => new LinkSecret(new byte[LinkSecret.FewestBytes - 1]));
    }

    [Fact]
    public async Task Inviting_twice_at_once_invites_once()
    {
        var night = await App.OpenNightForOneGuestAsync();
        var late = await App.AddGuestAsync(night.Group, "Jo");

        var results = await Task.WhenAll(Enumerable.Range(0, 8).Select(
            _ => App.Invitations.InviteAsync(night.Group.Access, night.Night, late, Cancellation)));

        Assert.All(results, result => Assert.IsType<SaveResult.Saved>(result));
        Assert.NotNull(await App.LookAsync(await App.LinkAsync(night.Group, night.Night, late)));
    }
}
