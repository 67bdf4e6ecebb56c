using System.Net;
using Microsoft.AspNetCore.HttpOverrides;
using IPNetwork = System.Net.IPNetwork;

namespace GameNight.Web.Startup;

/// <summary>
/// Who may say for whom a request is and whether it came encrypted. Only the proxies that are named: anybody else could
/// write those headers, so theirs are not looked at.
/// </summary>
internal static class TrustedProxies
{
    /// <summary>Addresses and networks, set apart by commas: <c>10.0.0.5, 172.18.0.0/16</c>.</summary>
    /// <returns>Null when one of them is neither.</returns>
    public static IReadOnlyList<IPNetwork>? Parse(string text)
    {
        var networks = new List<IPNetwork>();
        foreach (var entry in text.Split(',', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries))
        {
            if (IPAddress.TryParse(entry, out var address))
            {
                networks.Add(new IPNetwork(address, address.GetAddressBytes().Length * 8));
            }
            else if (IPNetwork.TryParse(entry, out var network))
            {
                networks.Add(network);
            }
            else
            {
                return null;
            }
        }

        return networks;
    }

    public static void UseTrustedProxies(this IApplicationBuilder app, GameNightOptions options)
    {
        if (Parse(options.TrustedProxies) is not { Count: > 0 } networks)
        {
            return;
        }

        // No limit to their number: the chain is followed back to the first that is not named, and no further.
        var forwarded = new ForwardedHeadersOptions
        {
            ForwardedHeaders = ForwardedHeaders.XForwardedFor | ForwardedHeaders.XForwardedProto,
            ForwardLimit = null,
        };
        forwarded.KnownProxies.Clear();
        forwarded.KnownIPNetworks.Clear();
        foreach (var network in networks)
        {
            forwarded.KnownIPNetworks.Add(network);
        }

        app.UseForwardedHeaders(forwarded);
    }
}
