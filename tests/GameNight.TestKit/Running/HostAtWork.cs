using GameNight.Nights;
using GameNight.Nights.Dates;
using GameNight.Nights.ForHosts;
using GameNight.Nights.Links;
using GameNight.Nights.Membership;
using GameNight.Nights.Messages;
using GameNight.Nights.PastNights;
using GameNight.Nights.Plans;
using GameNight.Nights.Records;
using GameNight.Planning;
using GameNight.Planning.Guests;
using GameNight.Planning.Quantities;
using GameNight.Planning.Toppings;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;
using NodaTime.Text;
using Npgsql;

namespace GameNight.TestKit.Running;

/// <summary>
/// A host who works on a running app's database through the app's own services, without a browser: nights, people and links
/// for tests about something else. The app's planner notices within its poll of five seconds.
/// </summary>
public sealed class HostAtWork : IAsyncDisposable
{
    private const string Zone = "Europe/Lisbon";

    private readonly RunningApp _app;
    private readonly ServiceProvider _services;
    private readonly GroupAccess _access;

    private HostAtWork(RunningApp app, ServiceProvider services, GroupAccess access)
    {
        _app = app;
        _services = services;
        _access = access;
    }

    public GroupId Group => _access.GroupId;

    private HostDesk Desk => _services.GetRequiredService<HostDesk>();

    private PastNightsDesk Past => _services.GetRequiredService<PastNightsDesk>();

    private GuestListDesk People => _services.GetRequiredService<GuestListDesk>();

    /// <summary>Works in a group that was founded on the app's own pages.</summary>
    public static async Task<HostAtWork> EnterAsync(RunningApp app, Guid group, CancellationToken cancellation)
    {
        var services = Services(app);
        var host = await AskAsync<Guid>(app, $"select host_id from memberships where group_id = '{group}' limit 1", cancellation);
        var access = await services.GetRequiredService<GroupDesk>().EnterAsync(new HostId(host), new GroupId(group), cancellation);
        return new HostAtWork(app, services, access!);
    }

    public async Task<GuestId> KnowAsync(string name, CancellationToken cancellation)
    {
        var id = GuestId.New();
        var added = await People.AddAsync(_access, id, name, PortionClass.Adult, cancellation);
        return added is SaveResult.Saved ? id : throw new InvalidOperationException($"{name} was not added: {added}.");
    }

    public Task HouseholdAsync(string name, IReadOnlyList<GuestId> members, CancellationToken cancellation) =>
        People.HouseholdAsync(_access, members, name, cancellation);

    /// <summary>Sets something of the night by hand.</summary>
    public Task OverruleAsync(NightId night, Func<NightOverrides, NightOverrides> change, CancellationToken cancellation) =>
        Desk.OverruleAsync(_access, night, change, cancellation);

    /// <summary>Messages to the guest go there.</summary>
    public Task ReachAsync(GuestId guest, string address, CancellationToken cancellation) =>
        People.ReachAsync(_access, guest, address, cancellation);

    /// <summary>Queues them; the app sends them.</summary>
    public Task SendInvitationsAsync(NightId night, CancellationToken cancellation) =>
        _services.GetRequiredService<MessageDesk>().SendInvitationsAsync(_access, night, cancellation);

    public async Task<MessagesView> MessagesAsync(NightId night, CancellationToken cancellation) =>
        (await _services.GetRequiredService<MessageDesk>().MessagesAsync(_access, night, cancellation))!;

    /// <summary>A Saturday ten days on or later, 19:30 in Lisbon, our house dough, two companions each.</summary>
    public async Task<NightId> OpenNightAsync(
        IReadOnlyList<GuestId> guests, CancellationToken cancellation, Func<NightFacts, NightFacts>? but = null)
    {
        var recipes = await RecipesAsync(cancellation);
        var today = SystemClock.Instance.GetCurrentInstant().InUtc().Date;
        var facts = new NightFacts(
            "Board games", today.PlusDays(10).Next(IsoDayOfWeek.Saturday).At(new LocalTime(19, 30)), null, Zone,
            "Rua das Flores 7", "Dice", recipes.First(recipe => recipe.Name.StartsWith("House", StringComparison.Ordinal)).Id,
            new Share(0.1), 40, 48, 72, 2);
        return await Desk.OpenNightAsync(_access, NightId.New(), but?.Invoke(facts) ?? facts, guests, cancellation) switch
        {
            NightResult.Kept kept => kept.Night,
            var other => throw new InvalidOperationException($"The night was not opened: {other}."),
        };
    }

    /// <summary>Asks for one of two evenings, the first as far off as a night that is opened here, and the other a week later.</summary>
    public async Task<DateChoiceId> AskForDateAsync(
        IReadOnlyList<GuestId> guests, CancellationToken cancellation, Func<DateChoiceFacts, DateChoiceFacts>? but = null)
    {
        var first = SystemClock.Instance.GetCurrentInstant().InUtc().Date.PlusDays(17).Next(IsoDayOfWeek.Saturday).At(new LocalTime(19, 30));
        var facts = new DateChoiceFacts("Board games", Zone, [first, first.PlusDays(7)], 2, first.PlusDays(-4));
        return await _services.GetRequiredService<DateDesk>().AskAsync(
            _access, DateChoiceId.New(), but?.Invoke(facts) ?? facts, new Asking(guests, []), cancellation) switch
        {
            DateResult.Kept kept => kept.Choice,
            var other => throw new InvalidOperationException($"Nobody was asked: {other}."),
        };
    }

