using GameNight.Nights.Links;
using GameNight.Nights.Messages;
using GameNight.Nights.Plans;
using GameNight.Nights.Storage;
using GameNight.Planning;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;

namespace GameNight.Nights.Dates;

internal static class DatesRegistration
{
    public static void AddDates(this IServiceCollection services, ReferenceTables tables)
    {
        services.AddSingleton<DateOutlooks>();
        services.AddSingleton(p => new RhythmDesk(p.GetRequiredService<GroupSessions>(), p.GetRequiredService<IClock>()));
        services.AddSingleton(p => new DateDesk(
            p.GetRequiredService<GroupSessions>(), p.GetRequiredService<LinkDirectory>(), p.GetRequiredService<DateOutlooks>(),
            p.GetRequiredService<Outbox>(), p.GetRequiredService<QuestionPost>(), p.GetRequiredService<NightChanges>(),
            p.GetRequiredService<IClock>()));
        services.AddSingleton(p => new DateChoosing(
            p.GetRequiredService<GroupSessions>(), p.GetRequiredService<LinkDirectory>(), p.GetRequiredService<ReplanRequests>(),
            p.GetRequiredService<Outbox>(), tables, p.GetRequiredService<NightChanges>(), p.GetRequiredService<IClock>()));
        services.AddSingleton(p => new DateBook(
            p.GetRequiredService<GroupSessions>(), p.GetRequiredService<LinkDirectory>(), p.GetRequiredService<NightChanges>(),
            p.GetRequiredService<IClock>()));
    }
}
