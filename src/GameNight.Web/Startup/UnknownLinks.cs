using System.Threading.RateLimiting;

namespace GameNight.Web.Startup;

/// <summary>
/// Counts links that were not there, by address: whoever guesses is soon not looked up for any more. Nobody else's link is
/// touched by it.
/// </summary>
internal sealed class UnknownLinks : IEndpointFilter, IDisposable
{
    private const int MostGuesses = 20;

    private readonly PartitionedRateLimiter<HttpContext> _guesses = PartitionedRateLimiter.Create<HttpContext, string>(
        context => RateLimitPartition.GetSlidingWindowLimiter(RateLimits.AddressOf(context), _ => new SlidingWindowRateLimiterOptions
        {
            PermitLimit = MostGuesses,
            Window = TimeSpan.FromMinutes(10),
            SegmentsPerWindow = 10,
        }));

    public async ValueTask<object?> InvokeAsync(EndpointFilterInvocationContext context, EndpointFilterDelegate next)
    {
        // Asking for none tells whether any is left.
        using (var left = _guesses.AttemptAcquire(context.HttpContext, 0))
        {
            if (!left.IsAcquired)
            {
                await RateLimits.SayAsync(context.HttpContext, left);
                return Results.Empty;
            }
        }

        var result = await next(context);
        if (result is IStatusCodeHttpResult { StatusCode: StatusCodes.Status404NotFound })
        {
            _guesses.AttemptAcquire(context.HttpContext).Dispose();
        }

        return result;
    }

    public void Dispose() => _guesses.Dispose();
}
