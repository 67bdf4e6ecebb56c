using GameNight.TestKit.Running;
using GameNight.Web.Tests.Pages;

namespace GameNight.Web.Tests.Mail;

/// <summary>
/// The app is killed twenty times while it sends; two hundred times in <c>./gamenight bench --kills 200</c>. The mail server is
/// the package SmtpServer.
/// </summary>
public sealed class MessageKillTests(ITestOutputHelper output)
{
    [Fact]
    public async Task In_twenty_kills_no_message_is_lost_and_a_repeat_bears_the_same_id()
    {
        var cancellation = TestContext.Current.CancellationToken;
        await using var sink = MailSink.Open();
        await using var app = await RunningApp.StartAsync(cancellation, solverSlices: 0, sink.Settings);
        using var visitor = new Visitor(app.Address);
        var founded = await visitor.FoundAsync(app.FirstAccountCode, SharedApp.Email, SharedApp.Password);
        await using var host = await HostAtWork.EnterAsync(app, founded.GroupId(), cancellation);

        var result = await MessageKills.RunAsync(app, host, sink, kills: 20, seed: 1, output.WriteLine, cancellation);

        Assert.Empty(result.Problems);
        Assert.Equal((20, 60), (result.Kills, result.Queued));

        // Each fifth kill at least hits the one window in which a repeat is possible, or the test would show nothing.
        Assert.InRange(result.Repeats, 5, 20);
    }
}
