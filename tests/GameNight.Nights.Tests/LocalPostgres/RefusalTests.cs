using GameNight.LocalPostgres;
using GameNight.TestKit.Postgres;

namespace GameNight.Nights.Tests.LocalPostgres;

public class RefusalTests
{
    [Fact]
    public async Task Refuses_a_folder_that_holds_somebody_elses_files()
    {
        await using var root = await TemporaryDataRoot.MakeAsync(TestContext.Current.CancellationToken);
        var letter = Path.Combine(root.Path, "letter.txt");
        await File.WriteAllTextAsync(letter, "Dear Ann", TestContext.Current.CancellationToken);

        var sentence = await Servers.RefusalAsync(root.Settings);

        Assert.Contains("not GameNight's", sentence, StringComparison.Ordinal);
        Assert.Equal([letter], Directory.EnumerateFileSystemEntries(root.Path));
    }

    [Fact]
    public async Task Refuses_a_folder_of_another_major_version()
    {
        await using var root = await TemporaryDataRoot.MakeAsync(TestContext.Current.CancellationToken);
        await using (await Servers.StartedAsync(root.Settings))
        {
        }

        await File.WriteAllTextAsync(
            Path.Combine(root.Path, "postgres", "PG_VERSION"), "14\n", TestContext.Current.CancellationToken);

        var sentence = await Servers.RefusalAsync(root.Settings);

        Assert.Contains("was made by Postgres 14", sentence, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Names_what_to_install_where_there_is_neither_npm_nor_Postgres()
    {
        await using var root = await TemporaryDataRoot.MakeAsync(TestContext.Current.CancellationToken);

        var sentence = await Servers.RefusalAsync(WithoutPrograms(root, searchPath: ""));

        Assert.Contains("install npm", sentence, StringComparison.Ordinal);
        Assert.Contains("Postgres 15 or newer", sentence, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Says_why_npm_failed_where_there_is_no_Postgres_either()
    {
        await using var root = await TemporaryDataRoot.MakeAsync(TestContext.Current.CancellationToken);
        await using var tools = await TemporaryDataRoot.MakeAsync(TestContext.Current.CancellationToken);
        var npm = Path.Combine(tools.Path, "npm");
        await File.WriteAllTextAsync(
            npm, "#!/bin/sh\necho 'npm error network is down' >&2\nexit 1\n", TestContext.Current.CancellationToken);
        File.SetUnixFileMode(npm, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);

        var sentence = await Servers.RefusalAsync(WithoutPrograms(root, searchPath: tools.Path));

        Assert.Contains("network is down", sentence, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Names_the_setting_that_leads_to_a_folder_without_programs()
    {
        await using var root = await TemporaryDataRoot.MakeAsync(TestContext.Current.CancellationToken);

        var sentence = await Servers.RefusalAsync(root.Settings with { BinFolder = "/nowhere/bin" });

        Assert.Contains("GAMENIGHT_POSTGRES_BIN names /nowhere/bin", sentence, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Refuses_a_folder_that_another_app_is_using()
    {
        await using var root = await TemporaryDataRoot.MakeAsync(TestContext.Current.CancellationToken);
        await using var server = await Servers.StartedAsync(root.Settings);

        var sentence = await Servers.RefusalAsync(root.Settings);

        Assert.Contains("Another GameNight is running", sentence, StringComparison.Ordinal);
        Assert.Equal(1, await Servers.AskAsync<int>(server.AppConnectionString, "select 1"));
    }

    [Fact]
    public async Task Refuses_a_folder_that_the_servers_user_cannot_enter()
    {
        Assert.SkipUnless(Environment.IsPrivilegedProcess, "Only root changes to another user.");
        await using var root = await TemporaryDataRoot.MakeAsync(TestContext.Current.CancellationToken);

        var sentence = await Servers.RefusalAsync(root.Settings with { DataRoot = Path.Combine(root.Path, "closed") });

        Assert.Contains("cannot enter", sentence, StringComparison.Ordinal);
    }

    private static PrivatePostgresSettings WithoutPrograms(TemporaryDataRoot root, string searchPath)
    {
        return root.Settings with
        {
            BinFolder = null,
            ProgramsFolder = Path.Combine(root.Path, "server"),
            SearchPath = searchPath,
            InstalledServersFolder = Path.Combine(root.Path, "none"),
        };
    }
}
