using System.Text;
using GameNight.Nights;
using GameNight.Nights.ForGuests;
using GameNight.Nights.ForHosts;
using GameNight.Nights.Links;
using GameNight.Nights.Live;
using GameNight.Nights.Membership;
using GameNight.Nights.Messages;
using GameNight.Nights.PastNights;
using GameNight.Nights.Plans;
using GameNight.Nights.Records;
using GameNight.Planning;
using GameNight.Planning.Guests;
using GameNight.Planning.Quantities;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.AspNetCore.Identity;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;
using NodaTime;
using NodaTime.Testing;
using Xunit;

namespace GameNight.TestKit.Nights;

/// <summary>A group just founded, and the right to it.</summary>
public sealed record FoundedGroup(HostId Host, GroupId Id, GroupAccess Access);

/// <summary>A night with one guest beside the host, and that guest's link.</summary>
public sealed record GuestNight(FoundedGroup Group, NightId Night, GuestId Guest, LinkToken Link);

/// <summary>
/// The app without its screens, on a real database, with a clock that stands still. The planner works only once it is
/// started.
/// </summary>
public sealed class NightsApp : IAsyncDisposable
{
    private static readonly byte[] LinkKey = Encoding.ASCII.GetBytes("a secret that only these tests use");

    private readonly ServiceProvider _services;
    private readonly List<IHostedService> _started = [];

    private NightsApp(ServiceProvider services, FakeClock clock)
    {
        _services = services;
        Clock = clock;
    }

    public FakeClock Clock { get; }
    public GroupDesk Groups => Get<GroupDesk>();
    public HostAccounts Accounts => Get<HostAccounts>();
    public HostDesk Nights => Get<HostDesk>();
    public InvitationDesk Invitations => Get<InvitationDesk>();
    public AnswerDesk Told => Get<AnswerDesk>();
    public DoughLogDesk DoughLog => Get<DoughLogDesk>();

    public LiveDesk Lives => Get<LiveDesk>();

    public DoughDesk Doughs => Get<DoughDesk>();
    public KitchenDesk Kitchen => Get<KitchenDesk>();
    public GuestListDesk GuestList => Get<GuestListDesk>();
    public PlanDesk Plans => Get<PlanDesk>();
    public GuestBook GuestBook => Get<GuestBook>();
    public PastNightsDesk PastNights => Get<PastNightsDesk>();
    public LookBackBook LookBacks => Get<LookBackBook>();
    public MessageDesk Messages => Get<MessageDesk>();
    public ContactBook Contacts => Get<ContactBook>();
    public NightChanges Changes => Get<NightChanges>();

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    /// <param name="connectionString">Of the serving role.</param>
    /// <param name="clock">Stands at <see cref="NightBuilder.Now"/> when not given.</param>
    /// <param name="effort">No solver when not given.</param>
    /// <param name="keys">Keys of the notes; lost with the app when not given.</param>
    /// <param name="linkSecret">The tests' own when not given.</param>
    /// <param name="carrier">Where messages go; for hosts to pass on when not given.</param>
    public static NightsApp On(
        string connectionString, FakeClock? clock = null, Effort effort = default, IDataProtectionProvider? keys = null,
        LinkSecret? linkSecret = null, IMessageCarrier? carrier = null)
    {
        clock ??= new FakeClock(NightBuilder.Now);
        var services = new ServiceCollection();
        services.AddLogging();
        services.AddSingleton(keys ?? new EphemeralDataProtectionProvider());
        if (carrier is not null)
        {
            services.AddSingleton(carrier);
        }

        services.AddNights(connectionString, linkSecret ?? new LinkSecret(LinkKey), SharedFolder.Tables, new PlanningEffort(effort));
        services.AddSingleton<IClock>(clock);
        services.AddIdentityCore<HostAccount>().AddHostAccounts();
        return new NightsApp(services.BuildServiceProvider(validateScopes: true), clock);
    }

    public T Get<T>()
        where T : notnull => _services.GetRequiredService<T>();

    public async Task StartPlanningAsync()
    {
        foreach (var service in _services.GetServices<IHostedService>())
        {
            await service.StartAsync(Cancellation);
            _started.Add(service);
        }
    }

