using System.Net;
using GameNight.Nights.Records;
using GameNight.TestKit.Running;

namespace GameNight.Web.Tests.Pages;

public class LookBackPageTests(SharedApp site)
{
    /// <summary>All that a guest's phone loads for the page, uncompressed.</summary>
    private const int MostBytes = 60_000;

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Asks_what_was_good_and_keeps_what_is_said()
    {
        var night = await ServedNight.OfAsync(site, 1, "Rui");
        var page = await night.OpenAsync("Rui");
        Assert.Contains("Looking back as <strong>Rui</strong>", page.Html, StringComparison.Ordinal);
        Assert.Contains("svg class=\"pie\"", page.Html, StringComparison.Ordinal);

        var sent = await page.SendAsync(
            Cancellation, ("enough", "Right"), ("evening", "Lovely"), ("slices", "2,5"), ("best", "1"), ("words", "Good crust"));

        Assert.Equal((HttpStatusCode.SeeOther, $"{page.Link}?sent=yes"), (sent.StatusCode, $"{sent.Headers.Location}"));
        var after = await night.App.Client.GetStringAsync(sent.Headers.Location, Cancellation);
        Assert.Contains("Thank you. It is kept", after, StringComparison.Ordinal);
        Assert.Contains("Good crust</textarea>", after, StringComparison.Ordinal);
        var said = Assert.Single((await night.Host.PastNightAsync(night.Night, Cancellation)).Named);
        Assert.Equal(("Rui", Enough.Right, Evening.Lovely, 2.5), (said.Name, said.Facts.Enough, said.Facts.Evening, said.Facts.Slices));
        Assert.Single(said.Facts.BestPies);
    }

