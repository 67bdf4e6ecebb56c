namespace GameNight.Web.Tests.Pages;

public class EncodingTests(SharedApp site)
{
    internal const string Script = "<script>alert(1)</script>";
    internal const string Image = "\"'><img src=x onerror=alert(1)>";

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData(Script)]
    [InlineData(Image)]
    public async Task Markup_in_what_hosts_type_reaches_guests_as_text(string text)
    {
        var invited = await site.InviteAsync(text, facts => facts with { Title = text, Address = text, Bring = text });
        var page = await invited.OpenAsync();
        await page.SendAsync(Cancellation, ("presence", "Coming"));

        var answered = await invited.OpenAsync();

        AssertText(page.Html, text);
        AssertText(answered.Html, text);
        Assert.Contains("alert(1)", answered.Html, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(Script)]
    [InlineData(Image)]
    public async Task Markup_in_what_guests_type_comes_back_as_text(string text)
    {
        var invited = await site.InviteAsync();
        var page = await invited.OpenAsync();
        (string, string)[] everywhere =
        [
            ("note", text + "</textarea>" + text), ("consent", "on"), ("hunger", text), ("companion1", text), ("must0-Nuts", text),
            ("like-x", text), ("revision", text), ("key", text),
        ];

        var refused = await page.SendAsync(Cancellation, everywhere);
        await page.SendAsync(Cancellation, [("presence", "Coming"), .. everywhere]);

        AssertText(await refused.Content.ReadAsStringAsync(Cancellation), text);
        var kept = await invited.OpenAsync();
        AssertText(kept.Html, text);
        Assert.Contains("alert(1)", kept.Html, StringComparison.Ordinal);
        AssertText(await invited.App.Client.GetStringAsync($"{invited.Link}?sent={Uri.EscapeDataString(text)}", Cancellation), text);
    }

    internal static void AssertText(string html, string text)
    {
        Assert.DoesNotContain(text, html, StringComparison.Ordinal);
        Assert.DoesNotContain("<script>alert", html, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("<img", html, StringComparison.OrdinalIgnoreCase);
    }
}
