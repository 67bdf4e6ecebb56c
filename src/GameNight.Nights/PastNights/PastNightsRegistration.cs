using GameNight.Nights.Links;
using GameNight.Nights.Plans;
using GameNight.Nights.Storage;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;

namespace GameNight.Nights.PastNights;

internal static class PastNightsRegistration
{
    public static void AddPastNights(this IServiceCollection services)
    {
        services.AddSingleton(p => new PastNightsDesk(
            p.GetRequiredService<GroupSessions>(), p.GetRequiredService<LinkDirectory>(),
            p.GetRequiredService<ReplanRequests>(), p.GetRequiredService<IClock>()));
        services.AddSingleton(p => new LookBackBook(
            p.GetRequiredService<GroupSessions>(), p.GetRequiredService<LinkDirectory>(),
            p.GetRequiredService<ReplanRequests>(), p.GetRequiredService<IClock>()));
    }
}
