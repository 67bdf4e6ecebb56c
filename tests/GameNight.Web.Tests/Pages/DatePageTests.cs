using System.Net;
using GameNight.Nights.Dates;
using GameNight.Nights.Records;
using GameNight.Planning.Dates;
using GameNight.TestKit.Running;

namespace GameNight.Web.Tests.Pages;

public class DatePageTests(SharedApp site)
{
    /// <summary>All that a guest's phone loads for the page, uncompressed and without its font.</summary>
    private const int MostBytes = 60_000;

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Asks_of_each_evening_and_keeps_what_is_said()
    {
        var asked = await AskAsync("Rui");
        var page = await asked.OpenAsync();
        Assert.Contains("Answering as <strong>Rui</strong>", page.Html, StringComparison.Ordinal);
        Assert.Contains("You are asked for a date", page.Html, StringComparison.Ordinal);

        var sent = await page.SendAsync(Cancellation, (asked.Field(0), "Works"), (asked.Field(1), "AtAPinch"));

        Assert.Equal((HttpStatusCode.SeeOther, $"{asked.Link}?sent=yes"), (sent.StatusCode, $"{sent.Headers.Location}"));
        Assert.Contains("Thank you, Rui.", await asked.App.Client.GetStringAsync(sent.Headers.Location, Cancellation), StringComparison.Ordinal);
        Assert.Equal(
            [DateAnswer.Works, DateAnswer.AtAPinch],
            (await asked.Host.QuestionAsync(asked.Choice, Cancellation)).Asked.Single().Answers.OrderBy(said => said.Key).Select(said => said.Value));
    }

