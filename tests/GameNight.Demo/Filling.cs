using GameNight.Nights.ForGuests;
using GameNight.Nights.ForHosts;
using GameNight.Nights.Links;
using GameNight.Nights.Membership;
using GameNight.Nights.PastNights;
using GameNight.Nights.Records;
using GameNight.Planning;
using GameNight.Planning.Guests;
using GameNight.Planning.Quantities;
using Microsoft.AspNetCore.Identity;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;

namespace GameNight.Demo;

/// <summary>Lives through the demo's nights with the app's own services, one after the other.</summary>
internal sealed class Filling(IServiceProvider services, MovedClock clock, Action<string> say)
{
    /// <summary>A plan that takes longer than this will not come.</summary>
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(2);

    private readonly HostDesk _nights = services.GetRequiredService<HostDesk>();
    private readonly GuestListDesk _people = services.GetRequiredService<GuestListDesk>();
    private readonly GuestBook _book = services.GetRequiredService<GuestBook>();
    private readonly DoughDesk _dough = services.GetRequiredService<DoughDesk>();
    private readonly PastNightsDesk _past = services.GetRequiredService<PastNightsDesk>();
    private readonly LookBackBook _lookBacks = services.GetRequiredService<LookBackBook>();
    private readonly KitchenDesk _kitchen = services.GetRequiredService<KitchenDesk>();
    private readonly PlanDesk _plans = services.GetRequiredService<PlanDesk>();
    private readonly Dictionary<string, GuestId> _guests = [];

    public async Task FillAsync(CancellationToken cancellation)
    {
        var now = clock.GetCurrentInstant();
        var coming = ComingSaturday(now);
        clock.MoveTo(At(coming.PlusWeeks(-LanternTable.Nights.Max(night => night.WeeksAgo)).PlusDays(-20), new LocalTime(18, 0)));
        var access = await FoundAsync(cancellation);
        var items = (await _kitchen.MenuAsync(access, cancellation)).ToDictionary(item => item.Name, item => item.Id.ToString());
        await FurnishAsync(access, items, cancellation);
        foreach (var night in LanternTable.Nights)
        {
            say($"{night.Title} …");
            await LiveThroughAsync(access, night, coming.PlusWeeks(-night.WeeksAgo), items, now, cancellation);
        }

        clock.MoveTo(now);
    }

    /// <summary>Far enough that the dough can still be mixed, near enough that there is something to do.</summary>
    private static LocalDate ComingSaturday(Instant now) =>
        now.InZone(NightTime.Zone(LanternTable.Zone)!).Date.PlusDays(4).Next(IsoDayOfWeek.Saturday);

    private async Task<GroupAccess> FoundAsync(CancellationToken cancellation)
    {
        var groups = services.GetRequiredService<GroupDesk>();
        var host = await SignUpAsync(LanternTable.HostName, LanternTable.Email);
        var group = await groups.FoundAsync(host, LanternTable.HostName, LanternTable.GroupName, LanternTable.Zone, cancellation);
        var access = (await groups.EnterAsync(host, group, cancellation))!;
        foreach (var person in LanternTable.Guests)
        {
            _guests[person.Name] = GuestId.New();
            await _people.AddAsync(access, _guests[person.Name], person.Name, person.Portion, cancellation);
        }

        await _people.HouseholdAsync(
            access, [.. LanternTable.Household.Members.Select(name => _guests[name])], LanternTable.Household.Name, cancellation);
        var (circle, invitation) = (services.GetRequiredService<HostCircle>(), HostInvitationId.New());
        await circle.InviteAsync(access, invitation, LanternTable.CoHostName, HostRole.Organiser, seesNotes: false, cancellation);
        var open = (await circle.InvitationsAsync(access, cancellation)).Single(one => one.Id == invitation);
        var coHost = await SignUpAsync(LanternTable.CoHostName, "bram@example.org");
        await services.GetRequiredService<JoiningDesk>()
            .JoinAsync(LinkToken.TryParse(open.LinkToken), coHost, LanternTable.CoHostName, cancellation);
        var eaters = await _people.GuestsAsync(access, cancellation);
        _guests[LanternTable.CoHostName] = eaters.Single(guest => guest.Name == LanternTable.CoHostName).Id;
        return access;
    }

