using System.Net;
using System.Net.Sockets;

namespace GameNight.TestKit.Running;

/// <summary>
/// Connections from a loopback address of their own: the app counts by address, and one test must not use up what another
/// may.
/// </summary>
public static class OwnAddress
{
    private static int _last;

    /// <summary>127.0.1.1, 127.0.1.2 and so on.</summary>
    public static IPAddress Next()
    {
        var number = Interlocked.Increment(ref _last);
        return new IPAddress([127, (byte)(number >> 16), (byte)(1 + (number >> 8)), (byte)number]);
    }

    /// <summary>Another address every second: for a client that all tests of an app share.</summary>
    public static SocketsHttpHandler ManyAddresses()
    {
        var handler = Handler(Next);
        handler.PooledConnectionLifetime = TimeSpan.FromSeconds(1);
        return handler;
    }

    public static SocketsHttpHandler Handler(IPAddress? from = null)
    {
        var one = from ?? Next();
        return Handler(() => one);
    }

    private static SocketsHttpHandler Handler(Func<IPAddress> from)
    {
        return new SocketsHttpHandler
        {
            AllowAutoRedirect = false,
            ConnectCallback = async (context, cancellation) =>
            {
                var local = new IPEndPoint(from(), 0);
                var socket = new Socket(SocketType.Stream, ProtocolType.Tcp) { NoDelay = true };
                try
                {
                    socket.Bind(local.Address.AddressFamily == socket.AddressFamily ? local : Mapped(local));
                    await socket.ConnectAsync(context.DnsEndPoint, cancellation);
                    return new NetworkStream(socket, ownsSocket: true);
                }
                catch
                {
                    socket.Dispose();
                    throw;
                }
            },
        };
    }

    private static IPEndPoint Mapped(IPEndPoint local) => new(local.Address.MapToIPv6(), local.Port);
}
