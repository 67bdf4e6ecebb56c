using GameNight.Nights.ForGuests;
using GameNight.Nights.ForHosts;
using GameNight.Nights.Links;
using GameNight.Nights.Plans;
using GameNight.Nights.Storage;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.DependencyInjection.Extensions;
using Microsoft.Extensions.Hosting;
using NodaTime;

namespace GameNight.Nights.Messages;

internal static class MessagesRegistration
{
    /// <summary>Without a carrier registered before or after, hosts pass messages on by hand.</summary>
    public static void AddMessages(this IServiceCollection services)
    {
        services.TryAddSingleton<IMessageCarrier, ByHandOnly>();
        services.AddSingleton<Outbox>();
        services.AddSingleton<Letters>();
        services.AddSingleton<QuestionPost>();
        services.AddSingleton<WorkPost>();
        services.AddSingleton<NightRounds>();
        services.AddSingleton<Postman>();
        services.AddSingleton<IHostedService>(p => p.GetRequiredService<Postman>());
        services.AddSingleton(p => new MessageDesk(
            p.GetRequiredService<GroupSessions>(), p.GetRequiredService<Outbox>(), p.GetRequiredService<Letters>(),
            p.GetRequiredService<NightChanges>(), p.GetRequiredService<IClock>()));
        services.AddSingleton(p => new WorkReminderDesk(
            p.GetRequiredService<GroupSessions>(), p.GetRequiredService<Outbox>(), p.GetRequiredService<IClock>()));
        services.AddSingleton(p => new ContactBook(
            p.GetRequiredService<GroupSessions>(), p.GetRequiredService<LinkDirectory>(), p.GetRequiredService<IClock>()));
        services.AddHealthChecks().AddCheck<MessagesHealth>("messages");
    }
}
