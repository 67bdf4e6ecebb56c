using System.Text.Json;
using GameNight.Nights.Links;
using GameNight.Nights.PastNights;
using GameNight.Nights.Plans;
using GameNight.Nights.Records;
using GameNight.Nights.Snapshots;
using GameNight.Nights.Storage;
using GameNight.Planning;
using GameNight.Planning.Quantities;
using GameNight.TestKit.Nights;
using GameNight.TestKit.Postgres;
using NodaTime;

namespace GameNight.Nights.Tests.PastNights;

/// <summary>What tests of nights that are over have in common.</summary>
public abstract class PastNightsTest(ClassDatabase database) : NightsTest(database)
{
    protected static BakeLogFacts NothingNoted { get; } = new([], null, null, [], "");

    /// <summary>Hana's group with three guests, a night that all of them answered, planned and served an hour ago.</summary>
    protected async Task<ServedNight> ServedAsync(params IReadOnlyList<string> names)
    {
        var group = await App.FoundGroupAsync();
        var guests = new Dictionary<string, GuestId>();
        foreach (var name in names)
        {
            guests[name] = await App.AddGuestAsync(group, name);
        }

        return await ServedAsync(group, guests);
    }

    protected async Task<ServedNight> ServedAsync(
        FoundedGroup group, IReadOnlyDictionary<string, GuestId> guests, Func<NightFacts, NightFacts>? but = null)
    {
        var night = await App.OpenNightAsync(group, [.. guests.Values], but);
        foreach (var guest in guests.Values)
        {
            await App.AnswerAsync(await App.LinkAsync(group, night, guest), Answers.Coming());
        }

        await PlanAsync(group, night);
        await PassAsync(group, night);
        return new ServedNight(group, night, guests);
    }

    /// <summary>Plans a night at once, without a planner at work.</summary>
    protected async Task PlanAsync(FoundedGroup group, NightId night)
    {
        await using var session = await App.Get<GroupSessions>().OpenAsync(group.Access, Cancellation);
        var snapshot = (await App.Get<NightSnapshots>().LoadAsync(session, night, Cancellation))!;
        var now = App.Clock.GetCurrentInstant();
        var plan = App.Get<NightPlanner>().Plan(snapshot, now, Effort.Quick, cancellation: Cancellation);
        await App.Get<PlanBook>().SaveAsync(group.Id, night, "fingerprint", plan, now, Cancellation);
    }

    /// <summary>An hour after the serving time, if it is not later already.</summary>
    protected async Task PassAsync(FoundedGroup group, NightId night)
    {
        var over = (await App.ViewAsync(group, night)).ServeAt + Duration.FromHours(1);
        if (App.Clock.GetCurrentInstant() < over)
        {
            App.Clock.Reset(over);
        }
    }

    protected async Task<PastNightView> PastAsync(ServedNight night) =>
        (await App.PastNights.NightAsync(night.Group.Access, night.Id, Cancellation))!;

    protected Task<LogResult> WriteAsync(ServedNight night, BakeLogFacts facts, uint? version = null) =>
        App.PastNights.WriteAsync(night.Group.Access, night.Id, facts, version, Cancellation);

    protected async Task<LinkToken> LinkAsync(ServedNight night, string name)
    {
        var links = await App.PastNights.LinksAsync(night.Group.Access, night.Id, Cancellation);
        return LinkToken.TryParse(links[night.Guests[name]])!.Value;
    }

    protected async Task<LookBackResult> SayAsync(ServedNight night, string name, GuestLookBack lookBack) =>
        await App.LookBacks.SayAsync(await LinkAsync(night, name), lookBack, Cancellation);

    protected async Task<LookBackView> LookAsync(ServedNight night, string name) =>
        Assert.IsType<LookBackLookup.Found>(await App.LookBacks.LookAsync(await LinkAsync(night, name), Cancellation)).View;

    protected static CameFacts Came(ServedNight night, string name, int heads) => new(night.Guests[name].Value, heads);

    protected static PieCount Pies(int count) => new(count);

    /// <summary>Everything a view carries, as text.</summary>
    protected static string Everything(object view) => JsonSerializer.Serialize(view, view.GetType(), StoredJson.Options);

    protected sealed record ServedNight(FoundedGroup Group, NightId Id, IReadOnlyDictionary<string, GuestId> Guests);
}
