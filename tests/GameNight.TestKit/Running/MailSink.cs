using System.Buffers;
using System.Collections.Concurrent;
using MimeKit;
using SmtpServer;
using SmtpServer.Mail;
using SmtpServer.Protocol;
using SmtpServer.Storage;

namespace GameNight.TestKit.Running;

/// <summary>A mail server on this machine that keeps what it takes, and can be told to refuse.</summary>
public sealed class MailSink : IAsyncDisposable
{
    private readonly CancellationTokenSource _end = new();
    private readonly SmtpServer.SmtpServer _server;
    private readonly ConcurrentQueue<MimeMessage> _mails = new();
    private readonly Task _listening;

    private MailSink(int port)
    {
        Port = port;
        var services = new SmtpServer.ComponentModel.ServiceProvider();
        services.Add(new Filter(this));
        services.Add(new Store(this));
        _server = new SmtpServer.SmtpServer(
            new SmtpServerOptionsBuilder().ServerName("localhost")
                .Endpoint(endpoint => endpoint.Endpoint(new System.Net.IPEndPoint(System.Net.IPAddress.Loopback, port))).Build(),
            services);
        _listening = _server.StartAsync(_end.Token);
    }

    public int Port { get; }

    /// <summary>In the order in which they were taken.</summary>
    public IReadOnlyList<MimeMessage> Mails => [.. _mails];

    /// <summary>Addresses that are refused for good.</summary>
    public HashSet<string> Refused { get; } = [];

    /// <summary>Runs when somebody wants to send, before anything is taken.</summary>
    public Func<Task> Asked { get; set; } = () => Task.CompletedTask;

    /// <summary>Runs when a mail is taken, before the server says so.</summary>
    public Func<MimeMessage, Task> Taken { get; set; } = _ => Task.CompletedTask;

    /// <summary>What the server says to a mail; null takes it.</summary>
    public Func<MimeMessage, SmtpResponse?> Says { get; set; } = _ => null;

    /// <summary>Settings with which the app sends here.</summary>
    public IReadOnlyDictionary<string, string?> Settings => new Dictionary<string, string?>
    {
        ["GAMENIGHT_SMTP_HOST"] = "127.0.0.1",
        ["GAMENIGHT_SMTP_PORT"] = Port.ToString(System.Globalization.CultureInfo.InvariantCulture),
        ["GAMENIGHT_SMTP_TLS"] = "none",
        ["GAMENIGHT_SMTP_FROM"] = "GameNight <night@example.org>",
        ["GAMENIGHT_PUBLIC_ADDRESS"] = "http://localhost:5080",
    };

    public static MailSink Open(int? port = null) => new(port ?? RunningApp.FreePort());

    public async ValueTask DisposeAsync()
    {
        await _end.CancelAsync();
        try
        {
            await _listening;
        }
        catch (OperationCanceledException)
        {
            // As meant.
        }

        _end.Dispose();
    }

    private sealed class Filter(MailSink sink) : MailboxFilter
    {
        public override async Task<bool> CanAcceptFromAsync(
            ISessionContext context, IMailbox from, int size, CancellationToken cancellationToken)
        {
            await sink.Asked();
            return true;
        }

        public override Task<bool> CanDeliverToAsync(
            ISessionContext context, IMailbox to, IMailbox from, CancellationToken cancellationToken) =>
            Task.FromResult(!sink.Refused.Contains($"{to.User}@{to.Host}"));
    }

    private sealed class Store(MailSink sink) : MessageStore
    {
        public override async Task<SmtpResponse> SaveAsync(
            ISessionContext context, IMessageTransaction transaction, ReadOnlySequence<byte> buffer, CancellationToken cancellationToken)
        {
            using var stream = new MemoryStream(buffer.ToArray());
            var mail = await MimeMessage.LoadAsync(stream, cancellationToken);
            if (sink.Says(mail) is { } refusal)
            {
                return refusal;
            }

            sink._mails.Enqueue(mail);
            await sink.Taken(mail);
            return SmtpResponse.Ok;
        }
    }
}