    /// <summary>A fridge that was measured, a stone under an iron plate, a sauce that is simmered here and a blend that is grated here.</summary>
    private async Task FurnishAsync(GroupAccess access, IReadOnlyDictionary<string, string> items, CancellationToken cancellation)
    {
        var tables = services.GetRequiredService<ReferenceTables>();
        var (facts, version) = await _kitchen.KitchenAsync(access, cancellation);
        var furnished = LanternTable.Furnish(facts, tables, items);
        if (await _kitchen.SetKitchenAsync(access, furnished, version, cancellation) is not SaveResult.Saved)
        {
            throw new InvalidOperationException("The kitchen was not kept.");
        }
    }

    private async Task<HostId> SignUpAsync(string name, string email)
    {
        await using var scope = services.CreateAsyncScope();
        var account = new HostAccount { Id = Guid.CreateVersion7(), UserName = email, Email = email, DisplayName = name };
        var made = await scope.ServiceProvider.GetRequiredService<UserManager<HostAccount>>()
            .CreateAsync(account, LanternTable.Password);
        return made.Succeeded ? new HostId(account.Id) : throw new InvalidOperationException(made.ToString());
    }

    private async Task LiveThroughAsync(
        GroupAccess access, DemoNight night, LocalDate day, IReadOnlyDictionary<string, string> items, Instant now,
        CancellationToken cancellation)
    {
        var serve = At(day, LanternTable.ServeAt);
        var isPast = serve <= now;
        clock.MoveTo(isPast ? serve - Duration.FromDays(10) : now - Duration.FromHours(30));
        var id = await OpenAsync(access, night, day, cancellation);
        var links = (await _nights.NightAsync(access, id, cancellation))!.Guests
            .ToDictionary(guest => guest.Id, guest => LinkToken.TryParse(guest.LinkToken));
        foreach (var said in night.Answers.Where(said => !said.Late))
        {
            clock.MoveTo(clock.GetCurrentInstant() + Duration.FromHours(isPast ? 9 : 2));
            await AnswerAsync(links[_guests[said.Name]], said, items, cancellation);
        }

        if (!isPast)
        {
            clock.MoveTo(now);
            await PlannedAsync(access, id, cancellation);
            return;
        }

        var plan = await PlannedAsync(access, id, cancellation);
        clock.MoveTo(plan.Timeline.DoughCommitment is { } mixing ? mixing - Duration.FromHours(1) : serve - Duration.FromHours(60));
        await PlannedAsync(access, id, cancellation);
        await _dough.CommitAsync(access, id, cancellation);
        clock.MoveTo(serve - Duration.FromHours(26));
        foreach (var said in night.Answers.Where(said => said.Late))
        {
            await AnswerAsync(links[_guests[said.Name]], said, items, cancellation);
        }

        plan = await PlannedAsync(access, id, cancellation);
        clock.MoveTo(serve + Duration.FromHours(15));
        await WriteDownAsync(access, id, night, plan, cancellation);
    }

    private async Task<NightId> OpenAsync(GroupAccess access, DemoNight night, LocalDate day, CancellationToken cancellation)
    {
        var recipes = await _kitchen.RecipesAsync(access, cancellation);
        var facts = new NightFacts(
            night.Title, day + LanternTable.ServeAt, day + LanternTable.EndsAt, LanternTable.Zone, LanternTable.Address,
            night.Bring, recipes.Single(recipe => recipe.Name == "House dough, cold").Id, new Share(0.1),
            ShortestColdHours: 40, WantedColdHours: 48, LongestColdHours: 72, MostCompanions: 2, Seats: night.Seats, Played: night.Played);
        return await _nights.OpenNightAsync(access, NightId.New(), facts, [.. _guests.Values], cancellation) switch
        {
            NightResult.Kept kept => kept.Night,
            var other => throw new InvalidOperationException($"{night.Title} was not opened: {other}"),
        };
    }

