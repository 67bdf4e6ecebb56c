using System.Net;
using AngleSharp.Html.Dom;

namespace GameNight.Web.Tests.Pages;

public class InvitationPageTests(SharedApp site)
{
    /// <summary>All that a guest's phone loads for the page, uncompressed.</summary>
    private const int MostBytes = 60_000;

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Says_who_asks_when_and_whose_answer_it_is()
    {
        var invited = await site.InviteAsync("Rui");

        var page = await invited.OpenAsync();

        Assert.Contains("Thursday table asks", page.Html, StringComparison.Ordinal);
        Assert.Contains("19:30", page.Html, StringComparison.Ordinal);
        Assert.Contains("Answering as <strong>Rui</strong>", page.Html, StringComparison.Ordinal);
        Assert.Contains("I am not Rui", page.Html, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_address_is_for_those_who_come()
    {
        var invited = await site.InviteAsync();
        var page = await invited.OpenAsync();
        Assert.DoesNotContain("Rua das Flores", page.Html, StringComparison.Ordinal);
        Assert.Contains("The address is shown here to those who come.", page.Html, StringComparison.Ordinal);

        await page.SendAsync(Cancellation, ("presence", "Coming"));

        Assert.Contains("Rua das Flores 7", (await invited.OpenAsync()).Html, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Carries_the_moment_for_a_reader_whose_own_clock_differs()
    {
        var invited = await site.InviteAsync();

        var document = await (await invited.App.Client.GetAsync(invited.Link, Cancellation)).DocumentAsync();
        var own = document.QuerySelector("[data-moment]")!;

        Assert.True(own.HasAttribute("hidden"));
        Assert.Equal("{0} in {1}", own.GetAttribute("data-text"));
        Assert.EndsWith("Z", own.GetAttribute("data-moment"), StringComparison.Ordinal);
        Assert.Contains(" in Asia/Tokyo", await invited.App.Client.GetStringAsync($"{invited.Link}?zone=Asia/Tokyo", Cancellation), StringComparison.Ordinal);
        Assert.Contains(
            "The time zone Nowhere is not known", await invited.App.Client.GetStringAsync($"{invited.Link}?zone=Nowhere", Cancellation), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Stays_light_with_everything_it_loads()
    {
        var invited = await site.InviteAsync();
        var client = invited.App.Client;
        var page = await client.GetAsync(invited.Link, Cancellation);
        var document = await page.DocumentAsync();
        var bytes = (await page.Content.ReadAsByteArrayAsync(Cancellation)).Length;

        foreach (var path in Loaded(document))
        {
            var part = await client.GetAsync(path, Cancellation);
            Assert.Equal(HttpStatusCode.OK, part.StatusCode);
            bytes += (await part.Content.ReadAsByteArrayAsync(Cancellation)).Length;
            foreach (var font in await FontsAsync(part))
            {
                bytes += (await client.GetByteArrayAsync(new Uri(new Uri(client.BaseAddress!, path), font), Cancellation)).Length;
            }
        }

        Assert.InRange(bytes, 1, MostBytes);
    }

    [Fact]
    public async Task Needs_no_circuit_and_no_component_kit()
    {
        var invited = await site.InviteAsync();

        var page = await invited.OpenAsync();

        Assert.DoesNotContain("blazor", page.Html, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("mud", page.Html, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("<!--Blazor", page.Html, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Looking_changes_nothing_and_sets_no_cookie()
    {
        var invited = await site.InviteAsync();
        var client = invited.App.Client;

        foreach (var method in new[] { HttpMethod.Get, HttpMethod.Head, HttpMethod.Get })
        {
            foreach (var path in new[] { "", "?sent=yes", "/night.ics", "/not-me" })
            {
                var answer = await client.SendAsync(new HttpRequestMessage(method, invited.Link + path), Cancellation);
                Assert.False(answer.Headers.Contains("Set-Cookie"));
                Assert.Equal(path == "/not-me" ? HttpStatusCode.NotFound : HttpStatusCode.OK, answer.StatusCode);
            }
        }

        var seen = await invited.SeenByHostAsync();
        Assert.Null(seen.Answer);
        Assert.False(seen.LinkWasDisowned);
    }

    [Fact]
    public async Task Nobody_is_thanked_who_has_not_answered()
    {
        var invited = await site.InviteAsync();

        var page = await invited.App.Client.GetStringAsync($"{invited.Link}?sent=yes", Cancellation);

        Assert.DoesNotContain("Your answer is kept", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_head_request_is_answered_like_a_get_without_a_body()
    {
        var invited = await site.InviteAsync();

        var answer = await invited.App.Client.SendAsync(new HttpRequestMessage(HttpMethod.Head, invited.Link), Cancellation);

        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Equal("text/html", answer.Content.Headers.ContentType!.MediaType);
        Assert.Empty(await answer.Content.ReadAsByteArrayAsync(Cancellation));
    }

    [Fact]
    public async Task A_messenger_that_previews_the_link_learns_nothing()
    {
        var invited = await site.InviteAsync();

        var document = await (await invited.App.Client.GetAsync(invited.Link, Cancellation)).DocumentAsync();

        Assert.Equal("You are invited", document.QuerySelector("meta[property='og:title']")!.GetAttribute("content"));
        Assert.Null(document.QuerySelector("meta[property='og:description'], meta[name=description]"));
    }

    [Fact]
    public async Task Whoever_got_somebody_elses_link_can_say_so()
    {
        var invited = await site.InviteAsync();

        var answer = await invited.App.Client.PostAsync($"{invited.Link}/not-me", null, Cancellation);

        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.True((await invited.SeenByHostAsync()).LinkWasDisowned);
        Assert.Contains("Somebody said that this link is not theirs", (await invited.OpenAsync()).Html, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Every_field_has_a_label()
    {
        var invited = await site.InviteAsync();

        var document = await (await invited.App.Client.GetAsync(invited.Link, Cancellation)).DocumentAsync();
        var fields = document.QuerySelectorAll("input:not([type=hidden]), select, textarea").ToList();

        Assert.NotEmpty(fields);
        Assert.All(fields, field => Assert.True(
            field.Closest("label") is not null || document.QuerySelector($"label[for='{field.Id}']") is not null,
            field.OuterHtml));
    }

    private static List<string> Loaded(IHtmlDocument document) =>
    [
        .. document.QuerySelectorAll("link[rel=stylesheet]").Select(link => link.GetAttribute("href")!),
        .. document.QuerySelectorAll("script[src]").Select(script => script.GetAttribute("src")!),
        .. document.QuerySelectorAll("img[src]").Select(image => image.GetAttribute("src")!),
    ];

    private static async Task<IEnumerable<string>> FontsAsync(HttpResponseMessage sheet) =>
        sheet.Content.Headers.ContentType?.MediaType != "text/css" ? []
        : (await sheet.Content.ReadAsStringAsync(Cancellation)).Split("url(").Skip(1).Select(rest => rest[..rest.IndexOf(')')].Trim('"'));
}
