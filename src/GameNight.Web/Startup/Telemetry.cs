using System.Diagnostics;
using GameNight.Nights;
using OpenTelemetry;
using OpenTelemetry.Metrics;
using OpenTelemetry.Resources;
using OpenTelemetry.Trace;

namespace GameNight.Web.Startup;

/// <summary>
/// Traces and metrics by OTLP, once <c>OTEL_EXPORTER_OTLP_ENDPOINT</c> names where to; without it nothing is registered.
/// The other <c>OTEL_…</c> variables work as usual.
/// </summary>
internal static class Telemetry
{
    private const string Endpoint = "OTEL_EXPORTER_OTLP_ENDPOINT";
    private const string ServiceName = "OTEL_SERVICE_NAME";

    /// <summary>Its commands become spans, and its pool metrics.</summary>
    private const string Postgres = "Npgsql";

    public static void AddTelemetry(this WebApplicationBuilder builder)
    {
        if (string.IsNullOrWhiteSpace(builder.Configuration[Endpoint]))
        {
            return;
        }

        builder.Services.AddOpenTelemetry()
            .ConfigureResource(resource => resource.AddService(
                builder.Configuration[ServiceName] ?? "gamenight",
                serviceVersion: typeof(Telemetry).Assembly.GetName().Version?.ToString(3)))
            .WithTracing(traces => traces
                .AddSource(NightsTelemetry.Name, Postgres)
                .AddAspNetCoreInstrumentation(requests =>
                    requests.Filter = context => !context.Request.Path.StartsWithSegments("/health"))
                .AddProcessor<TracesWithoutSecrets>()
                .AddOtlpExporter())
            .WithMetrics(metrics => metrics
                .AddMeter(
                    NightsTelemetry.Name, Postgres, "System.Runtime", "Microsoft.AspNetCore.Hosting",
                    "Microsoft.AspNetCore.Server.Kestrel", "Microsoft.AspNetCore.Components.Server.Circuits")
                .AddOtlpExporter());
    }

    /// <summary>
    /// Paths carry the secret part of private links, so a trace says the route and never the path; a path without a route
    /// could be a link that was copied wrong, and is left out.
    /// </summary>
    private sealed class TracesWithoutSecrets : BaseProcessor<Activity>
    {
        private const string Path = "url.path";
        private static readonly string[] Addresses = ["url.query", "url.full", "http.target", "http.url"];

        public override void OnEnd(Activity data)
        {
            if (data.GetTagItem(Path) is not null)
            {
                data.SetTag(Path, data.GetTagItem("http.route"));
            }

            foreach (var tag in Addresses)
            {
                data.SetTag(tag, null);
            }

            // The queue is looked at every few seconds; a command that belongs to no request and no plan is no news.
            if (data.Source.Name == Postgres && data.Parent is null && data.ParentSpanId == default)
            {
                data.ActivityTraceFlags &= ~ActivityTraceFlags.Recorded;
            }
        }
    }
}