    /// <summary>An account with a group of its own.</summary>
    public async Task<FoundedGroup> FoundGroupAsync(string hostName = "Hana", string groupName = "Thursday table")
    {
        var host = await SignUpAsync(hostName);
        var group = await Groups.FoundAsync(host, hostName, groupName, "Europe/Berlin", Cancellation);
        return new FoundedGroup(host, group, (await Groups.EnterAsync(host, group, Cancellation))!);
    }

    public async Task<HostId> SignUpAsync(string name)
    {
        await using var scope = _services.CreateAsyncScope();
        var account = new HostAccount { Id = Guid.CreateVersion7(), DisplayName = name, UserName = $"{Guid.NewGuid():N}", Email = $"{Guid.NewGuid():N}@example.org" };
        var made = await scope.ServiceProvider.GetRequiredService<UserManager<HostAccount>>().CreateAsync(account);
        return made.Succeeded ? new HostId(account.Id) : throw new InvalidOperationException(made.ToString());
    }

    public async Task<GuestId> AddGuestAsync(FoundedGroup group, string name = "Ines")
    {
        var id = GuestId.New();
        await GuestList.AddAsync(group.Access, id, name, PortionClass.Adult, Cancellation);
        return id;
    }

    /// <summary>Saturday 2026-12-12, 19:30 in Berlin (18:30 UTC), with our house dough and up to two companions.</summary>
    public async Task<NightFacts> NightFactsAsync(FoundedGroup group)
    {
        var recipes = await Kitchen.RecipesAsync(group.Access, Cancellation);
        return new NightFacts(
            "Pizza and tiles", new LocalDateTime(2026, 12, 12, 19, 30), null, "Europe/Berlin", "4 Elm Street", "A game",
            recipes.Single(recipe => recipe.Name == "House dough, cold").Id, new Share(0.1),
            ShortestColdHours: 40, WantedColdHours: 48, LongestColdHours: 72, MostCompanions: 2);
    }

    public async Task<NightId> OpenNightAsync(
        FoundedGroup group, IReadOnlyList<GuestId> guests, Func<NightFacts, NightFacts>? but = null)
    {
        var facts = await NightFactsAsync(group);
        var result = await Nights.OpenNightAsync(
            group.Access, NightId.New(), but is null ? facts : but(facts), guests, Cancellation);
        return result is NightResult.Kept kept ? kept.Night : throw new InvalidOperationException($"Not opened: {result}.");
    }

    /// <summary>A new group, one guest, one night.</summary>
    public async Task<GuestNight> OpenNightForOneGuestAsync(Func<NightFacts, NightFacts>? but = null)
    {
        var group = await FoundGroupAsync();
        var guest = await AddGuestAsync(group);
        var night = await OpenNightAsync(group, [guest], but);
        return new GuestNight(group, night, guest, await LinkAsync(group, night, guest));
    }

    public async Task<NightView> ViewAsync(FoundedGroup group, NightId night) =>
        (await Nights.NightAsync(group.Access, night, Cancellation))!;

    public async Task<InvitedGuest> InvitedAsync(FoundedGroup group, NightId night, GuestId guest) =>
        (await ViewAsync(group, night)).Guests.Single(row => row.Id == guest);

    public async Task<LinkToken> LinkAsync(FoundedGroup group, NightId night, GuestId guest) =>
        LinkToken.TryParse((await InvitedAsync(group, night, guest)).LinkToken)!.Value;

    public Task<AnswerResult> AnswerAsync(LinkToken link, GuestAnswer answer) =>
        GuestBook.AnswerAsync(link, answer, Cancellation);

    /// <summary>What the guest sees, or null when the link is not valid.</summary>
    public async Task<InvitationView?> LookAsync(LinkToken link) =>
        (await GuestBook.LookAsync(link, Cancellation) as InvitationLookup.Found)?.Invitation;

    public async ValueTask DisposeAsync()
    {
        foreach (var service in _started)
        {
            await service.StopAsync(CancellationToken.None);
        }

        await _services.DisposeAsync();
    }
}
