using System.Net;
using System.Net.Sockets;
using System.Security.Cryptography;
using System.Text;
using System.Threading.RateLimiting;
using GameNight.Web.SignIn;
using GameNight.Web.Wording.Texts;

namespace GameNight.Web.Startup;

/// <summary>
/// How much of the app one address, link or host may use. Counted in this process: with several nodes each counts for itself.
/// The figures are starting values of our own.
/// </summary>
internal static class RateLimits
{
    /// <summary>Sign-in, recovery, passkeys and joining: each try costs a slow password hash.</summary>
    public const string SignIn = "sign-in";

    /// <summary>Sending a guest's form.</summary>
    public const string GuestForm = "guest-form";

    /// <summary>Exports and other answers that take long.</summary>
    public const string Export = "export";

    /// <summary>Planning through the API.</summary>
    public const string Api = "api";

    /// <summary>Live connections of one address: a household with many open tabs, not a flood.</summary>
    private const int LiveConnections = 100;

    private static readonly PathString Live = "/_blazor";
    private static readonly PathString[] Uncounted = ["/health", "/css", "/js", "/fonts", "/_content", "/_framework"];

    public static void AddRateLimits(this IServiceCollection services)
    {
        services.AddSingleton<UnknownLinks>();
        services.AddRateLimiter(limits =>
        {
            limits.RejectionStatusCode = StatusCodes.Status429TooManyRequests;
            limits.OnRejected = (context, _) => new ValueTask(SayAsync(context.HttpContext, context.Lease));
            limits.GlobalLimiter = PartitionedRateLimiter.CreateChained(
                PartitionedRateLimiter.Create<HttpContext, string>(Everything),
                PartitionedRateLimiter.Create<HttpContext, string>(LiveOnes));
            limits.AddPolicy(SignIn, context => Window(AddressOf(context), 20, TimeSpan.FromMinutes(5)));
            limits.AddPolicy(GuestForm, context => Window(LinkOf(context), 20, TimeSpan.FromMinutes(1)));
            limits.AddPolicy(Export, context => Window(HostOrAddress(context), 10, TimeSpan.FromMinutes(1)));
            limits.AddPolicy(Api, context => Window(HostOrAddress(context), 60, TimeSpan.FromMinutes(1)));
        });
    }

    /// <summary>One household behind one address: of an address of version 6 only the network counts.</summary>
    public static string AddressOf(HttpContext context) => context.Connection.RemoteIpAddress switch
    {
        null => "",
        { IsIPv4MappedToIPv6: true } mapped => mapped.MapToIPv4().ToString(),
        { AddressFamily: AddressFamily.InterNetworkV6 } address when !IPAddress.IsLoopback(address) =>
            Convert.ToHexString(address.GetAddressBytes().AsSpan(0, 8)),
        var address => address.ToString(),
    };

    public static Task SayAsync(HttpContext context, RateLimitLease lease)
    {
        var wait = lease.TryGetMetadata(MetadataName.RetryAfter, out var after) ? after : TimeSpan.FromSeconds(10);
        context.Response.StatusCode = StatusCodes.Status429TooManyRequests;
        context.Response.Headers.RetryAfter = $"{Math.Ceiling(wait.TotalSeconds):F0}";
        return PlainErrors.SayAsync(context, Faults.TooManyTitle, Faults.TooMany);
    }

    private static RateLimitPartition<string> Everything(HttpContext context) =>
        Uncounted.Any(path => context.Request.Path.StartsWithSegments(path))
            ? RateLimitPartition.GetNoLimiter("")
            : RateLimitPartition.GetTokenBucketLimiter(AddressOf(context), _ => new TokenBucketRateLimiterOptions
            {
                TokenLimit = 300,
                TokensPerPeriod = 50,
                ReplenishmentPeriod = TimeSpan.FromSeconds(1),
            });

    /// <summary>A live connection is one request for as long as it is open.</summary>
    private static RateLimitPartition<string> LiveOnes(HttpContext context) => context.Request.Path.StartsWithSegments(Live)
        ? RateLimitPartition.GetConcurrencyLimiter(AddressOf(context), _ => new ConcurrencyLimiterOptions { PermitLimit = LiveConnections })
        : RateLimitPartition.GetNoLimiter("");

    private static RateLimitPartition<string> Window(string who, int most, TimeSpan window) =>
        RateLimitPartition.GetSlidingWindowLimiter(who, _ => new SlidingWindowRateLimiterOptions
        {
            PermitLimit = most,
            Window = window,
            SegmentsPerWindow = 5,
        });

    private static string HostOrAddress(HttpContext context) => context.User.HostIdOf()?.ToString() ?? AddressOf(context);

    /// <summary>The limiter keeps its keys for a while: the hash of the link, not the link.</summary>
    private static string LinkOf(HttpContext context) => Convert.ToHexString(
        SHA256.HashData(Encoding.UTF8.GetBytes(context.Request.RouteValues["token"] as string ?? "")));
}
