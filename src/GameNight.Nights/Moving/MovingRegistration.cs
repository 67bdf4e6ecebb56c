using GameNight.Nights.Erasure;
using GameNight.Nights.ForGuests;
using GameNight.Nights.Links;
using GameNight.Nights.Messages;
using GameNight.Nights.Plans;
using GameNight.Nights.Seats;
using GameNight.Nights.Storage;
using GameNight.Planning;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;
using NodaTime;

namespace GameNight.Nights.Moving;

/// <summary>Leaving and moving: documents, lists, removal, retention.</summary>
internal static class MovingRegistration
{
    public static void AddMovingAndErasure(this IServiceCollection services, ReferenceTables tables)
    {
        services.AddSingleton<Retention>();
        services.AddSingleton<IHostedService>(p => p.GetRequiredService<Retention>());
        services.AddSingleton(p => new GroupExport(
            p.GetRequiredService<GroupSessions>(), p.GetRequiredService<GuestNotes>(), p.GetRequiredService<IClock>(),
            p.GetRequiredService<ILogger<GroupExport>>()));
        services.AddSingleton(p => new GroupImport(
            p.GetRequiredService<GroupSessions>(), p.GetRequiredService<LinkDirectory>(),
            p.GetRequiredService<ReplanRequests>(), p.GetRequiredService<GuestNotes>(), tables,
            p.GetRequiredService<IClock>(), p.GetRequiredService<ILogger<GroupImport>>()));
        services.AddSingleton(p => new GroupLists(p.GetRequiredService<GroupSessions>(), p.GetRequiredService<IClock>()));
        services.AddSingleton(p => new OwnCopy(
            p.GetRequiredService<GroupSessions>(), p.GetRequiredService<LinkDirectory>(),
            p.GetRequiredService<GuestNotes>(), p.GetRequiredService<IClock>()));
        services.AddSingleton(p => new GuestRemoval(
            p.GetRequiredService<GroupSessions>(), p.GetRequiredService<LinkDirectory>(),
            p.GetRequiredService<ReplanRequests>(), p.GetRequiredService<TableSeats>(), p.GetRequiredService<Outbox>(),
            p.GetRequiredService<IClock>(), p.GetRequiredService<ILogger<GuestRemoval>>()));
        services.AddSingleton(p => new GroupRemoval(
            p.GetRequiredService<GroupSessions>(), p.GetRequiredService<ReplanRequests>(),
            p.GetRequiredService<ILogger<GroupRemoval>>()));
    }
}
