using System.Net;
using GameNight.Nights.Records;

namespace GameNight.Web.Tests.Pages;

/// <summary>Who reads what of the look-backs: hosts all but nameless names, a guest their own and averages, nobody else anything.</summary>
public class LookBackVisibilityTests(SharedApp site)
{
    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData(2, false)]
    [InlineData(3, true)]
    public async Task Another_guest_reads_an_average_of_three_and_no_look_back(int voices, bool reads)
    {
        var night = await ServedNight.OfAsync(site, 1, "Rui", "Evaline", "Anabel", "Luisito");
        foreach (var name in night.Guests.Keys.Skip(1).Take(voices))
        {
            await night.SayAsync(name, ("enough", "TooMuch"), ("evening", "Poor"), ("best", "1"), ("words", $"secret of {name}"));
        }

        var page = await (await night.App.Client.GetAsync(await night.LinkAsync("Rui"), Cancellation)).TextAsync();

        Assert.Equal(reads, page.Contains("What everybody says together", StringComparison.Ordinal));
        Assert.Equal(reads, page.Contains("Enough: too much.", StringComparison.Ordinal));
        Assert.Equal(reads, page.Contains("Liked best: ", StringComparison.Ordinal));
        Assert.DoesNotContain("secret of", page, StringComparison.Ordinal);
        Assert.All(night.Guests.Keys.Skip(1), name => Assert.DoesNotContain(name, page, StringComparison.Ordinal));
    }

    [Fact]
    public async Task Earlier_nights_tell_a_count_names_of_those_who_allow_it_and_own_words()
    {
        var first = await ServedNight.OfAsync(site, 8, "Rui", "Evaline Longname", "Anabel");
        await first.SayAsync("Rui", ("words", "my own line"));
        await first.SayAsync("Anabel", ("words", "what Anabel thinks"));
        var last = await ServedNight.OfAsync(site, 1, first.Guests, "Another round");

        // Each answer says anew whether the name may be read: allowed since the last one.
        await first.Host.ShowNameAsync(first.Guests["Evaline Longname"], Cancellation);

        var page = await (await last.App.Client.GetAsync(await last.LinkAsync("Rui"), Cancellation)).TextAsync();

        Assert.Contains("4 people came. Among them: Evaline.", page, StringComparison.Ordinal);
        Assert.Contains("You said: “my own line”", page, StringComparison.Ordinal);
        Assert.DoesNotContain("Longname", page, StringComparison.Ordinal);
        Assert.DoesNotContain("Anabel", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_answer_page_tells_nothing_of_what_was_said()
    {
        var night = await ServedNight.OfAsync(site, 1, "Rui", "Evaline");
        await night.SayAsync("Evaline", ("words", "secret line"));
        await night.SayAsync("Rui", ("words", "my own line"));

        var page = await night.App.Client.GetStringAsync(await night.Host.LinkAsync(night.Night, night.Guests["Rui"], Cancellation), Cancellation);

        Assert.DoesNotContain("secret line", page, StringComparison.Ordinal);
        Assert.DoesNotContain("my own line", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Without_a_link_or_an_account_nothing_is_shown()
    {
        var night = await ServedNight.OfAsync(site, 1, "Rui");

        foreach (var path in new[] { $"/g/{night.Host.Group}/past", $"/g/{night.Host.Group}/n/{night.Night}/back" })
        {
            var answer = await night.App.Client.GetAsync(path, Cancellation);
            Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
            Assert.Contains("/sign-in", $"{answer.Headers.Location}", StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task Links_and_words_are_not_written_to_the_log()
    {
        var night = await ServedNight.OfAsync(site, 1, "Rui");
        await night.SayAsync("Rui", ("words", "very private line"));
        await night.Host.WriteAsync(
            night.Night, new BakeLogFacts([], null, null, [], "private plan for next time"), null, Cancellation);

        Assert.DoesNotContain((await night.LinkAsync("Rui"))["/b/".Length..], night.App.Log, StringComparison.Ordinal);
        Assert.DoesNotContain("very private line", night.App.Log, StringComparison.Ordinal);
        Assert.DoesNotContain("private plan", night.App.Log, StringComparison.Ordinal);
    }
}