    [Fact]
    public async Task Every_field_may_be_left_out()
    {
        var night = await ServedNight.OfAsync(site, 1, "Rui", "Eva", "Ana");

        Assert.Equal(HttpStatusCode.SeeOther, (await night.SayAsync("Rui", ("evening", "Fine"))).StatusCode);
        Assert.Equal(HttpStatusCode.SeeOther, (await night.SayAsync("Eva", ("words", "Hi"), ("nameless", "on"))).StatusCode);
        var nothing = await night.SayAsync("Ana");

        Assert.Equal(HttpStatusCode.BadRequest, nothing.StatusCode);
        Assert.Contains("Nothing is filled in, so nothing was sent.", await nothing.TextAsync(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("slices", "lots", "Type the slices as a number from 0 to 40")]
    [InlineData("slices", "41", "Type the slices as a number from 0 to 40")]
    [InlineData("words", null, "The line is too long: 280 characters fit.")]
    public async Task What_cannot_be_kept_is_told_and_nothing_typed_is_lost(string field, string? value, string sentence)
    {
        var night = await ServedNight.OfAsync(site, 1, "Rui");
        var typed = value ?? new string('w', 281);

        var answer = await night.SayAsync("Rui", (field, typed), ("enough", "TooMuch"));

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        var text = await answer.TextAsync();
        Assert.Contains(sentence, text, StringComparison.Ordinal);
        Assert.Contains(typed, text, StringComparison.Ordinal);
        var document = await answer.DocumentAsync();
        Assert.NotNull(document.QuerySelector("input[name=enough][value=TooMuch][checked]"));
        Assert.Equal(0, (await night.Host.PastNightAsync(night.Night, Cancellation)).Opinions.People);
    }

    [Fact]
    public async Task A_line_that_fits_in_the_field_fits_with_its_line_ends()
    {
        var night = await ServedNight.OfAsync(site, 1, "Rui");

        var answer = await night.SayAsync("Rui", ("words", new string('w', 200) + "\r\n" + new string('w', 79)));

        Assert.Equal(HttpStatusCode.SeeOther, answer.StatusCode);
    }

    [Fact]
    public async Task Sent_twice_it_counts_once_and_from_elsewhere_the_newer_is_told()
    {
        var night = await ServedNight.OfAsync(site, 1, "Rui");
        var (phone, desk) = (await night.OpenAsync("Rui"), await night.OpenAsync("Rui"));
        await phone.SendAsync(Cancellation, ("enough", "Right"), ("words", "from the phone"));
        await phone.SendAsync(Cancellation, ("enough", "Right"), ("words", "from the phone"));

        var late = await desk.SendAsync(Cancellation, ("words", "from the desk"));

        Assert.Equal(HttpStatusCode.Conflict, late.StatusCode);
        var text = await late.TextAsync();
        Assert.Contains("Something was said from elsewhere meanwhile: enough: right; “from the phone”", text, StringComparison.Ordinal);
        Assert.Contains("from the desk</textarea>", text, StringComparison.Ordinal);
        Assert.Equal("1", (await late.DocumentAsync()).QuerySelector("input[name=revision]")!.GetAttribute("value"));
    }

    [Fact]
    public async Task Before_the_night_is_served_it_says_when_it_opens()
    {
        var night = await ServedNight.OfAsync(site, 1, "Rui");
        var link = await night.LinkAsync("Rui");
        await night.Host.PassAsync(night.Night, daysAgo: -3, Cancellation);

        var page = await night.App.Client.GetStringAsync(link, Cancellation);

        Assert.Contains("This page opens when the pizza is served", page, StringComparison.Ordinal);
        Assert.DoesNotContain("<form", page, StringComparison.Ordinal);
        var sent = await night.App.Client.PostAsync(link, new FormUrlEncodedContent([new("enough", "Right")]), Cancellation);
        Assert.Equal(HttpStatusCode.Conflict, sent.StatusCode);
        Assert.Equal(0, (await night.Host.PastNightAsync(night.Night, Cancellation)).Opinions.People);
    }

    [Fact]
    public async Task The_answer_page_leads_there_once_the_night_is_served()
    {
        var before = await site.InviteAsync();
        Assert.DoesNotContain("href=\"/b/", (await before.OpenAsync()).Html, StringComparison.Ordinal);
        var night = await ServedNight.OfAsync(site, 1, "Rui");

        var answerPage = await AnswerPage.OpenAsync(
            night.App.Client, await night.Host.LinkAsync(night.Night, night.Guests["Rui"], Cancellation), Cancellation);

        Assert.Contains($"href=\"{await night.LinkAsync("Rui")}\"", answerPage.Html, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Looking_changes_nothing_sets_no_cookie_and_works_as_head()
    {
        var night = await ServedNight.OfAsync(site, 1, "Rui");
        var link = await night.LinkAsync("Rui");

        foreach (var method in new[] { HttpMethod.Get, HttpMethod.Head })
        {
            var answer = await night.App.Client.SendAsync(new HttpRequestMessage(method, $"{link}?sent=yes"), Cancellation);
            Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
            Assert.Equal("text/html", answer.Content.Headers.ContentType!.MediaType);
            Assert.False(answer.Headers.Contains("Set-Cookie"));
            Assert.Equal(method == HttpMethod.Head, (await answer.Content.ReadAsByteArrayAsync(Cancellation)).Length == 0);
            Assert.DoesNotContain("It is kept", await answer.TextAsync(), StringComparison.Ordinal);
        }

        Assert.Equal(0, (await night.Host.PastNightAsync(night.Night, Cancellation)).Opinions.People);
    }

    [Fact]
    public async Task Is_not_stored_not_told_to_other_sites_and_shows_a_messenger_nothing()
    {
        var night = await ServedNight.OfAsync(site, 1, "Rui");

        foreach (var path in new[] { await night.LinkAsync("Rui"), "/b/unknown" })
        {
            var answer = await night.App.Client.GetAsync(path, Cancellation);
            Assert.True(answer.Headers.CacheControl!.NoStore, path);
            Assert.Equal("no-referrer", Assert.Single(answer.Headers.GetValues("Referrer-Policy")));
            Assert.DoesNotContain("unsafe-inline", Assert.Single(answer.Headers.GetValues("Content-Security-Policy")), StringComparison.Ordinal);
            var document = await answer.DocumentAsync();
            var preview = document.QuerySelector("meta[property='og:title']")!.GetAttribute("content") + document.Title;
            Assert.DoesNotContain("Board games", preview, StringComparison.Ordinal);
            Assert.DoesNotContain("Rui", preview, StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task An_unknown_a_replaced_and_an_ended_link_are_plain_pages()
    {
        var night = await ServedNight.OfAsync(site, 1, "Rui");
        var old = await night.LinkAsync("Rui");
        await night.Host.RenewLinkAsync(night.Night, night.Guests["Rui"], Cancellation);
        var renewed = await night.LinkAsync("Rui");
        await night.Host.ExpireLinksAsync(night.Night, Cancellation);

        foreach (var (path, status) in new[] { ("/b/short", HttpStatusCode.NotFound), (old, HttpStatusCode.NotFound), (renewed, HttpStatusCode.Gone) })
        {
            Assert.Equal(status, (await night.App.Client.GetAsync(path, Cancellation)).StatusCode);
            var sent = await night.App.Client.PostAsync(path, new FormUrlEncodedContent([new("enough", "Right")]), Cancellation);
            Assert.Equal(status, sent.StatusCode);
        }
    }

    [Theory]
    [InlineData("Sec-Fetch-Site", "cross-site")]
    [InlineData("Origin", "https://elsewhere.example")]
    public async Task A_form_sent_from_another_site_is_refused(string header, string value)
    {
        var night = await ServedNight.OfAsync(site, 1, "Rui");
        var request = new HttpRequestMessage(HttpMethod.Post, await night.LinkAsync("Rui"))
        {
            Content = new FormUrlEncodedContent([new("enough", "Right")]),
        };
        request.Headers.Add(header, value);

        Assert.Equal(HttpStatusCode.Forbidden, (await night.App.Client.SendAsync(request, Cancellation)).StatusCode);
        Assert.Equal(0, (await night.Host.PastNightAsync(night.Night, Cancellation)).Opinions.People);
    }

    [Fact]
    public async Task Stays_light_after_many_nights_and_has_ids_once_and_labels_everywhere()
    {
        var night = await ServedNight.OfAsync(site, 1, "Rui", "Eva", "Ana", "Luis", "Zoe", "Kim", "Bo", "Max");
        await Task.WhenAll(Enumerable.Range(2, 14).Select(
            days => ServedNight.OfAsync(site, days, night.Guests, $"Night {days} {new string('n', 60)}")));

        var answer = await night.App.Client.GetAsync(await night.LinkAsync("Rui"), Cancellation);
        var document = await answer.DocumentAsync();
        var bytes = (await answer.Content.ReadAsByteArrayAsync(Cancellation)).Length;
        foreach (var sheet in document.QuerySelectorAll("link[rel=stylesheet]"))
        {
            bytes += (await night.App.Client.GetByteArrayAsync(sheet.GetAttribute("href"), Cancellation)).Length;
        }

        // The one font, which tokens.css names.
        bytes += (await night.App.Client.GetByteArrayAsync("/fonts/fraunces-latin-600-normal.woff2", Cancellation)).Length;

        Assert.InRange(bytes, 1, MostBytes);
        Assert.Empty(document.QuerySelectorAll("script, img"));
        Assert.Equal(12, document.QuerySelectorAll("details").Length);
        Assert.Contains("The 12 latest of 14 nights.", await answer.TextAsync(), StringComparison.Ordinal);
        var ids = document.QuerySelectorAll("[id]").Select(element => element.Id).ToList();
        Assert.Equal(ids.Count, ids.Distinct().Count());
        Assert.All(document.QuerySelectorAll("input:not([type=hidden]), textarea"), field => Assert.True(
            field.Closest("label") is not null || document.QuerySelector($"label[for='{field.Id}']") is not null, field.OuterHtml));
    }

    [Fact]
    public async Task Markup_in_words_is_shown_as_text()
    {
        var night = await ServedNight.OfAsync(site, 1, "Rui");
        await night.SayAsync("Rui", ("words", "</textarea><script>alert(1)</script>"));

        var document = await (await night.App.Client.GetAsync(await night.LinkAsync("Rui"), Cancellation)).DocumentAsync();

        Assert.Empty(document.QuerySelectorAll("script"));
        Assert.Contains("alert(1)", document.QuerySelector("#words")!.TextContent, StringComparison.Ordinal);
    }
}
