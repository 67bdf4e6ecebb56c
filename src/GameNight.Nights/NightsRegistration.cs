using GameNight.Nights.Dates;
using GameNight.Nights.ForGuests;
using GameNight.Nights.ForHosts;
using GameNight.Nights.Links;
using GameNight.Nights.Live;
using GameNight.Nights.Membership;
using GameNight.Nights.Messages;
using GameNight.Nights.Moving;
using GameNight.Nights.PastNights;
using GameNight.Nights.Plans;
using GameNight.Nights.Seats;
using GameNight.Nights.Snapshots;
using GameNight.Nights.Storage;
using GameNight.Planning;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.DependencyInjection.Extensions;
using Microsoft.Extensions.Hosting;
using NodaTime;

namespace GameNight.Nights;

/// <summary>The only door into this project.</summary>
public static class NightsRegistration
{
    /// <param name="connectionString">Of the serving role, which owns nothing.</param>
    /// <param name="linkSecret">Kept outside the database: who has both can make links.</param>
    public static IServiceCollection AddNights(
        this IServiceCollection services, string connectionString, LinkSecret linkSecret, ReferenceTables tables,
        PlanningEffort effort)
    {
        // Unpooled: a pooled context would bring along what a former group left in it.
        services.AddDbContextFactory<GameNightDb>(options => options.UseGameNightPostgres(connectionString));
        services.TryAddSingleton<IClock>(SystemClock.Instance);
        services.AddSingleton(linkSecret);
        services.AddSingleton(tables);
        services.AddSingleton(effort);
        services.AddSingleton<NightPlanner>();
        services.AddSingleton<NightSnapshots>();
        services.AddSingleton<GroupSessions>();
        services.AddSingleton<LinkDirectory>();
        services.AddSingleton<NightChanges>();
        services.AddSingleton<ReplanRequests>();
        services.AddSingleton<DoughCommitments>();
        services.AddSingleton<PlanBook>();
        services.AddSingleton<GuestNotes>();
        services.AddSingleton<TableSeats>();
        services.AddSingleton<AnswerKeeping>();
        services.AddSingleton<InvitationReading>();
        services.AddSingleton<Replanner>();
        services.AddSingleton<IHostedService>(provider => provider.GetRequiredService<Replanner>());
        services.AddMovingAndErasure(tables);

        services.AddSingleton(p => new GroupDesk(p.GetRequiredService<GroupSessions>(), tables));
        services.AddSingleton(p => new HostCircle(
            p.GetRequiredService<GroupSessions>(), p.GetRequiredService<LinkDirectory>(),
            p.GetRequiredService<ReplanRequests>(), p.GetRequiredService<IClock>()));
        services.AddSingleton(p => new JoiningDesk(p.GetRequiredService<GroupSessions>(), p.GetRequiredService<LinkDirectory>()));
        services.AddSingleton(p => new HostAccounts(p.GetRequiredService<GroupSessions>(), p.GetRequiredService<HostCircle>()));
        services.AddSingleton(p => new RecoveryCodes(p.GetRequiredService<GroupSessions>()));
        services.AddSingleton(p => new WaysIn(p.GetRequiredService<GroupSessions>()));
        services.AddSingleton(p => new KitchenDesk(
            p.GetRequiredService<GroupSessions>(), p.GetRequiredService<ReplanRequests>(), tables));
        services.AddSingleton(p => new PaceDesk(
            p.GetRequiredService<GroupSessions>(), p.GetRequiredService<KitchenDesk>(), tables, p.GetRequiredService<IClock>()));
        services.AddSingleton(p => new GuestListDesk(
            p.GetRequiredService<GroupSessions>(), p.GetRequiredService<ReplanRequests>(), p.GetRequiredService<IClock>()));
        services.AddSingleton(p => new HostDesk(
            p.GetRequiredService<GroupSessions>(), p.GetRequiredService<LinkDirectory>(),
            p.GetRequiredService<ReplanRequests>(), p.GetRequiredService<GuestNotes>(),
            p.GetRequiredService<DoughCommitments>(), p.GetRequiredService<Outbox>(), p.GetRequiredService<TableSeats>(), tables,
            p.GetRequiredService<IClock>()));
        services.AddSingleton(p => new InvitationDesk(
            p.GetRequiredService<GroupSessions>(), p.GetRequiredService<LinkDirectory>(),
            p.GetRequiredService<ReplanRequests>(), p.GetRequiredService<TableSeats>(), p.GetRequiredService<Outbox>()));
        services.AddSingleton(p => new AnswerDesk(
            p.GetRequiredService<GroupSessions>(), p.GetRequiredService<ReplanRequests>(),
            p.GetRequiredService<AnswerKeeping>(), p.GetRequiredService<Outbox>()));
        services.AddSingleton(p => new NoteDesk(
            p.GetRequiredService<GroupSessions>(), p.GetRequiredService<ReplanRequests>(), p.GetRequiredService<IClock>()));
        services.AddSingleton(p => new DoughDesk(
            p.GetRequiredService<GroupSessions>(), p.GetRequiredService<NightSnapshots>(),
            p.GetRequiredService<ReplanRequests>(), tables, p.GetRequiredService<IClock>()));
        services.AddSingleton(p => new LateDesk(
            p.GetRequiredService<GroupSessions>(), p.GetRequiredService<NightSnapshots>(),
            p.GetRequiredService<ReplanRequests>(), tables, p.GetRequiredService<IClock>()));
        services.AddSingleton(p => new DoughLogDesk(
            p.GetRequiredService<GroupSessions>(), p.GetRequiredService<DoughCommitments>(),
            p.GetRequiredService<ReplanRequests>(), p.GetRequiredService<IClock>()));
        services.AddSingleton(p => new PlanDesk(
            p.GetRequiredService<GroupSessions>(), p.GetRequiredService<NightSnapshots>(),
            p.GetRequiredService<ReplanRequests>(), tables, p.GetRequiredService<IClock>()));
        services.AddSingleton(p => new LiveDesk(
            p.GetRequiredService<GroupSessions>(), p.GetRequiredService<PlanDesk>(), p.GetRequiredService<NightPlanner>(),
            p.GetRequiredService<NightChanges>(), p.GetRequiredService<IClock>()));
        services.AddSingleton(p => new GuestBook(
            p.GetRequiredService<GroupSessions>(), p.GetRequiredService<LinkDirectory>(),
            p.GetRequiredService<ReplanRequests>(), p.GetRequiredService<AnswerKeeping>(),
            p.GetRequiredService<InvitationReading>(), p.GetRequiredService<Outbox>(), p.GetRequiredService<IClock>()));
        services.AddDates(tables);
        services.AddPastNights();
        services.AddMessages();
        services.AddHealthChecks().AddCheck<NightsHealth>("nights");
        return services;
    }

    /// <summary>Accounts of hosts on the same database; sign-in itself belongs to the web project.</summary>
    public static IdentityBuilder AddHostAccounts(this IdentityBuilder identity) =>
        identity.AddEntityFrameworkStores<GameNightDb>();

    /// <summary>Brings a database to the newest schema. Needs the owner's connection, not the serving role's.</summary>
    public static async Task MigrateAsync(string ownerConnectionString, CancellationToken cancellation)
    {
        var options = new DbContextOptionsBuilder<GameNightDb>().UseGameNightPostgres(ownerConnectionString).Options;
        await using var db = new GameNightDb(options);
        await db.Database.MigrateAsync(cancellation);
    }
}
