using System.Diagnostics;
using System.Security.Cryptography;
using GameNight.LocalPostgres;
using GameNight.Nights.ForGuests;
using GameNight.Nights.Links;
using GameNight.Nights.Records;
using GameNight.Nights.Tests.Storage;
using GameNight.Planning.Guests;
using GameNight.TestKit;
using GameNight.TestKit.Nights;
using GameNight.TestKit.Postgres;
using Microsoft.AspNetCore.DataProtection;

namespace GameNight.Nights.Tests.Delivery;

/// <summary>The scripts in deploy/ against a real server: what comes back is what was acknowledged.</summary>
public sealed class BackupTests(PostgresPrograms programs) : IClassFixture<PostgresPrograms>, IAsyncLifetime
{
    private const string Note = "Sesame sends me to hospital";

    private readonly DirectoryInfo _work = Directory.CreateTempSubdirectory("gamenight-backup-");
    private TestDatabase _database = null!;

    private string Data => Path.Combine(_work.FullName, "data");

    private string Backups => Path.Combine(_work.FullName, "backups");

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync()
    {
        Assert.SkipWhen(programs.BinFolder is null, "No Postgres with pg_dump is installed under /usr/lib/postgresql: backup and restore are not tried.");
        _database = await programs.Server.CreateAsync(template: null, Cancellation);
        await NightsRegistration.MigrateAsync(_database.OwnerConnectionString, Cancellation);
        Directory.CreateDirectory(Path.Combine(Data, "keys"));
        await File.WriteAllBytesAsync(Path.Combine(Data, "link-secret"), RandomNumberGenerator.GetBytes(LinkSecret.FewestBytes), Cancellation);
    }

    public ValueTask DisposeAsync()
    {
        _work.Delete(recursive: true);
        return ValueTask.CompletedTask;
    }

    [Fact]
    public async Task Bring_back_every_acknowledged_answer_with_its_note_and_its_link()
    {
        var (night, links) = await ANightWithAnswersAsync();
        Assert.Equal((0, ""), Errors(await BackUpAsync()));
        var elsewhere = await programs.Server.CreateAsync(template: null, Cancellation);
        var restoredData = Path.Combine(_work.FullName, "restored");

        Assert.Equal((0, ""), Errors(await RestoreAsync(elsewhere, restoredData)));

        await using var restored = App(elsewhere, restoredData);
        foreach (var (guest, link) in links)
        {
            var seen = await restored.LookAsync(link);
            Assert.Equal((Presence.Coming, guest.Index % 3), (seen!.Answer!.Presence, seen.Answer.Companions.Count));
            Assert.Equal(guest.Index % 2 == 0 ? Note : null, seen.Note);
            Assert.Equal(link, await restored.LinkAsync(night.Group, night.Night, guest.Id));
        }

        Assert.IsType<AnswerResult.Recorded>(await restored.AnswerAsync(links[0].Link, Answers.NotComing(revision: 1)));
        Assert.Equal(
            (await Rows.ReadAsync(_database.AdminConnectionString, Rows.Tables)).Count,
            (await Rows.ReadAsync(elsewhere.AdminConnectionString, Rows.Tables)).Count);
    }

    [Fact]
    public async Task Bring_back_the_walls_between_groups()
    {
        await ANightWithAnswersAsync();
        await BackUpAsync();
        var elsewhere = await programs.Server.CreateAsync(template: null, Cancellation);
        await RestoreAsync(elsewhere, Path.Combine(_work.FullName, "restored"));

        Assert.NotEmpty(await Rows.ReadAsync(elsewhere.AdminConnectionString, "select name from guests"));
        Assert.Empty(await Rows.ReadAsync(elsewhere.AppConnectionString, "select name from guests"));
        Assert.Empty(await Rows.ReadAsync(elsewhere.OwnerConnectionString, "select name from guests"));
        await NightsRegistration.MigrateAsync(elsewhere.OwnerConnectionString, Cancellation);
    }

    [Fact]
    public async Task Are_readable_to_their_owner_alone()
    {
        await ANightWithAnswersAsync();
        await BackUpAsync();

        const UnixFileMode others = UnixFileMode.GroupRead | UnixFileMode.GroupWrite | UnixFileMode.GroupExecute
            | UnixFileMode.OtherRead | UnixFileMode.OtherWrite | UnixFileMode.OtherExecute;
        var backup = new DirectoryInfo(Assert.Single(Directory.GetDirectories(Backups)));
        FileSystemInfo[] everything = [backup, .. backup.EnumerateFileSystemInfos("*", SearchOption.AllDirectories)];
        Assert.InRange(everything.Length, 7, int.MaxValue);
        Assert.All(everything, entry => Assert.Equal(UnixFileMode.None, entry.UnixFileMode & others));
    }

    [Theory]
    [InlineData(RolesAndDatabase.Owner)]
    [InlineData(RolesAndDatabase.App)]
    public async Task Are_not_made_by_a_role_that_sees_no_rows(string role)
    {
        await ANightWithAnswersAsync();

        var (code, errors) = Errors(await BackUpAsync(role));

        Assert.NotEqual(0, code);
        Assert.StartsWith($"The role {role} does not see past row-level security", errors, StringComparison.Ordinal);
        Assert.False(Directory.Exists(Backups));
    }

