using System.Diagnostics;
using GameNight.LocalPostgres;
using GameNight.TestKit.Postgres;

namespace GameNight.Nights.Tests.LocalPostgres;

public class RecoveryTests
{
    [Fact]
    public async Task Takes_over_the_server_after_its_app_vanished()
    {
        await using var root = await TemporaryDataRoot.MakeAsync(TestContext.Current.CancellationToken);
        var first = await Servers.StartedAsync(root.Settings);
        first.Abandon();

        await using var second = await Servers.StartedAsync(root.Settings);

        Assert.Equal(first.ServerProcessId, second.ServerProcessId);
        Assert.Equal(1, await Servers.AskAsync<int>(second.AppConnectionString, "select 1"));
    }

    [Fact]
    public async Task A_server_taken_over_is_stopped_like_any_other()
    {
        await using var root = await TemporaryDataRoot.MakeAsync(TestContext.Current.CancellationToken);
        (await Servers.StartedAsync(root.Settings)).Abandon();
        var second = await Servers.StartedAsync(root.Settings);

        await second.DisposeAsync();

        Assert.False(File.Exists(Path.Combine(root.Path, "postgres", "postmaster.pid")));
    }

    [Fact]
    public async Task Recovers_after_the_server_was_killed_with_every_acknowledged_row_present()
    {
        await using var root = await TemporaryDataRoot.MakeAsync(TestContext.Current.CancellationToken);
        var first = await Servers.StartedAsync(root.Settings);
        await Servers.TellAsync(first.OwnerConnectionString, "create table answers (id int)");
        const int acknowledged = 25;
        for (var id = 0; id < acknowledged; id++)
        {
            await Servers.TellAsync(first.AppConnectionString, $"insert into answers values ({id})");
        }

        Process.GetProcessById(first.ServerProcessId).Kill();
        first.Abandon();
        await using var second = await Servers.StartedAsync(root.Settings);

        Assert.NotEqual(first.ServerProcessId, second.ServerProcessId);
        Assert.Equal(acknowledged, await Servers.AskAsync<long>(second.AppConnectionString, "select count(*) from answers"));
    }

    [Fact]
    public async Task Starts_afresh_after_a_kill_in_the_middle_of_making_the_database()
    {
        await using var root = await TemporaryDataRoot.MakeAsync(TestContext.Current.CancellationToken);
        await using (await Servers.StartedAsync(root.Settings))
        {
        }

        Directory.Move(Path.Combine(root.Path, "postgres"), Path.Combine(root.Path, "postgres.new"));
        File.Delete(Path.Combine(root.Path, "postgres.new", "PG_VERSION"));

        await using var server = await Servers.StartedAsync(root.Settings);

        Assert.Equal(1, await Servers.AskAsync<int>(server.AppConnectionString, "select 1"));
    }

    [Fact]
    public async Task A_start_that_is_given_up_can_be_made_again()
    {
        await using var root = await TemporaryDataRoot.MakeAsync(TestContext.Current.CancellationToken);
        using var giveUp = new CancellationTokenSource();

        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => PrivatePostgres.StartAsync(
            root.Settings,
            sentence =>
            {
                if (sentence.StartsWith("Starting Postgres", StringComparison.Ordinal))
                {
                    giveUp.CancelAfter(TimeSpan.FromMilliseconds(5));
                }
            },
            giveUp.Token));

        await using var server = await Servers.StartedAsync(root.Settings);

        Assert.Equal(1, await Servers.AskAsync<int>(server.AppConnectionString, "select 1"));
    }

    [Fact]
    public async Task A_server_that_cannot_start_gives_its_last_words()
    {
        await using var root = await TemporaryDataRoot.MakeAsync(TestContext.Current.CancellationToken);
        await using (await Servers.StartedAsync(root.Settings))
        {
        }

        await File.AppendAllTextAsync(
            Path.Combine(root.Path, "postgres", "postgresql.conf"),
            "\nno_such_setting = on\n",
            TestContext.Current.CancellationToken);

        var failure = await Assert.ThrowsAsync<PostgresFailedException>(() => Servers.StartedAsync(root.Settings));

        Assert.Contains("no_such_setting", failure.Message, StringComparison.Ordinal);
    }
}
