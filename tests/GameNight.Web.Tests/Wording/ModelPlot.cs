using GameNight.Web.Drawings;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Web;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;

namespace GameNight.Web.Tests.Wording;

/// <summary>A plot of a model for <c>shared/models</c>, drawn by the same chart as on screen and readable by itself.</summary>
internal sealed record ModelPlot(
    string File, string Label, ChartScale Scale, double From, double Until, IReadOnlyList<ChartLine> Lines, IReadOnlyList<ChartMark> Marks,
    IReadOnlyList<ChartSpan>? Spans = null)
{
    private const string Style = """
        <style>svg{background:#fffdf8;font-family:sans-serif}text{font-size:13px;fill:#5b5f68}.name,.span-name{font-weight:700;fill:#24262b;paint-order:stroke;stroke:#fffdf8;stroke-width:4px}.span-name{stroke:none}.grid{stroke:#d9d2c3}.base,.tick{stroke:#24262b;stroke-width:1.5}.course{fill:none;stroke:#24262b;stroke-width:2.5}.second{stroke:#b9783a;stroke-dasharray:8 4}.third{stroke:#5b5f68;stroke-dasharray:2 4}.span{fill:#f2b84b;opacity:.35}.moment{stroke:#24262b;stroke-dasharray:3 3}</style>
        """;

    public async Task<string> DrawnAsync()
    {
        await using var services = new ServiceCollection().AddLogging().BuildServiceProvider();
        await using var renderer = new HtmlRenderer(services, services.GetRequiredService<ILoggerFactory>());
        var html = await renderer.Dispatcher.InvokeAsync(async () => (await renderer.RenderComponentAsync<LineChart>(ParameterView.FromDictionary(
            new Dictionary<string, object?>
            {
                [nameof(LineChart.Label)] = Label,
                [nameof(LineChart.Scale)] = Scale,
                [nameof(LineChart.From)] = From,
                [nameof(LineChart.Until)] = Until,
                [nameof(LineChart.Lines)] = Lines,
                [nameof(LineChart.Marks)] = Marks,
                [nameof(LineChart.Spans)] = Spans ?? [],
            }))).ToHtmlString());
        var svg = html[html.IndexOf("<svg", StringComparison.Ordinal)..(html.IndexOf("</svg>", StringComparison.Ordinal) + 6)];
        var open = svg.IndexOf('>', StringComparison.Ordinal);
        return $"{svg[..open].Replace("<svg", "<svg xmlns=\"http://www.w3.org/2000/svg\"", StringComparison.Ordinal)}>{Style}{svg[(open + 1)..]}\n";
    }
}
