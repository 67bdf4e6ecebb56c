using System.Globalization;

namespace GameNight.Web.Startup;

/// <summary>What is logged and how: lines for people, or one JSON object a line with <c>GAMENIGHT_LOG=json</c>.</summary>
internal static class LogFormat
{
    public static void AddLogFormat(this WebApplicationBuilder builder, GameNightOptions options)
    {
        var log = builder.Logging;
        if (options.LogsJson)
        {
            // Without scopes: theirs would carry the path of the request, and with it the secret part of private links.
            log.AddJsonConsole(json =>
            {
                json.IncludeScopes = false;
                json.UseUtcTimestamp = true;
                json.TimestampFormat = CultureInfo.InvariantCulture.DateTimeFormat.SortableDateTimePattern + "'Z'";
            });
        }

        // Requests are not logged: their paths carry the secret part of private links.
        log.AddFilter("Microsoft.AspNetCore", LogLevel.Warning);
        log.AddFilter("Microsoft.EntityFrameworkCore", LogLevel.Warning);
        log.AddFilter("Microsoft.Hosting.Lifetime", LogLevel.Warning);

        // A start that fails is said in one sentence by the program; a background service that ends is critical.
        log.AddFilter("Microsoft.Extensions.Hosting.Internal.Host", LogLevel.Critical);

        // Keys lie in the data folder, readable by its owner alone; that they are not encrypted once more is known.
        log.AddFilter("Microsoft.AspNetCore.DataProtection", LogLevel.Error);
    }
}
