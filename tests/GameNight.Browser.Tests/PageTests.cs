using static Microsoft.Playwright.Assertions;

namespace GameNight.Browser.Tests;

/// <summary>Every page by itself: looks, contrast, labels, width, and a quiet console.</summary>
public class PageTests(Site site)
{
    private static readonly Lock Once = new();
    private static Task<ANight>? _night;

    [Theory]
    [InlineData("nights", "")]
    [InlineData("people", "/people")]
    [InlineData("kitchen", "/kitchen")]
    [InlineData("doughs", "/doughs")]
    [InlineData("menu", "/menu")]
    [InlineData("house-sauce", "/sauce")]
    [InlineData("new", "/new")]
    public async Task Pages_of_the_group_look_right(string name, string path)
    {
        await NightAsync();
        await using var host = await site.HostScreenAsync();

        await host.GoLiveAsync(await site.GroupPathAsync() + path);
        await Expect(host.Page.Locator(".shell > * >> nth=2").Or(host.Page.Locator(".rows, form")).First).ToBeVisibleAsync();
        await host.CheckLooksAsync(name);

        Assert.Empty(host.Faults);
    }

    [Theory]
    [InlineData("plan", "", "#pies-title")]
    [InlineData("guests", "/guests", ".rows")]
    [InlineData("dough", "/dough", ".linechart")]
    [InlineData("compare", "/compare", ".compare")]
    [InlineData("oven", "/oven", ".linechart")]
    [InlineData("sauce", "/sauce", "main h2")]
    [InlineData("timeline", "/timeline", ".evening")]
    [InlineData("live", "/live", ".nextstep")]
    [InlineData("change", "/change", "form")]
    [InlineData("print", "/print", ".printchoice")]
    [InlineData("print-sheets", "/print/sheets", ".papers")]
    public async Task Pages_of_the_night_look_right(string name, string path, string mark)
    {
        var night = await NightAsync();
        await using var host = await site.HostScreenAsync();

        await host.GoLiveAsync(night.Path + path);
        await Expect(host.Page.Locator(mark).First).ToBeVisibleAsync();
        await Expect(host.Page.Locator(".working:not(:empty)")).ToHaveCountAsync(0, new() { Timeout = 30_000 });
        await host.OpenEverythingAsync();
        await host.CheckLooksAsync(name);

        Assert.Empty(host.Faults);
    }

    [Theory]
    [InlineData("dough-form", "/doughs", "Write down another dough")]
    [InlineData("menu-form", "/menu", "Add a topping")]
    public async Task Forms_that_open_on_a_page_look_right(string name, string path, string button)
    {
        await using var host = await site.HostScreenAsync();

        await host.GoLiveAsync(await site.GroupPathAsync() + path);
        await host.Button(button).ClickAsync();
        await Expect(host.Page.Locator("form.sheet")).ToBeVisibleAsync();
        await host.CheckLooksAsync(name);

        Assert.Empty(host.Faults);
    }

    [Theory]
    [InlineData("sign-in", "/sign-in")]
    [InlineData("sign-in-code", "/sign-in/code")]
    [InlineData("sign-out", "/sign-out")]
    [InlineData("link-not-valid", "/i/unknown")]
    [InlineData("not-there", "/no-such-page")]
    public async Task Plain_pages_look_right(string name, string path)
    {
        await using var visitor = await site.GuestScreenAsync();

        await visitor.GoAsync(path);
        await visitor.CheckLooksAsync(name);

        Assert.DoesNotContain(visitor.Faults, fault => !fault.Contains("404", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Pages_of_the_account_and_of_moving_look_right()
    {
        await using var host = await site.HostScreenAsync();

        foreach (var (name, path) in PageList.OfAccounts.Concat(PageList.OfOwners(await site.GroupPathAsync())))
        {
            await host.GoProvenAsync(path);
            await host.OpenEverythingAsync();
            await host.CheckLooksAsync(name);
        }

        Assert.Empty(host.Faults);
    }

    [Theory]
    [InlineData("Zoe", "answer-empty")]
    [InlineData("Eva", "answer-given")]
    public async Task The_answer_page_looks_right_with_everything_opened(string name, string picture)
    {
        var night = await NightAsync();
        await using var guest = await site.GuestScreenAsync();

        await guest.GoAsync(await night.LinkAsync(name) + "?sent=yes");
        await guest.CheckLooksAsync(picture);
        await guest.OpenEverythingAsync();
        await guest.CheckLooksAsync(picture + "-open");

        Assert.Empty(guest.Faults);
    }

    [Fact]
    public async Task A_host_page_is_live_over_a_web_socket()
    {
        await using var host = await site.HostScreenAsync();

        await host.GoLiveAsync(await site.GroupPathAsync());

        Assert.Contains(host.WebSockets, url => url.StartsWith("ws://", StringComparison.Ordinal) && url.Contains("/_blazor", StringComparison.Ordinal));
        Assert.DoesNotContain(host.Polls, url => !host.WebSockets.Any(socket => socket[2..] == url[4..]));
    }

    [Fact]
    public async Task Markup_in_what_guests_typed_reaches_the_host_as_text()
    {
        const string markup = "<img src=x onerror=alert(1)>";
        var night = await site.NightAsync(markup);
        await night.AnswerAsync(markup, ("presence", "Coming"), ("consent", "on"), ("must0-Nuts", "t"), ("note", markup + "<script>alert(2)</script>"));
        await using var host = await site.HostScreenAsync();

        foreach (var path in new[] { "/guests", "", "/print/sheets" })
        {
            await host.GoLiveAsync(night.Path + path);
            await Expect(host.Page.GetByText(markup).First).ToBeAttachedAsync(new() { Timeout = 30_000 });
        }

        Assert.Equal(0, await host.Page.Locator("main img").CountAsync());
        Assert.Empty(host.Faults);
    }

    /// <summary>A night with every kind of answer, shared by these tests.</summary>
    private Task<ANight> NightAsync()
    {
        lock (Once)
        {
            return _night ??= MakeAsync();
        }

        async Task<ANight> MakeAsync()
        {
            var night = await site.NightAsync("Rui", "Eva", "Ana", "Luis", "Zoe", "Maximiliane-Theodora Longname of the Hills");
            await night.AnswerAsync("Rui", ("presence", "Coming"), ("companion1", "Adult"), ("companion2", "Child"), ("hunger", "More"));
            await night.AnswerAsync(
                "Eva", ("presence", "Coming"), ("consent", "on"), ("diet0-Vegetarian", "on"), ("must0-Nuts", "t"),
                ("must0-Milk", "t"), ("note", "Please tell me before you shop, I can bring my own cheese."));
            await night.AnswerAsync("Ana", ("presence", "Undecided"));
            await night.AnswerAsync("Luis", ("presence", "NotComing"));
            return night;
        }
    }
}
