using GameNight.Nights;
using GameNight.Nights.Messages;
using GameNight.Nights.Plans;
using GameNight.Nights.Reference;
using GameNight.Planning;
using GameNight.Web.Account;
using GameNight.Web.Api;
using GameNight.Web.Guests;
using GameNight.Web.Host.Pies;
using GameNight.Web.Host.Timeline;
using GameNight.Web.Mail;
using GameNight.Web.Moving;
using GameNight.Web.Shell;
using GameNight.Web.SignIn;
using Microsoft.AspNetCore.Components.Authorization;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.AspNetCore.Diagnostics.HealthChecks;
using MudBlazor.Services;
using NodaTime;

namespace GameNight.Web.Startup;

/// <summary>Puts the app together. Everything that is registered or mapped is named here.</summary>
public static class GameNightApp
{
    /// <summary>Forms of guests and hosts are small; nothing here takes files.</summary>
    private const long LargestBody = 256 * 1024;

    public static WebApplication Build(string[] args, GameNightOptions options, string database)
    {
        var builder = WebApplication.CreateBuilder(new WebApplicationOptions
        {
            Args = args,
            ContentRootPath = AppContext.BaseDirectory,
        });
        builder.WebHost.UseStaticWebAssets();
        builder.WebHost.ConfigureKestrel(kestrel =>
        {
            kestrel.AddServerHeader = false;
            kestrel.Limits.MaxRequestBodySize = LargestBody;
            kestrel.Limits.RequestHeadersTimeout = TimeSpan.FromSeconds(10);
        });
        if (Environment.GetEnvironmentVariable("ASPNETCORE_URLS") is null && builder.Configuration["urls"] is null)
        {
            builder.WebHost.UseUrls(options.Address.Length > 0 ? $"http://{options.Address}:5080" : GameNightOptions.DefaultUrls);
        }

        builder.AddLogFormat(options);
        builder.AddTelemetry();
        AddServices(builder.Services, options, database);
        var app = builder.Build();
        app.UseTrustedProxies(options);
        Map(app);
        return app;
    }

    private static void AddServices(IServiceCollection services, GameNightOptions options, string database)
    {
        services.AddSingleton(options);
        services.AddSingleton<SetupCode>();
        services.AddDataProtection()
            .SetApplicationName("gamenight")
            .PersistKeysToFileSystem(DataFolderSecrets.Keys(options.DataRoot));
        services.AddNights(
            database,
            DataFolderSecrets.LinkSecret(options.DataRoot),
            ReferenceFolder.Read(options.ReferenceFolder),
            new PlanningEffort(new Effort(options.SolverSlices)));

        if (MailSettings.Of(options) is { } mail)
        {
            services.AddSingleton<IMessageCarrier>(p => new SmtpCarrier(mail, p.GetRequiredService<IClock>()));
        }

        services.AddSignIn(options);
        services.AddAntiforgery(antiforgery =>
        {
            antiforgery.Cookie.Name = options.CookieName("gn-form");
            antiforgery.Cookie.SecurePolicy = CookieSecurePolicy.SameAsRequest;
        });
        services.AddRazorComponents().AddInteractiveServerComponents();
        services.AddCascadingAuthenticationState();
        services.AddScoped<AuthenticationStateProvider, AccountRevalidation>();
        services.AddMudServices();
        services.AddPlanApi();
        services.AddRateLimits();
        services.AddProblemDetails();
    }

    private static void Map(WebApplication app)
    {
        app.UseMiddleware<SecurityHeaders>();
        app.UseMiddleware<HeadRequests>();

        // Before anything that says something, errors included.
        app.UseRequestLanguage();

        // After HEAD has become GET, or no page would be found for it.
        app.UseRouting();
        app.UseExceptionHandler(PlainErrors.Handle);
        app.UseStatusCodePages(PlainErrors.SayStatusAsync);
        app.UseMiddleware<SameOriginSockets>();
        app.UseWebSockets();
        app.UseAuthentication();
        app.UseAuthorization();

        // After sign-in, which tells hosts behind one address apart.
        app.UseRateLimiter();
        app.UseAntiforgery();

        app.MapHealthChecks("/health/live", new HealthCheckOptions { Predicate = _ => false });
        app.MapHealthChecks("/health/ready");
        app.MapStaticAssets();
        app.MapOpenApi();
        app.MapPlanApi();
        app.MapSignIn();
        app.MapJoining();
        app.MapConfirm();
        app.MapAccount();
        app.MapGuestPages();
        app.MapLookBackPages();
        app.MapDatePages();
        app.MapOwnDataPages();
        app.MapContactPages();
        app.MapFeeds();
        app.MapMoving();
        app.MapStepCalendar();
        app.MapPieSharing();
        app.MapRazorComponents<App>().AddInteractiveServerRenderMode(circuit =>
            circuit.ContentSecurityFrameAncestorsPolicy = null);
    }
}
