using GameNight.Nights.ForGuests;
using GameNight.Nights.ForHosts;
using GameNight.Nights.Messages;
using GameNight.Nights.Records;
using GameNight.TestKit.Nights;
using GameNight.TestKit.Postgres;
using NodaTime;
using NodaTime.Testing;

namespace GameNight.Nights.Tests.Messages;

/// <summary>A group with an app of its own that sends messages, and a postman who works when he is told.</summary>
public abstract class MessagesTest : NightsTest, IAsyncLifetime
{
    private readonly NightsApp _app;

    protected MessagesTest(ClassDatabase database)
        : base(database)
    {
        _app = NightsApp.On(database.Database.AppConnectionString, new FakeClock(NightBuilder.Now), carrier: Carrier);
    }

    /// <summary>What other tests left to do in the database of the class is nobody's any more.</summary>
    public async ValueTask InitializeAsync() => await Storage.Rows.TellAsync(Database.AdminConnectionString, "delete from post_queue");

    internal NotingCarrier Carrier { get; } = new();

    protected NightsApp Sending => _app;

    protected FakeClock Clock => _app.Clock;

    /// <summary>A night with so many guests, each with an address.</summary>
    protected async Task<(FoundedGroup Group, NightId Night, IReadOnlyList<GuestId> Guests)> NightAsync(int guests)
    {
        var group = await _app.FoundGroupAsync();
        List<GuestId> known = [];
        for (var number = 1; number <= guests; number++)
        {
            known.Add(await _app.AddGuestAsync(group, $"Guest {number}"));
            await _app.GuestList.ReachAsync(group.Access, known[^1], $"guest{number}@example.org", Cancellation);
        }

        return (group, await _app.OpenNightAsync(group, known), known);
    }

    protected async Task InviteAsync(FoundedGroup group, NightId night)
    {
        Assert.IsType<SaveResult.Saved>(await _app.Messages.SendInvitationsAsync(group.Access, night, Cancellation));
        await DeliverAsync();
    }

    /// <summary>Until nothing is due any more.</summary>
    protected async Task DeliverAsync()
    {
        while (await _app.Get<Postman>().RunOneAsync(Cancellation))
        {
        }
    }

    /// <summary>A moment later everything that is due is done.</summary>
    protected async Task PassAsync(Duration time)
    {
        Clock.Advance(time);
        await DeliverAsync();
    }

    protected async Task<MessagesView> SeenAsync(FoundedGroup group, NightId night) =>
        (await _app.Messages.MessagesAsync(group.Access, night, Cancellation))!;

    /// <summary>What was handed over of this night, as kind and address.</summary>
    protected IReadOnlyList<string> Sent(NightId night) =>
        [.. Carrier.Letters.Where(letter => letter.Night.Night == night).Select(letter => $"{letter.Kind} {letter.To.Split('@')[0]}").Order()];

    protected async Task MoveAsync(FoundedGroup group, NightId night, Func<NightFacts, NightFacts> change)
    {
        var view = await _app.ViewAsync(group, night);
        Assert.IsType<NightResult.Kept>(await _app.Nights.ChangeNightAsync(
            group.Access, night, change(view.Facts), view.Version, Cancellation));
    }

    protected async Task AnswerAsync(FoundedGroup group, NightId night, GuestId guest, GuestAnswer answer) =>
        await _app.AnswerAsync(await _app.LinkAsync(group, night, guest), answer);

    /// <summary>A plan that says until when answers move the dough.</summary>
    protected async Task PlanAsync(NightId night, Instant answerBy) => await Storage.Rows.TellAsync(
        Database.AdminConnectionString,
        $$"""
          insert into plans (group_id, night_id, envelope, fingerprint, engine_version, stage, solver_slices, made_at, answer_by, document)
          select group_id, id, 1, '', '', 'Quick', 0, now(), '{{answerBy}}', '{}' from nights where id = '{{night.Value}}'
          on conflict (group_id, night_id) do update set answer_by = excluded.answer_by;
          update post_queue set due_at = '{{Clock.GetCurrentInstant()}}' where subject = '{{night.Value}}';
          insert into post_queue (group_id, subject, errand, due_at)
          select group_id, id, 'Night', '{{Clock.GetCurrentInstant()}}' from nights where id = '{{night.Value}}' on conflict do nothing
          """);
}
