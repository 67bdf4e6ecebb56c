using GameNight.MovableClock;
using Microsoft.AspNetCore.Hosting;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;

[assembly: HostingStartup(typeof(MovableClockStartup))]

/// <summary>
/// Named in DOTNET_STARTUP_HOOKS, which asks for this name outside of every namespace: that loads this assembly into the app, so
/// that ASPNETCORE_HOSTINGSTARTUPASSEMBLIES finds it by its name.
/// </summary>
internal static class StartupHook
{
    public static void Initialize()
    {
    }
}

namespace GameNight.MovableClock
{
    internal sealed class MovableClockStartup : IHostingStartup
    {
        public void Configure(IWebHostBuilder builder)
        {
            if (Environment.GetEnvironmentVariable(FileClock.Variable) is { Length: > 0 } file)
            {
                builder.ConfigureServices(services => services.AddSingleton<IClock>(new FileClock(file)));
            }
        }
    }
}
