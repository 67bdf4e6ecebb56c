using System.Net;

namespace GameNight.Web.Tests.Pages;

public sealed class ContactPageTests(SharedApp site)
{
    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Fact]
    public async Task An_address_is_kept_only_with_consent_and_taken_away_again()
    {
        var invited = await site.InviteAsync();

        var unsaid = await SendAsync(invited, "", ("address", "rui@example.org"));
        Assert.Equal(HttpStatusCode.BadRequest, unsaid.StatusCode);
        Assert.Equal("", await AddressAsync(invited));

        Assert.Equal(HttpStatusCode.SeeOther, (await SendAsync(invited, "", ("address", " rui@example.org "), ("consent", "on"))).StatusCode);
        Assert.Equal("rui@example.org", await AddressAsync(invited));
        Assert.Contains(
            "rui@example.org", await invited.App.Client.GetStringAsync($"{invited.Link}/my-data/copy.json", Cancellation), StringComparison.Ordinal);

        Assert.Equal(HttpStatusCode.SeeOther, (await SendAsync(invited, "", ("address", ""))).StatusCode);
        Assert.Equal("", await AddressAsync(invited));
    }

    [Theory]
    [InlineData("rui")]
    [InlineData("rui@example.org\r\nBcc: ines@example.org")]
    [InlineData("Rui <rui@example.org>")]
    [InlineData("<img src=x onerror=alert(1)>")]
    public async Task What_is_no_address_is_not_kept_and_shown_again_as_text(string typed)
    {
        var invited = await site.InviteAsync();

        var refused = await SendAsync(invited, "", ("address", typed), ("consent", "on"));

        Assert.Equal(HttpStatusCode.BadRequest, refused.StatusCode);
        var page = await refused.DocumentAsync();
        Assert.Empty(page.QuerySelectorAll("img"));
        Assert.NotNull(page.QuerySelector("[role=alert]"));
        Assert.Equal("", await AddressAsync(invited));
    }

    [Fact]
    public async Task Messages_stop_and_start_with_one_tap_and_never_by_looking()
    {
        var invited = await site.InviteAsync();
        await SendAsync(invited, "", ("address", "rui@example.org"), ("consent", "on"));
        await SendAsync(invited, "/stop");
        Assert.True(await IsStoppedAsync(invited));
        await SendAsync(invited, "/start");
        Assert.False(await IsStoppedAsync(invited));

        foreach (var method in new[] { HttpMethod.Get, HttpMethod.Head })
        {
            foreach (var path in new[] { "", "/stop", "/start", "/calendar" })
            {
                await invited.App.Client.SendAsync(new HttpRequestMessage(method, $"{invited.Link}/messages{path}"), Cancellation);
            }
        }

        Assert.False(await IsStoppedAsync(invited));
    }

    [Fact]
    public async Task A_form_from_another_site_changes_nothing()
    {
        var invited = await site.InviteAsync();
        var request = new HttpRequestMessage(HttpMethod.Post, $"{invited.Link}/messages/stop");
        request.Headers.Add("Sec-Fetch-Site", "cross-site");

        Assert.Equal(HttpStatusCode.NotFound, (await invited.App.Client.SendAsync(request, Cancellation)).StatusCode);
        Assert.False(await IsStoppedAsync(invited));
    }

    [Fact]
    public async Task Without_a_mail_server_nobody_is_asked_for_an_address_and_one_that_is_kept_can_be_removed()
    {
        var invited = await site.InviteAsync();

        var page = await invited.App.Client.GetStringAsync($"{invited.Link}/messages", Cancellation);
        Assert.DoesNotContain("e-mail", page, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("Make my calendar link", page, StringComparison.Ordinal);

        await SendAsync(invited, "", ("address", "rui@example.org"), ("consent", "on"));
        Assert.Contains("rui@example.org", await invited.App.Client.GetStringAsync($"{invited.Link}/messages", Cancellation), StringComparison.Ordinal);
    }

    private static Task<HttpResponseMessage> SendAsync(
        Invited invited, string path, params IReadOnlyList<(string Name, string Value)> fields) => invited.App.Client.PostAsync(
            $"{invited.Link}/messages{path}",
            new FormUrlEncodedContent(fields.Select(field => KeyValuePair.Create(field.Name, field.Value))), Cancellation);

    private static async Task<string> AddressAsync(Invited invited) =>
        (await (await invited.App.Client.GetAsync($"{invited.Link}/messages", Cancellation)).DocumentAsync())
            .QuerySelector("#address")?.GetAttribute("value") ?? "";

    private static async Task<bool> IsStoppedAsync(Invited invited) =>
        (await (await invited.App.Client.GetAsync($"{invited.Link}/messages", Cancellation)).DocumentAsync())
            .QuerySelector("form[action$='/messages/start']") is not null;
}
