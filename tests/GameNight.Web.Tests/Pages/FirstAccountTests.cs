using System.Net;
using GameNight.TestKit.Running;

namespace GameNight.Web.Tests.Pages;

public class FirstAccountTests
{
    private const string Password = "dough on every friday";

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Needs_the_printed_code_once_and_keeps_what_was_typed_when_refused()
    {
        await using var app = await RunningApp.StartAsync(Cancellation, solverSlices: 0);
        using var visitor = new Visitor(app.Address);
        var (name, group) = (EncodingTests.Script, EncodingTests.Image);

        var refused = await visitor.FoundAsync("AAAA-BBBB-CCCC", "ines@example.org", Password, name, group);
        var page = await refused.Content.ReadAsStringAsync(Cancellation);

        Assert.Equal(HttpStatusCode.BadRequest, refused.StatusCode);
        Assert.Contains("The code is not the one printed", page, StringComparison.Ordinal);
        EncodingTests.AssertText(page, name);
        Assert.DoesNotContain(Password, page, StringComparison.Ordinal);
        Assert.Equal(name, (await refused.DocumentAsync()).QuerySelector("#name")!.GetAttribute("value"));

        var founded = await visitor.FoundAsync(app.FirstAccountCode.ToLowerInvariant(), "ines@example.org", Password, name, group);

        Assert.Equal(HttpStatusCode.OK, (await visitor.Client.GetAsync(founded.Headers.Location, Cancellation)).StatusCode);
        await AssertGuestsReadTextAsync(app, founded.GroupId());

        using var second = new Visitor(app.Address);
        var again = await second.PostAsync("/first", [("code", app.FirstAccountCode), ("email", "eve@example.org"), ("password", Password)]);

        Assert.Equal("/sign-in", again.Headers.Location!.ToString());
        Assert.Equal(1, await HostAtWork.AskAsync<long>(app, "select count(*) from accounts", Cancellation));
    }

    /// <summary>Names of host and group stand on every invitation.</summary>
    private static async Task AssertGuestsReadTextAsync(RunningApp app, Guid group)
    {
        await using var host = await HostAtWork.EnterAsync(app, group, Cancellation);
        var guest = await host.KnowAsync("Rui", Cancellation);
        var night = await host.OpenNightAsync([guest], Cancellation);
        var page = await AnswerPage.OpenAsync(app.Client, await host.LinkAsync(night, guest, Cancellation), Cancellation);
        EncodingTests.AssertText(page.Html, EncodingTests.Script);
        EncodingTests.AssertText(page.Html, EncodingTests.Image);
    }
}
