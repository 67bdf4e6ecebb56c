using System.Text.Json;
using GameNight.TestKit.Postgres;
using GameNight.TestKit.Running;
using GameNight.Web.Startup;
using GameNight.Web.Tests.Pages;
using Microsoft.Extensions.DependencyInjection;
using OpenTelemetry.Metrics;
using OpenTelemetry.Trace;

namespace GameNight.Web.Tests.Startup;

public class TelemetryTests
{
    private const string Name = "Zephyrine";
    private const string Note = "sesame-sends-me-to-hospital";
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(40);

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Traces_metrics_and_log_of_a_whole_journey_hold_no_link_no_name_and_no_note()
    {
        using var receiver = new OtlpReceiver();
        await using var app = await RunningApp.StartAsync(Cancellation, solverSlices: 0, new Dictionary<string, string?>
        {
            ["OTEL_EXPORTER_OTLP_ENDPOINT"] = receiver.Address,
            ["OTEL_EXPORTER_OTLP_PROTOCOL"] = "http/protobuf",
            ["OTEL_BSP_SCHEDULE_DELAY"] = "200",
            ["OTEL_METRIC_EXPORT_INTERVAL"] = "500",
            ["GAMENIGHT_LOG"] = "json",
        });
        var link = await JourneyAsync(app);
        await UntilAsync(() => receiver.Metrics.Contains("gamenight.plan.slices", StringComparison.Ordinal), "a plan was made");
        await app.StopAsync(Cancellation);

        // What is looked for below would be found: the journey was seen.
        Assert.Contains("/i/{token}", receiver.Traces, StringComparison.Ordinal);
        Assert.Contains("gamenight.outcome", receiver.Traces, StringComparison.Ordinal);
        Assert.Contains("dietary_notes", receiver.Traces, StringComparison.Ordinal);
        Assert.Contains("gamenight.answers", receiver.Metrics, StringComparison.Ordinal);
        Assert.Contains("gamenight.replan.waiting", receiver.Metrics, StringComparison.Ordinal);
        Assert.Contains("http.server.request.duration", receiver.Metrics, StringComparison.Ordinal);

        var token = link["/i/".Length..];
        foreach (var told in new[] { receiver.Everything, app.Log })
        {
            Assert.DoesNotContain(token[..20], told, StringComparison.OrdinalIgnoreCase);
            Assert.DoesNotContain(Name, told, StringComparison.OrdinalIgnoreCase);
            Assert.DoesNotContain(Note, told, StringComparison.OrdinalIgnoreCase);
            Assert.DoesNotContain(SharedApp.Email, told, StringComparison.OrdinalIgnoreCase);
        }

        Assert.DoesNotContain("/health", receiver.Traces, StringComparison.Ordinal);
        Assert.Contains("GameNight is open at", app.Log, StringComparison.Ordinal);

        // Before the app there is only the private database's progress, in lines for people.
        var log = app.Log.Split('\n', StringSplitOptions.RemoveEmptyEntries);
        Assert.All(
            log.SkipWhile(line => line[0] != '{'),
            line => Assert.NotNull(JsonDocument.Parse(line).RootElement.GetProperty("Message").GetString()));
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task Nothing_is_exported_before_it_is_said_where_to(bool isSaid)
    {
        await using var root = await TemporaryDataRoot.MakeAsync(Cancellation);
        string[] where = isSaid ? ["--OTEL_EXPORTER_OTLP_ENDPOINT=http://127.0.0.1:9"] : [];

        await using var app = GameNightApp.Build(where, new GameNightOptions { Data = root.Path }, "Host=nowhere");

        Assert.Equal(isSaid, app.Services.GetService<TracerProvider>() is not null);
        Assert.Equal(isSaid, app.Services.GetService<MeterProvider>() is not null);
    }

    /// <summary>A group is founded, a guest invited; they answer with a note, and mistype their link in three ways.</summary>
    /// <returns>The guest's link.</returns>
    private static async Task<string> JourneyAsync(RunningApp app)
    {
        using var visitor = new Visitor(app.Address);
        var founded = await visitor.FoundAsync(app.FirstAccountCode, SharedApp.Email, SharedApp.Password);
        await using var host = await HostAtWork.EnterAsync(app, founded.GroupId(), Cancellation);
        var guest = await host.KnowAsync(Name, Cancellation);
        var night = await host.OpenNightAsync([guest], Cancellation);
        var link = await host.LinkAsync(night, guest, Cancellation);

        var page = await AnswerPage.OpenAsync(app.Client, link, Cancellation);
        await page.SendAsync(Cancellation, ("presence", "Coming"), ("consent", "on"), ("must0-Sesame", "t"), ("note", Note));
        await app.Client.GetAsync($"{link}?sent=yes", Cancellation);
        await app.Client.GetAsync($"{link}/night.ics", Cancellation);
        await app.Client.GetAsync($"{link}/extra", Cancellation);
        await app.Client.GetAsync($"/no-such-page?link={link}", Cancellation);
        await app.Client.GetAsync(link.ToUpperInvariant(), Cancellation);
        return link;
    }

    private static async Task UntilAsync(Func<bool> isSo, string what)
    {
        var giveUp = DateTime.UtcNow + Patience;
        while (!isSo())
        {
            Assert.True(DateTime.UtcNow < giveUp, $"Waited in vain: {what}");
            await Task.Delay(100, Cancellation);
        }
    }
}