    private async Task AnswerAsync(
        LinkToken? link, Said said, IReadOnlyDictionary<string, string> items, CancellationToken cancellation)
    {
        var person = LanternTable.Guests.Single(guest => guest.Name == said.Name);
        IReadOnlyList<Companion> companions =
        [
            .. Enumerable.Repeat(new Companion(PortionClass.Adult), said.Adults),
            .. Enumerable.Repeat(new Companion(PortionClass.Child), said.Children),
        ];
        var needs = said.Presence == Presence.NotComing || person.Needs.IsNone && person.Note.Length == 0
            ? []
            : Enumerable.Repeat(DietaryNeeds.None, companions.Count).Prepend(person.Needs).ToList();
        var answer = new GuestAnswer(
            new AnswerFacts(
                said.Presence, Remotely: false, person.Hunger, companions,
                person.Likes.ToDictionary(like => items[like.Key], like => like.Value),
                said.ComesAt * 60),
            needs, needs.Count > 0 ? person.Note : "", Consents: needs.Count > 0, Revision: 0, Guid.NewGuid(),
            Remembers: true, ShowsName: person.Name.Length % 2 == 0);
        var result = await _book.AnswerAsync(link, answer, cancellation);
        if (result is not (AnswerResult.Recorded or AnswerResult.RecordedAsLateChange))
        {
            throw new InvalidOperationException($"The answer of {said.Name} was not kept: {result}");
        }
    }

    private async Task<NightPlan> PlannedAsync(GroupAccess access, NightId night, CancellationToken cancellation)
    {
        using var deadline = CancellationTokenSource.CreateLinkedTokenSource(cancellation);
        deadline.CancelAfter(Patience);
        while (true)
        {
            if (await _plans.PlanAsync(access, night, deadline.Token) is { Plan: { } plan, IsBeingRedone: false })
            {
                return plan;
            }

            await Task.Delay(TimeSpan.FromMilliseconds(100), deadline.Token);
        }
    }

    private async Task WriteDownAsync(
        GroupAccess access, NightId id, DemoNight night, NightPlan plan, CancellationToken cancellation)
    {
        var came = night.Answers
            .Where(said => said.Presence == Presence.Coming)
            .Select(said => new CameFacts(_guests[said.Name].Value, 1 + said.Adults + said.Children)).ToList();
        var hosts = (await _people.GuestsAsync(access, cancellation)).Where(guest => guest.IsHost);
        came.AddRange(hosts.Select(host => new CameFacts(host.Id.Value, 1)));
        var baked = new PieCount(plan.Dough.Balls - night.PiesFewer);
        var written = await _past.WriteAsync(
            access, id, new BakeLogFacts(came, baked, night.SlicesLeft, [], night.ToChange), version: null, cancellation);
        if (written is not LogResult.Written)
        {
            throw new InvalidOperationException($"{night.Title} was not written down: {written}");
        }

        var links = await _past.LinksAsync(access, id, cancellation);
        foreach (var said in night.After)
        {
            var facts = new LookBackFacts(
                said.Enough, said.Evening, said.Slices, [1 + (said.Name.Length % plan.Dough.Balls)], said.Words, said.Namelessly);
            await _lookBacks.SayAsync(
                LinkToken.TryParse(links[_guests[said.Name]]), new GuestLookBack(facts, 0, Guid.NewGuid()), cancellation);
        }
    }

    private static Instant At(LocalDate day, LocalTime time) => NightTime.ToInstant(day + time, LanternTable.Zone);
}
