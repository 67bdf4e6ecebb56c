using System.Net;
using System.Text.Json.Nodes;

namespace GameNight.Web.Tests.Pages;

public class OwnDataTests(SharedApp site)
{
    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_guest_takes_along_what_is_kept_of_them()
    {
        var invited = await AnsweredAsync();

        var copy = await invited.App.Client.GetAsync($"{invited.Link}/my-data/copy.json", Cancellation);

        Assert.Equal("attachment", copy.Content.Headers.ContentDisposition!.DispositionType);
        Assert.True(copy.Headers.CacheControl!.NoStore);
        var document = JsonNode.Parse(await copy.Content.ReadAsStringAsync(Cancellation))!;
        Assert.Equal("Rui Own", (string?)document["name"]);
        Assert.Equal("mine to take", (string?)document["nights"]![0]!["dietary"]!["note"]);
    }

    [Fact]
    public async Task Removed_data_is_gone_at_once_and_the_page_says_what_is_kept()
    {
        var invited = await AnsweredAsync();
        Assert.Contains("/my-data", (await invited.OpenAsync()).Html, StringComparison.Ordinal);

        var unsure = await PostAsync(invited);
        var removed = await PostAsync(invited, ("sure", "on"));
        var again = await PostAsync(invited, ("sure", "on"));

        Assert.Equal(HttpStatusCode.BadRequest, unsure.StatusCode);
        Assert.Equal(HttpStatusCode.OK, removed.StatusCode);
        Assert.Contains("What is kept are counts of past nights without a name", await removed.TextAsync(), StringComparison.Ordinal);
        Assert.Contains("it is done", await again.TextAsync(), StringComparison.Ordinal);
        foreach (var path in new[] { "", "/my-data", "/my-data/copy.json", "/night.ics" })
        {
            Assert.Equal(HttpStatusCode.NotFound, (await invited.App.Client.GetAsync($"{invited.Link}{path}", Cancellation)).StatusCode);
        }

        Assert.DoesNotContain((await invited.Host.NightAsync(invited.Night, Cancellation)).Guests, guest => guest.Id == invited.Guest);
    }

    [Fact]
    public async Task Looking_removes_nothing_and_another_site_cannot()
    {
        var invited = await AnsweredAsync();
        await invited.App.Client.GetAsync($"{invited.Link}/my-data/remove", Cancellation);
        using var request = new HttpRequestMessage(HttpMethod.Post, $"{invited.Link}/my-data/remove")
        {
            Content = new FormUrlEncodedContent([new("sure", "on")]),
        };
        request.Headers.Add("Sec-Fetch-Site", "cross-site");

        var refused = await invited.App.Client.SendAsync(request, Cancellation);

        Assert.Equal(HttpStatusCode.Forbidden, refused.StatusCode);
        Assert.NotNull((await invited.SeenByHostAsync()).Answer);
    }

    [Fact]
    public async Task The_page_is_small_and_secret()
    {
        var invited = await site.InviteAsync();

        var page = await invited.App.Client.GetAsync($"{invited.Link}/my-data", Cancellation);

        Assert.True(page.Headers.CacheControl!.NoStore);
        Assert.Equal("no-referrer", page.Headers.GetValues("Referrer-Policy").Single());
        Assert.True((await page.Content.ReadAsByteArrayAsync(Cancellation)).Length < 60_000);
    }

    private async Task<Invited> AnsweredAsync()
    {
        var invited = await site.InviteAsync("Rui Own");
        await (await invited.OpenAsync()).SendAsync(Cancellation, ("presence", "Coming"), ("consent", "on"), ("note", "mine to take"));
        return invited;
    }

    private static Task<HttpResponseMessage> PostAsync(Invited invited, params IReadOnlyList<(string Name, string Value)> fields) =>
        invited.App.Client.PostAsync(
            $"{invited.Link}/my-data/remove",
            new FormUrlEncodedContent(fields.Select(field => KeyValuePair.Create(field.Name, field.Value))), Cancellation);
}
