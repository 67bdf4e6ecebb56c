using System.Net;
using GameNight.Nights.Records;

namespace GameNight.Web.Tests.Pages;

public class JoiningTests(SharedApp site)
{
    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Somebody_new_makes_an_account_joins_and_is_signed_in()
    {
        var link = await LinkAsync();
        using var visitor = await VisitorAsync();

        var joined = await visitor.SendAsync(link, New("noor@example.org"));

        Assert.Equal(HttpStatusCode.Redirect, joined.StatusCode);
        Assert.Equal($"/g/{(await site.HostAsync()).Group}", joined.Headers.Location!.ToString());
        Assert.Equal(HttpStatusCode.OK, (await visitor.Client.GetAsync(joined.Headers.Location, Cancellation)).StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, (await visitor.Client.GetAsync(link, Cancellation)).StatusCode);
    }

    [Fact]
    public async Task What_was_typed_stays_when_it_is_refused_and_the_link_still_works()
    {
        var link = await LinkAsync();
        using var visitor = await VisitorAsync();

        var refused = await visitor.SendAsync(
            link, ("how", "new"), ("name", "Kofi"), ("email", "kofi@example.org"), ("password", "short"));
        var page = await refused.DocumentAsync();

        Assert.Equal(HttpStatusCode.BadRequest, refused.StatusCode);
        Assert.Contains("12 to 128 characters", page.QuerySelector("[role=alert]")!.TextContent, StringComparison.Ordinal);
        Assert.Equal("Kofi", page.QuerySelector("#name")!.GetAttribute("value"));
        Assert.Equal("kofi@example.org", page.QuerySelector("#email")!.GetAttribute("value"));
        Assert.Equal(HttpStatusCode.Redirect, (await visitor.SendAsync(link, New("kofi@example.org"))).StatusCode);
    }

    [Fact]
    public async Task Somebody_with_an_account_signs_in_and_joins_at_once()
    {
        using var first = await VisitorAsync();
        await first.SendAsync(await LinkAsync(), New("mara@example.org"));
        var again = await LinkAsync();
        using var visitor = await VisitorAsync();

        var wrong = await visitor.SendAsync(again, ("how", "known"), ("email", "mara@example.org"), ("password", "not this sentence"));
        var unknown = await visitor.SendAsync(again, ("how", "known"), ("email", "nobody@example.org"), ("password", "not this sentence"));
        var taken = await visitor.SendAsync(again, New("mara@example.org"));
        var joined = await visitor.SendAsync(again, ("how", "known"), ("email", "mara@example.org"), ("password", Password));

        Assert.Equal(Alert(await wrong.DocumentAsync()), Alert(await unknown.DocumentAsync()));
        Assert.Contains("I have an account", Alert(await taken.DocumentAsync()), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.Redirect, joined.StatusCode);
    }

    [Fact]
    public async Task A_form_from_another_site_joins_nobody()
    {
        var link = await LinkAsync();
        using var visitor = await VisitorAsync();

        var refused = await visitor.PostAsync(link, New("ida@example.org"));

        Assert.Equal(HttpStatusCode.BadRequest, refused.StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await visitor.Client.GetAsync(link, Cancellation)).StatusCode);
    }

    [Fact]
    public async Task The_page_tells_previewers_nothing_and_is_kept_nowhere()
    {
        var client = await site.ClientAsync();

        var answer = await client.GetAsync(await LinkAsync(), Cancellation);
        var page = await answer.DocumentAsync();

        Assert.True(answer.Headers.CacheControl!.NoStore);
        Assert.Equal("no-referrer", Assert.Single(answer.Headers.GetValues("Referrer-Policy")));
        Assert.DoesNotContain("Thursday table", page.Head!.InnerHtml, StringComparison.Ordinal);
        Assert.Contains("Thursday table", page.Body!.TextContent, StringComparison.Ordinal);
    }

    private const string Password = "a sentence of its own";

    private static (string Name, string Value)[] New(string email) =>
        [("how", "new"), ("name", "Noor"), ("email", email), ("password", Password)];

    private static string Alert(AngleSharp.Html.Dom.IHtmlDocument page) => page.QuerySelector("[role=alert]")!.TextContent;

    private async Task<Visitor> VisitorAsync() => new((await site.AppAsync()).Address);

    private async Task<string> LinkAsync() => await (await site.HostAsync()).AskToHostAsync("Noor", HostRole.Organiser, Cancellation);
}