    public async Task<DateView> QuestionAsync(DateChoiceId choice, CancellationToken cancellation) =>
        (await _services.GetRequiredService<DateDesk>().QuestionAsync(_access, choice, cancellation))!;

    /// <summary>Path of the page on which a guest says which evenings work.</summary>
    public async Task<string> DateLinkAsync(DateChoiceId choice, GuestId guest, CancellationToken cancellation) =>
        $"/d/{(await QuestionAsync(choice, cancellation)).Asked.Single(row => row.Id == guest).LinkToken}";

    public Task<ChoosingResult> ChooseAsync(DateChoiceId choice, LocalDateTime evening, CancellationToken cancellation) =>
        _services.GetRequiredService<DateChoosing>().ChooseAsync(_access, choice, evening, NightId.New(), cancellation);

    /// <summary>The group meets so from then on.</summary>
    public Task MeetAsync(Rhythm? rhythm, CancellationToken cancellation) =>
        _services.GetRequiredService<RhythmDesk>().SetAsync(_access, rhythm, before: null, cancellation);

    /// <summary>A topping on the group's menu, which suits every diet.</summary>
    public async Task OfferAsync(string name, Composition label, CancellationToken cancellation)
    {
        var added = await _services.GetRequiredService<KitchenDesk>().AddMenuItemAsync(
            _access, MenuItemId.New(), name, MenuRole.Topping, 0.06, null, label, null, cancellation);
        _ = added is SaveResult.Saved ? added : throw new InvalidOperationException($"{name} was not added: {added}.");
    }

    public Task<IReadOnlyList<PantryItem>> MenuAsync(CancellationToken cancellation) =>
        _services.GetRequiredService<KitchenDesk>().MenuAsync(_access, cancellation);

    /// <summary>Names of the group's doughs.</summary>
    public async Task<IReadOnlyList<string>> DoughsAsync(CancellationToken cancellation) =>
        [.. (await RecipesAsync(cancellation)).Select(recipe => recipe.Name)];

    public Task<IReadOnlyList<DoughRecipe>> RecipesAsync(CancellationToken cancellation) =>
        _services.GetRequiredService<KitchenDesk>().RecipesAsync(_access, cancellation);

    /// <summary>The night's plan once the app has made it and nothing is being redone.</summary>
    public async Task<NightPlan> PlanAsync(NightId night, CancellationToken cancellation)
    {
        var plans = _services.GetRequiredService<PlanDesk>();
        while (true)
        {
            if (await plans.PlanAsync(_access, night, cancellation) is { Plan: { } plan, IsBeingRedone: false })
            {
                return plan;
            }

            await Task.Delay(TimeSpan.FromMilliseconds(100), cancellation);
        }
    }

    public async Task<NightView> NightAsync(NightId night, CancellationToken cancellation) =>
        (await Desk.NightAsync(_access, night, cancellation))!;

    public async Task ChangeAsync(NightId night, Func<NightFacts, NightFacts> change, CancellationToken cancellation)
    {
        var view = await NightAsync(night, cancellation);
        var changed = await Desk.ChangeNightAsync(_access, night, change(view.Facts), view.Version, cancellation);
        if (changed is not NightResult.Kept)
        {
            throw new InvalidOperationException($"The night was not changed: {changed}.");
        }
    }

    public Task CancelAsync(NightId night, CancellationToken cancellation) => Desk.CancelAsync(_access, night, cancellation);

    /// <summary>Path of the guest's private page.</summary>
    public async Task<string> LinkAsync(NightId night, GuestId guest, CancellationToken cancellation) =>
        $"/i/{(await NightAsync(night, cancellation)).Guests.Single(row => row.Id == guest).LinkToken}";

    /// <summary>Path of the guest's page to look back; the night has been served.</summary>
    public async Task<string> LookBackLinkAsync(NightId night, GuestId guest, CancellationToken cancellation) =>
        $"/b/{(await Past.LinksAsync(_access, night, cancellation))[guest]}";

    public async Task<PastNightView> PastNightAsync(NightId night, CancellationToken cancellation) =>
        (await Past.NightAsync(_access, night, cancellation))!;

    public Task<LogResult> WriteAsync(NightId night, BakeLogFacts facts, uint? version, CancellationToken cancellation) =>
        Past.WriteAsync(_access, night, facts, version, cancellation);

