using System.Text.RegularExpressions;
using GameNight.Planning.Guests;
using GameNight.Web.Wording;

namespace GameNight.Web.Tests.Pages;

public partial class CalendarTests(SharedApp site)
{
    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Keeps_its_identity_while_the_answer_changes()
    {
        var invited = await site.InviteAsync();
        await (await invited.OpenAsync()).SendAsync(Cancellation, ("presence", "Coming"));
        var before = await FileAsync(invited);

        await (await invited.OpenAsync()).SendAsync(Cancellation, ("presence", "Undecided"));
        var after = await FileAsync(invited);

        Assert.Equal(Line(before, "UID"), Line(after, "UID"));
        Assert.NotEqual(Line(before, "SEQUENCE"), Line(after, "SEQUENCE"));
        Assert.Contains("Rua das Flores 7", before, StringComparison.Ordinal);
        Assert.DoesNotContain("Rua das Flores 7", after, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("Europe/Lisbon")]
    [InlineData("America/New_York")]
    [InlineData("Asia/Tokyo")]
    public async Task Carries_its_time_zone_so_that_the_hour_is_right_everywhere(string zone)
    {
        var invited = await site.InviteAsync(but: facts => facts with { Zone = zone });

        var file = await FileAsync(invited);

        Assert.Contains($"TZID:{zone}", file, StringComparison.Ordinal);
        Assert.Matches("BEGIN:(STANDARD|DAYLIGHT)", file);
        Assert.Matches($"DTSTART;TZID={zone}:[0-9]{{8}}T193000", file);
        Assert.Matches("DTSTAMP:[0-9]{8}T[0-9]{6}Z", file);
    }

    [Fact]
    public async Task Is_lines_that_end_as_the_standard_says_and_are_not_too_long()
    {
        var invited = await site.InviteAsync("Someone with a name of sixty characters, äöü, to be folded", facts => facts with
        {
            Title = "A title, with; signs\\that need care and a length that needs folding, certainly",
        });

        var file = await FileAsync(invited);

        Assert.DoesNotMatch("(?<!\r)\n", file);
        Assert.EndsWith("END:VCALENDAR\r\n", file, StringComparison.Ordinal);
        Assert.All(file.Split("\r\n"), line => Assert.InRange(System.Text.Encoding.UTF8.GetByteCount(line), 0, 75));
    }

    [Fact]
    public async Task Says_nothing_of_what_anybody_must_not_eat()
    {
        var invited = await site.InviteAsync();
        await (await invited.OpenAsync()).SendAsync(
            Cancellation, ("presence", "Coming"), ("consent", "on"), ("diet0-Vegan", "on"), ("must0-Celery", "t"), ("note", "severe celiac"));

        var file = await FileAsync(invited);

        string[] words = [.. Enum.GetValues<Diet>().Select(WordText.Say), .. Enum.GetValues<Allergen>().Select(WordText.Say), "severe", "celiac", "allerg"];
        Assert.All(words, word => Assert.DoesNotContain(word, file, StringComparison.OrdinalIgnoreCase));
    }

    private static async Task<string> FileAsync(Invited invited)
    {
        var answer = await invited.App.Client.GetAsync($"{invited.Link}/night.ics", Cancellation);
        Assert.Equal("text/calendar", answer.Content.Headers.ContentType!.MediaType);
        return await answer.Content.ReadAsStringAsync(Cancellation);
    }

    private static string Line(string file, string name) => Unfolded().Replace(file, "").Split("\r\n")
        .Single(line => line.StartsWith(name + ":", StringComparison.Ordinal));

    [GeneratedRegex("\r\n[ \t]")]
    private static partial Regex Unfolded();
}
