using GameNight.Nights.Erasure;
using GameNight.Nights.ForGuests;
using GameNight.Nights.Records;
using GameNight.Nights.Tests.Storage;
using GameNight.Planning.Guests;
using GameNight.TestKit.Nights;
using GameNight.TestKit.Postgres;
using NodaTime;

namespace GameNight.Nights.Tests.ForGuests;

public sealed class NoteTests(ClassDatabase database) : NightsTest(database)
{
    private const string Note = "Sesame sends me to hospital";

    [Fact]
    public async Task A_note_is_encrypted_at_rest_and_readable_to_the_host()
    {
        var night = await App.OpenNightForOneGuestAsync();

        await App.AnswerAsync(night.Link, Answers.Coming().WithNote($"  {Note} ", Answers.Avoiding(Allergen.Sesame)));

        Assert.DoesNotContain(await Rows.EverythingAsync(Database), row => row.Contains("hospital", StringComparison.Ordinal));
        var row = await App.InvitedAsync(night.Group, night.Night, night.Guest);
        Assert.Equal((Note, false), (row.Note, row.NoteIsUnreadable));
        Assert.Equal([Allergen.Sesame], row.Needs.Single().Avoids);
    }

    [Fact]
    public async Task Without_consent_neither_needs_nor_note_are_kept()
    {
        var night = await App.OpenNightForOneGuestAsync();
        var answer = Answers.Coming().WithNote(Note, Answers.Avoiding(Allergen.Sesame)) with { Consents = false };

        Assert.IsType<AnswerResult.Recorded>(await App.AnswerAsync(night.Link, answer));

        Assert.Equal(0, await NotesOfAsync(night));
        var seen = (await App.LookAsync(night.Link))!;
        Assert.Null(seen.Note);
        Assert.Empty(seen.Needs);
        Assert.False(seen.HasConsented);
    }

    [Fact]
    public async Task Consent_withdrawn_erases_what_was_kept()
    {
        var night = await App.OpenNightForOneGuestAsync();
        await App.AnswerAsync(night.Link, Answers.Coming().WithNote(Note, Answers.Avoiding(Allergen.Sesame)));
        Assert.Equal(1, await NotesOfAsync(night));

        await App.AnswerAsync(night.Link, Answers.Coming(revision: 1));

        Assert.Equal(0, await NotesOfAsync(night));
    }

    [Fact]
    public async Task Consent_to_nothing_keeps_nothing()
    {
        var night = await App.OpenNightForOneGuestAsync();

        await App.AnswerAsync(night.Link, Answers.Coming().WithNote("  ", DietaryNeeds.None));

        Assert.Equal(0, await NotesOfAsync(night));
    }

    [Fact]
    public async Task A_note_whose_key_is_gone_is_said_to_be_unreadable()
    {
        var night = await App.OpenNightForOneGuestAsync();
        await App.AnswerAsync(night.Link, Answers.Coming().WithNote(Note, Answers.Avoiding(Allergen.Sesame)));
        await using var otherKeys = NightsApp.On(Database.AppConnectionString);

        var row = await otherKeys.InvitedAsync(night.Group, night.Night, night.Guest);

        Assert.Equal((null, true), (row.Note, row.NoteIsUnreadable));
        Assert.Equal([Allergen.Sesame], row.Needs.Single().Avoids);
        Assert.NotNull(await otherKeys.LookAsync(night.Link));
    }

    [Fact]
    public async Task Notes_are_erased_a_week_after_the_night_and_not_before()
    {
        var night = await App.OpenNightForOneGuestAsync();
        var facts = (await App.ViewAsync(night.Group, night.Night)).Facts;
        await App.AnswerAsync(night.Link, Answers.Coming().WithNote(Note, Answers.Avoiding(Allergen.Sesame)));
        var served = NightTime.ToInstant(facts.ServeAt, facts.Zone);

        App.Clock.Reset(served + Duration.FromDays(DietaryNote.KeptDays) - Duration.FromMinutes(1));
        await App.Get<Retention>().EraseAsync(Cancellation);
        Assert.Equal(1, await NotesOfAsync(night));

        App.Clock.Reset(served + Duration.FromDays(DietaryNote.KeptDays) + Duration.FromMinutes(1));
        await App.Get<Retention>().EraseAsync(Cancellation);
        await App.Get<Retention>().EraseAsync(Cancellation);
        Assert.Equal(0, await NotesOfAsync(night));
        Assert.NotNull((await App.LookAsync(night.Link))!.Answer);
    }

    private async Task<int> NotesOfAsync(GuestNight night) => (await Rows.ReadAsync(
        Database.AdminConnectionString, $"select 1 from dietary_notes where guest_id = '{night.Guest.Value}'")).Count;
}
