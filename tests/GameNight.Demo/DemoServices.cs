using GameNight.Nights;
using GameNight.Nights.ForHosts;
using GameNight.Nights.Plans;
using GameNight.Nights.Records;
using GameNight.Nights.Reference;
using GameNight.Planning;
using GameNight.Web.Startup;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;
using NodaTime;

namespace GameNight.Demo;

/// <summary>The app without its screens, with its own keys and secrets but another clock.</summary>
internal static class DemoServices
{
    public static ServiceProvider On(string database, GameNightOptions options, IClock clock)
    {
        var services = new ServiceCollection();
        services.AddLogging();
        services.AddDataProtection().SetApplicationName("gamenight").PersistKeysToFileSystem(DataFolderSecrets.Keys(options.DataRoot));
        services.AddNights(
            database,
            DataFolderSecrets.LinkSecret(options.DataRoot),
            ReferenceFolder.Read(options.ReferenceFolder),
            new PlanningEffort(new Effort(options.SolverSlices)));
        services.AddSingleton(clock);
        services.AddIdentityCore<HostAccount>(identity =>
        {
            identity.Password.RequireDigit = false;
            identity.Password.RequireUppercase = false;
            identity.Password.RequireNonAlphanumeric = false;
        }).AddHostAccounts();
        return services.BuildServiceProvider();
    }

    /// <summary>Lets the planner work until it is disposed.</summary>
    public static async Task<IAsyncDisposable> PlanningAsync(ServiceProvider services)
    {
        var workers = services.GetServices<IHostedService>()
            .Where(service => service.GetType().Assembly == typeof(HostDesk).Assembly).ToList();
        foreach (var worker in workers)
        {
            await worker.StartAsync(CancellationToken.None);
        }

        return new Stopping(workers);
    }

    private sealed class Stopping(IReadOnlyList<IHostedService> workers) : IAsyncDisposable
    {
        public async ValueTask DisposeAsync()
        {
            foreach (var worker in workers)
            {
                await worker.StopAsync(CancellationToken.None);
            }
        }
    }
}
