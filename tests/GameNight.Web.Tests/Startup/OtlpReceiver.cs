using System.Collections.Concurrent;
using System.Net;
using System.Text;
using GameNight.TestKit.Running;

namespace GameNight.Web.Tests.Startup;

/// <summary>Takes what an app exports and keeps it as it came over the wire: texts stand in it letter by letter.</summary>
internal sealed class OtlpReceiver : IDisposable
{
    private readonly HttpListener _listener = new();
    private readonly ConcurrentQueue<(string Path, string Body)> _received = new();

    public OtlpReceiver()
    {
        Address = $"http://127.0.0.1:{RunningApp.FreePort()}";
        _listener.Prefixes.Add($"{Address}/");
        _listener.Start();
        _ = ReceiveAsync();
    }

    public string Address { get; }

    public string Traces => Of("/v1/traces");

    public string Metrics => Of("/v1/metrics");

    public string Everything => string.Concat(_received.Select(message => message.Body));

    public void Dispose() => _listener.Close();

    private string Of(string path) =>
        string.Concat(_received.Where(message => message.Path == path).Select(message => message.Body));

    private async Task ReceiveAsync()
    {
        try
        {
            while (true)
            {
                var context = await _listener.GetContextAsync();
                using var body = new MemoryStream();
                await context.Request.InputStream.CopyToAsync(body);
                _received.Enqueue((context.Request.Url!.AbsolutePath, Encoding.Latin1.GetString(body.ToArray())));
                context.Response.Close();
            }
        }
        catch (Exception ended) when (ended is HttpListenerException or ObjectDisposedException)
        {
            // Disposed.
        }
    }
}