    /// <summary>As if the night had been served so many days ago; its plan stands as it was made before.</summary>
    public async Task PassAsync(NightId night, int daysAgo, CancellationToken cancellation)
    {
        while (await AskAsync<long>(_app, $"select count(*) from plans where night_id = '{night.Value}'", cancellation) == 0)
        {
            await Task.Delay(TimeSpan.FromMilliseconds(100), cancellation);
        }

        var served = LocalDateTimePattern.ExtendedIso.Format(
            SystemClock.Instance.GetCurrentInstant().InUtc().LocalDateTime.Date.PlusDays(-daysAgo).At(new LocalTime(19, 30)));
        await AskAsync<object>(
            _app,
            $"update nights set serve_at = '{served}', facts = jsonb_set(facts, '{{serveAt}}', '\"{served}\"') where id = '{night.Value}' returning 1",
            cancellation);
    }

    /// <summary>Guests may read this guest's name.</summary>
    public Task ShowNameAsync(GuestId guest, CancellationToken cancellation) =>
        AskAsync<object>(_app, $"update guests set shows_name = true where id = '{guest.Value}' returning 1", cancellation);

    public Task RenewLinkAsync(NightId night, GuestId guest, CancellationToken cancellation) =>
        _services.GetRequiredService<InvitationDesk>().RenewLinkAsync(_access, night, guest, cancellation);

    /// <summary>All that a host of that right is handed of a night, as text to search in.</summary>
    public Task<string> SeenByAsync(NightId night, HostRole right, bool seesNotes, CancellationToken cancellation) =>
        HostEyes.SeenByAsync(_services, _access, night, right, seesNotes, cancellation);

    /// <summary>The same for a host of another group.</summary>
    public Task<string> SeenByStrangerAsync(NightId night, CancellationToken cancellation) =>
        HostEyes.SeenByStrangerAsync(_services, night, cancellation);

    /// <summary>Id of a topping on the menu.</summary>
    public async Task<string> ToppingAsync(string name, CancellationToken cancellation) =>
        (await _services.GetRequiredService<KitchenDesk>().MenuAsync(_access, cancellation)).Single(item => item.Name == name).Id.ToString();

    /// <summary>Path of the page on which somebody joins as a host.</summary>
    public async Task<string> AskToHostAsync(string name, HostRole right, CancellationToken cancellation)
    {
        var (circle, id) = (_services.GetRequiredService<HostCircle>(), HostInvitationId.New());
        await circle.InviteAsync(_access, id, name, right, seesNotes: false, cancellation);
        var open = await circle.InvitationsAsync(_access, cancellation);
        return $"/join/{open.Single(invitation => invitation.Id == id).LinkToken}";
    }

    /// <summary>As if the links of the night had run out a minute ago.</summary>
    public Task ExpireLinksAsync(NightId night, CancellationToken cancellation) => AskAsync<object>(
        _app, $"update link_directory set expires_at = now() - interval '1 minute' where night_id = '{night.Value}' returning 1", cancellation);

    /// <summary>One value, asked as the superuser, who sees past row-level security.</summary>
    public static async Task<T> AskAsync<T>(RunningApp app, string question, CancellationToken cancellation)
    {
        var once = new NpgsqlConnectionStringBuilder(app.AdminConnectionString) { Pooling = false };
        await using var connection = new NpgsqlConnection(once.ConnectionString);
        for (var open = false; !open;)
        {
            try
            {
                await connection.OpenAsync(cancellation);
                open = true;
            }
            catch (PostgresException full) when (full.SqlState == PostgresErrorCodes.TooManyConnections)
            {
                // A private server has room for its app and little more, and many tests ask at once.
                await Task.Delay(TimeSpan.FromMilliseconds(50), cancellation);
            }
        }

        await using var command = new NpgsqlCommand(question, connection);
        return (T)(await command.ExecuteScalarAsync(cancellation))!;
    }

    public ValueTask DisposeAsync() => _services.DisposeAsync();

    /// <summary>The same keys and secret as the app's, so that its links and notes can be read.</summary>
    private static ServiceProvider Services(RunningApp app)
    {
        var services = new ServiceCollection();
        services.AddLogging();
        services.AddDataProtection()
            .SetApplicationName("gamenight")
            .PersistKeysToFileSystem(new DirectoryInfo(Path.Combine(app.DataFolder, "keys")));
        services.AddSingleton<IMessageCarrier>(new CarriedByTheApp(app.CarriesMail));
        services.AddNights(
            app.AppConnectionString,
            new LinkSecret(File.ReadAllBytes(Path.Combine(app.DataFolder, "link-secret"))),
            SharedFolder.Tables,
            new PlanningEffort(Effort.Quick));
        return services.BuildServiceProvider();
    }

    /// <summary>Queues as the app would; sending is the app's own.</summary>
    private sealed record CarriedByTheApp(bool CanCarry) : IMessageCarrier
    {
        public Task<CarryResult> CarryAsync(Letter letter, CancellationToken cancellation) =>
            throw new InvalidOperationException("Only the app sends.");

        public Task<CarryResult> CarryAsync(QuestionLetter letter, CancellationToken cancellation) =>
            throw new InvalidOperationException("Only the app sends.");

        public Task<CarryResult> CarryAsync(WorkLetter letter, CancellationToken cancellation) =>
            throw new InvalidOperationException("Only the app sends.");
    }
}
