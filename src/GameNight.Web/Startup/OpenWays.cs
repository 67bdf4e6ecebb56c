using System.Net;
using System.Net.Sockets;

namespace GameNight.Web.Startup;

/// <summary>Where a connection without encryption may lead: this machine, and the network at home.</summary>
internal static class OpenWays
{
    private static readonly IPNetwork[] AtHome =
    [
        IPNetwork.Parse("10.0.0.0/8"), IPNetwork.Parse("172.16.0.0/12"), IPNetwork.Parse("192.168.0.0/16"),
        IPNetwork.Parse("169.254.0.0/16"), IPNetwork.Parse("fc00::/7"), IPNetwork.Parse("fe80::/10"),
    ];

    /// <summary>Endings that no public name has.</summary>
    private static readonly string[] HomeEndings = [".local", ".lan", ".home.arpa", ".internal", ".localhost"];

    public static bool Allow(Uri address)
    {
        if (address.Scheme == Uri.UriSchemeHttps || address.IsLoopback)
        {
            return true;
        }

        return IPAddress.TryParse(address.DnsSafeHost, out var number)
            ? number.AddressFamily is AddressFamily.InterNetwork or AddressFamily.InterNetworkV6
                && AtHome.Any(network => network.Contains(number))
            : !address.DnsSafeHost.Contains('.', StringComparison.Ordinal)
                || HomeEndings.Any(ending => address.DnsSafeHost.EndsWith(ending, StringComparison.OrdinalIgnoreCase));
    }
}
