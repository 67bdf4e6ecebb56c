using System.Security.Cryptography;

namespace GameNight.Web.Startup;

/// <summary>Headers of every answer. Secret pages are neither kept nor told to other sites.</summary>
internal sealed class SecurityHeaders(RequestDelegate next)
{
    private const string NonceKey = "script-nonce";

    public static string Nonce(HttpContext context) => (string)context.Items[NonceKey]!;

    public Task InvokeAsync(HttpContext context)
    {
        context.Items[NonceKey] = Convert.ToBase64String(RandomNumberGenerator.GetBytes(16));
        context.Response.OnStarting(() =>
        {
            Write(context);
            return Task.CompletedTask;
        });
        return next(context);
    }

    private static void Write(HttpContext context)
    {
        var headers = context.Response.Headers;
        var isSecret = SecretPaths.Covers(context.Request.Path);

        // The component kit positions with inline styles; scripts are strict. Guest pages need neither.
        var style = isSecret ? "'self'" : "'self' 'unsafe-inline'";
        headers.ContentSecurityPolicy =
            $"default-src 'self'; script-src 'self' 'nonce-{Nonce(context)}'; style-src {style}; img-src 'self' data:; "
            + "font-src 'self'; connect-src 'self'; base-uri 'self'; form-action 'self'; frame-ancestors 'none'; object-src 'none'"
            + (context.Request.IsHttps ? "; upgrade-insecure-requests" : "");
        if (context.Request.IsHttps)
        {
            headers.StrictTransportSecurity = "max-age=31536000; includeSubDomains";
        }

        headers.XContentTypeOptions = "nosniff";
        headers["Referrer-Policy"] = isSecret ? "no-referrer" : "strict-origin-when-cross-origin";
        headers["Permissions-Policy"] = "camera=(), geolocation=(), microphone=(), screen-wake-lock=(self)";
        headers["Cross-Origin-Opener-Policy"] = "same-origin";
        headers["Cross-Origin-Resource-Policy"] = "same-origin";
        headers["X-Robots-Tag"] = "noindex, nofollow, noarchive";
        if (isSecret)
        {
            // A calendar program keeps the feed, and asks each time whether it is still the same.
            headers.CacheControl = context.Request.Path.StartsWithSegments(SecretPaths.Feed) ? "private, no-cache" : "no-store";
        }
    }
}