    [Fact]
    public async Task Are_not_made_of_a_database_that_nobody_uses()
    {
        await using var app = App(_database, Data);
        app.Get<IDataProtectionProvider>().CreateProtector("makes a key").Protect("x");

        var (code, errors) = Errors(await BackUpAsync());

        Assert.NotEqual(0, code);
        Assert.StartsWith("There is no account in the database", errors, StringComparison.Ordinal);
        Assert.Empty(Directory.GetDirectories(Backups));
    }

    [Fact]
    public async Task Do_not_overwrite_a_database_or_keys_in_use()
    {
        await ANightWithAnswersAsync();
        await BackUpAsync();
        var before = await Rows.EverythingAsync(_database);
        var empty = await programs.Server.CreateAsync(template: null, Cancellation);

        var ontoRows = Errors(await RestoreAsync(_database, Path.Combine(_work.FullName, "restored")));
        var ontoKeys = Errors(await RestoreAsync(empty, Data));

        Assert.Contains("has tables already", ontoRows.Text, StringComparison.Ordinal);
        Assert.Contains("has a link secret or keys already", ontoKeys.Text, StringComparison.Ordinal);
        Assert.Equal(before, await Rows.EverythingAsync(_database));
        Assert.Empty(await Rows.ReadAsync(empty.AdminConnectionString, Rows.Tables));
    }

    [Fact]
    public async Task Are_not_restored_when_damaged()
    {
        await ANightWithAnswersAsync();
        await BackUpAsync();
        var dump = Path.Combine(Assert.Single(Directory.GetDirectories(Backups)), "database.dump");
        var bytes = await File.ReadAllBytesAsync(dump, Cancellation);
        bytes[^20] ^= 1;
        await File.WriteAllBytesAsync(dump, bytes, Cancellation);
        var empty = await programs.Server.CreateAsync(template: null, Cancellation);

        var (code, errors) = Errors(await RestoreAsync(empty, Path.Combine(_work.FullName, "restored")));

        Assert.NotEqual(0, code);
        Assert.Contains("is damaged", errors, StringComparison.Ordinal);
        Assert.Empty(await Rows.ReadAsync(empty.AdminConnectionString, Rows.Tables));
    }

    private static (int Code, string Text) Errors((int Code, string Output, string Errors) run) => (run.Code, run.Errors.Trim());

    private static NightsApp App(TestDatabase database, string data) => NightsApp.On(
        database.AppConnectionString,
        keys: DataProtectionProvider.Create(
            new DirectoryInfo(Path.Combine(data, "keys")), protection => protection.SetApplicationName("gamenight")),
        linkSecret: new LinkSecret(File.ReadAllBytes(Path.Combine(data, "link-secret"))));

    /// <summary>Six guests who come, some with companions, every other one with a note.</summary>
    private async Task<(GuestNight Night, List<((GuestId Id, int Index) Guest, LinkToken Link)> Links)> ANightWithAnswersAsync()
    {
        await using var app = App(_database, Data);
        var group = await app.FoundGroupAsync();
        var guests = new List<GuestId>();
        for (var index = 0; index < 6; index++)
        {
            guests.Add(await app.AddGuestAsync(group, $"Guest {index}"));
        }

        var night = await app.OpenNightAsync(group, guests);
        var links = new List<((GuestId Id, int Index) Guest, LinkToken Link)>();
        foreach (var (index, guest) in guests.Index())
        {
            var link = await app.LinkAsync(group, night, guest);
            var answer = Answers.Coming(companions: index % 3);
            Assert.IsType<AnswerResult.Recorded>(await app.AnswerAsync(
                link, index % 2 == 0 ? answer.WithNote(Note, Answers.Avoiding(Allergen.Sesame)) : answer));
            links.Add(((guest, index), link));
        }

        return (new GuestNight(group, night, guests[0], links[0].Link), links);
    }

    private Task<(int Code, string Output, string Errors)> BackUpAsync(string role = "postgres") =>
        RunAsync("backup.sh", Backups, _database, Data, role);

    private Task<(int Code, string Output, string Errors)> RestoreAsync(TestDatabase into, string data) =>
        RunAsync("restore.sh", Assert.Single(Directory.GetDirectories(Backups)), into, data, "postgres");

    private async Task<(int Code, string Output, string Errors)> RunAsync(
        string script, string argument, TestDatabase database, string data, string role)
    {
        var start = new ProcessStartInfo("/bin/sh", [Path.Combine(SharedFolder.Root, "..", "deploy", script), argument])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        start.Environment["PATH"] = $"{programs.BinFolder}:{Environment.GetEnvironmentVariable("PATH")}";
        start.Environment["PGHOST"] = programs.SocketFolder;
        start.Environment["PGUSER"] = role;
        start.Environment["PGDATABASE"] = database.Name;
        start.Environment["GAMENIGHT_DATA"] = data;
        using var run = Process.Start(start)!;
        var (output, errors) = (run.StandardOutput.ReadToEndAsync(Cancellation), run.StandardError.ReadToEndAsync(Cancellation));
        await run.WaitForExitAsync(Cancellation);
        return (run.ExitCode, await output, await errors);
    }
}
