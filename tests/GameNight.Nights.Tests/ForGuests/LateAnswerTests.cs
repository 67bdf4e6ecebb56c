using GameNight.Nights.ForGuests;
using GameNight.Nights.Tests.Storage;
using GameNight.TestKit.Nights;
using GameNight.TestKit.Postgres;
using NodaTime;
using NodaTime.Text;

namespace GameNight.Nights.Tests.ForGuests;

public sealed class LateAnswerTests(ClassDatabase database) : NightsTest(database)
{
    [Fact]
    public async Task An_answer_after_the_dough_was_begun_is_recorded_as_a_late_change()
    {
        var night = await App.OpenNightForOneGuestAsync();
        await CommitAsync(night, NightBuilder.Now - Duration.FromMinutes(1));
        var answer = Answers.Coming();

        Assert.IsType<AnswerResult.RecordedAsLateChange>(await App.AnswerAsync(night.Link, answer));

        Assert.True((await App.InvitedAsync(night.Group, night.Night, night.Guest)).IsLate);
        Assert.True((await App.LookAsync(night.Link))!.IsAfterCommitment);
        Assert.IsType<AnswerResult.RecordedAsLateChange>(await App.AnswerAsync(night.Link, answer));
    }

    [Fact]
    public async Task An_answer_before_that_is_not_late()
    {
        var night = await App.OpenNightForOneGuestAsync();
        await CommitAsync(night, NightBuilder.Now + Duration.FromMinutes(1));

        Assert.IsType<AnswerResult.Recorded>(await App.AnswerAsync(night.Link, Answers.Coming()));

        Assert.False((await App.LookAsync(night.Link))!.IsAfterCommitment);
    }

    [Fact]
    public async Task A_late_change_of_an_early_answer_is_late()
    {
        var night = await App.OpenNightForOneGuestAsync();
        await App.AnswerAsync(night.Link, Answers.Coming());
        await CommitAsync(night, NightBuilder.Now);

        Assert.IsType<AnswerResult.RecordedAsLateChange>(
            await App.AnswerAsync(night.Link, Answers.NotComing(revision: 1)));
    }

    private Task<int> CommitAsync(GuestNight night, Instant commitment) => Rows.TellAsync(
        Database.AdminConnectionString,
        $"""
         insert into plans (group_id, night_id, envelope, fingerprint, engine_version, stage, solver_slices, made_at,
             dough_commitment, document)
         values ('{night.Group.Id.Value}', '{night.Night.Value}', 1, '', '', 'Quick', 0, now(),
             '{InstantPattern.ExtendedIso.Format(commitment)}', '{"{}"}')
         """);
}
