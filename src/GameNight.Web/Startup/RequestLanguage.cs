using GameNight.Web.Wording;
using Microsoft.AspNetCore.Localization;

namespace GameNight.Web.Startup;

/// <summary>
/// Pages speak the language that the browser prefers among those with texts, else English. A circuit keeps the one it began with.
/// </summary>
internal static class RequestLanguage
{
    public static void UseRequestLanguage(this IApplicationBuilder app) => app.UseRequestLocalization(options =>
    {
        options.DefaultRequestCulture = new RequestCulture(Language.English);
        options.SupportedCultures = options.SupportedUICultures = [.. Language.Shipped];
        options.RequestCultureProviders = [new AcceptLanguageHeaderRequestCultureProvider()];
        options.ApplyCurrentCultureToResponseHeaders = true;
    });
}