    [Fact]
    public async Task Nothing_said_is_told_and_another_zone_that_was_typed_stays()
    {
        var asked = await AskAsync("Rui");
        var page = await asked.OpenAsync();

        var sent = await page.SendAsync(Cancellation, ("zone", "Asia/Tokyo"), (asked.Field(0), "Perhaps"));

        Assert.Equal(HttpStatusCode.BadRequest, sent.StatusCode);
        var text = await sent.TextAsync();
        Assert.Contains("Say of at least one evening whether it works for you", text, StringComparison.Ordinal);
        Assert.Contains("in Asia/Tokyo", text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task From_two_devices_the_last_counts_at_once_and_both_are_told_what_gave_way()
    {
        var asked = await AskAsync("Rui");
        var (first, second) = (await asked.OpenAsync(), await asked.OpenAsync());
        await first.SendAsync(Cancellation, (asked.Field(0), "Works"));

        var told = await second.SendAsync(Cancellation, (asked.Field(0), "No"));

        Assert.Equal(HttpStatusCode.SeeOther, told.StatusCode);
        foreach (var address in new[] { told.Headers.Location!.ToString(), asked.Link })
        {
            var html = await asked.App.Client.GetStringAsync(address, Cancellation);
            Assert.Contains("19:30: works before, no now", html, StringComparison.Ordinal);
        }

        Assert.Equal(DateAnswer.No, (await asked.Host.QuestionAsync(asked.Choice, Cancellation)).Asked.Single().Answers.Single().Value);
    }

    [Fact]
    public async Task A_form_from_elsewhere_an_unknown_link_and_a_reading_change_nothing()
    {
        var asked = await AskAsync("Rui");
        using var foreign = new HttpRequestMessage(HttpMethod.Post, asked.Link) { Content = new FormUrlEncodedContent([new(asked.Field(0), "Works")]) };
        foreign.Headers.Add("Sec-Fetch-Site", "cross-site");

        Assert.Equal(HttpStatusCode.Forbidden, (await asked.App.Client.SendAsync(foreign, Cancellation)).StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, (await asked.App.Client.GetAsync("/d/unknown", Cancellation)).StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, (await asked.App.Client.GetAsync($"/i/{asked.Link["/d/".Length..]}", Cancellation)).StatusCode);
        var head = await asked.App.Client.SendAsync(new HttpRequestMessage(HttpMethod.Head, asked.Link), Cancellation);
        Assert.Equal((HttpStatusCode.OK, true), (head.StatusCode, head.Headers.CacheControl!.NoStore));
        Assert.Equal(0, (await asked.Host.QuestionAsync(asked.Choice, Cancellation)).Asked.Count(row => row.AnsweredAt is not null));
        Assert.DoesNotContain(asked.Link["/d/".Length..], asked.App.Log, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_link_that_reached_somebody_else_can_be_given_back()
    {
        var asked = await AskAsync("Rui");

        var said = await asked.App.Client.PostAsync($"{asked.Link}/not-me", null, Cancellation);

        Assert.Equal(HttpStatusCode.OK, said.StatusCode);
        Assert.True((await asked.Host.QuestionAsync(asked.Choice, Cancellation)).Asked.Single().LinkWasDisowned);
        Assert.Contains("If you are Rui, just answer.", (await asked.OpenAsync()).Html, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Once_a_date_is_chosen_the_page_leads_to_the_invitation_and_asks_nothing()
    {
        var asked = await AskAsync("Rui");
        var page = await asked.OpenAsync();
        var evening = (await asked.Host.QuestionAsync(asked.Choice, Cancellation)).Facts.Options[0];
        Assert.IsType<ChoosingResult.Chosen>(await asked.Host.ChooseAsync(asked.Choice, evening, Cancellation));

        var late = await page.SendAsync(Cancellation, (asked.Field(0), "Works"));

        Assert.Equal((HttpStatusCode.SeeOther, asked.Link), (late.StatusCode, $"{late.Headers.Location}"));
        var after = await asked.App.Client.GetStringAsync(asked.Link, Cancellation);
        Assert.Contains("The date is chosen:", after, StringComparison.Ordinal);
        Assert.Contains("href=\"/i/", after, StringComparison.Ordinal);
        Assert.DoesNotContain("Send my answer", after, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Nobody_reads_what_another_guest_says_or_who_is_asked()
    {
        var host = await site.HostAsync();
        var app = await site.AppAsync();
        var (rui, eva) = (await host.KnowAsync("Ruibarbo", Cancellation), await host.KnowAsync("Evangelista", Cancellation));
        var choice = await host.AskForDateAsync([rui, eva], Cancellation);
        var (ruis, evas) = (await host.DateLinkAsync(choice, rui, Cancellation), await host.DateLinkAsync(choice, eva, Cancellation));
        var before = await app.Client.GetStringAsync(evas, Cancellation);
        var asked = new Asked(app, host, choice, ruis);
        await (await asked.OpenAsync()).SendAsync(Cancellation, (asked.Field(0), "No"));

        var after = await app.Client.GetStringAsync(evas, Cancellation);

        Assert.DoesNotContain("Ruibarbo", after, StringComparison.Ordinal);
        Assert.Equal(WithoutKeys(before), WithoutKeys(after));

        static string WithoutKeys(string html) => System.Text.RegularExpressions.Regex.Replace(html, "name=\"key\" value=\"[^\"]*\"", "");
    }

    [Fact]
    public async Task The_page_is_small_even_with_forty_evenings()
    {
        var app = await site.AppAsync();
        var asked = await AskAsync("Rui", facts => facts with { Options = [.. Enumerable.Range(0, 40).Select(day => facts.Options[0].PlusDays(day))] });

        var bytes = (await app.Client.GetByteArrayAsync(asked.Link, Cancellation)).Length;
        foreach (var file in new[] { "/css/tokens.css", "/css/plain.css", "/css/dates.css", "/js/answer.js" })
        {
            bytes += (await app.Client.GetByteArrayAsync(file, Cancellation)).Length;
        }

        Assert.InRange(bytes, 1000, MostBytes);
    }

    private async Task<Asked> AskAsync(string name, Func<DateChoiceFacts, DateChoiceFacts>? but = null)
    {
        var (app, host) = (await site.AppAsync(), await site.HostAsync());
        var guest = await host.KnowAsync(name, Cancellation);
        var choice = await host.AskForDateAsync([guest], Cancellation, but);
        return new Asked(app, host, choice, await host.DateLinkAsync(choice, guest, Cancellation));
    }

    private sealed record Asked(RunningApp App, HostAtWork Host, DateChoiceId Choice, string Link)
    {
        public Task<AnswerPage> OpenAsync() => AnswerPage.OpenAsync(App.Client, Link, Cancellation);

        /// <summary>Of the evening with that number.</summary>
        public string Field(int evening) =>
            $"evening-{DateChoiceFacts.IdOf(Host.QuestionAsync(Choice, Cancellation).GetAwaiter().GetResult().Facts.Options[evening])}";
    }
}
