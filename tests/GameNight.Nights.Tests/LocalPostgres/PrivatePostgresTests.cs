using System.Diagnostics;
using GameNight.TestKit.Postgres;

namespace GameNight.Nights.Tests.LocalPostgres;

public class PrivatePostgresTests
{
    /// <summary>A start on an existing folder takes a tenth of a second; a busy machine may need many times that.</summary>
    private static readonly TimeSpan SecondStart = TimeSpan.FromSeconds(5);

    [Fact]
    public async Task Starts_and_answers_on_both_roles()
    {
        await using var root = await TemporaryDataRoot.MakeAsync(TestContext.Current.CancellationToken);
        await using var server = await Servers.StartedAsync(root.Settings);

        Assert.Equal("gamenight_owner", await Servers.AskAsync<string>(server.OwnerConnectionString, "select current_user::text"));
        Assert.Equal("gamenight_app", await Servers.AskAsync<string>(server.AppConnectionString, "select current_user::text"));
        Assert.InRange(server.ServerMajorVersion, 15, 99);
    }

    [Fact]
    public async Task Second_start_is_quick_and_keeps_the_data()
    {
        await using var root = await TemporaryDataRoot.MakeAsync(TestContext.Current.CancellationToken);
        await using (var first = await Servers.StartedAsync(root.Settings))
        {
            await Servers.TellAsync(first.OwnerConnectionString, "create table pies as select 3 as eaten");
        }

        var taken = Stopwatch.StartNew();
        await using var second = await Servers.StartedAsync(root.Settings);

        Assert.True(taken.Elapsed < SecondStart, $"The second start took {taken.Elapsed}.");
        Assert.Equal(3, await Servers.AskAsync<int>(second.OwnerConnectionString, "select eaten from pies"));
    }

    [Fact]
    public async Task Starts_with_the_programs_of_an_installed_Postgres()
    {
        await using var root = await TemporaryDataRoot.MakeAsync(TestContext.Current.CancellationToken);
        await using var programs = await TemporaryDataRoot.MakeAsync(TestContext.Current.CancellationToken);
        var settings = root.Settings with { ProgramsFolder = programs.Path, SearchPath = "", BinFolder = null };
        Assert.SkipUnless(
            Directory.Exists(settings.InstalledServersFolder),
            $"No Postgres is installed under {settings.InstalledServersFolder}.");

        await using var server = await Servers.StartedAsync(settings);

        Assert.Equal(
            server.ServerMajorVersion,
            await Servers.AskAsync<int>(
                server.AppConnectionString, "select current_setting('server_version_num')::int / 10000"));
    }

    [Fact]
    public async Task Goes_on_with_the_version_that_made_the_folder_when_a_newer_one_is_at_hand()
    {
        await using var root = await TemporaryDataRoot.MakeAsync(TestContext.Current.CancellationToken);
        await using var programs = await TemporaryDataRoot.MakeAsync(TestContext.Current.CancellationToken);
        var installedOnly = root.Settings with { ProgramsFolder = programs.Path, SearchPath = "", BinFolder = null };
        Assert.SkipUnless(
            Directory.Exists(installedOnly.InstalledServersFolder),
            $"No Postgres is installed under {installedOnly.InstalledServersFolder}.");
        int made;
        await using (var first = await Servers.StartedAsync(installedOnly))
        {
            made = first.ServerMajorVersion;
        }

        await using var second = await Servers.StartedAsync(root.Settings with { BinFolder = null });

        Assert.Equal(made, second.ServerMajorVersion);
    }

    [Fact]
    public async Task A_data_root_with_a_long_path_works()
    {
        await using var root = await TemporaryDataRoot.MakeAsync(TestContext.Current.CancellationToken);
        var deep = Path.Combine(root.Path, new string('a', 60), new string('b', 60));
        Servers.MakePassable(root.Path, Path.GetDirectoryName(deep)!);

        await using var server = await Servers.StartedAsync(root.Settings with { DataRoot = deep });

        Assert.Equal(1, await Servers.AskAsync<int>(server.AppConnectionString, "select 1"));
    }

    [Fact]
    public async Task Opens_no_network_port_and_keeps_others_out_of_the_socket_folder()
    {
        await using var root = await TemporaryDataRoot.MakeAsync(TestContext.Current.CancellationToken);
        await using var server = await Servers.StartedAsync(root.Settings);

        var addresses = await Servers.AskAsync<string>(server.AdminConnectionString, "show listen_addresses");
        var sockets = await Servers.AskAsync<string>(server.AdminConnectionString, "show unix_socket_directories");

        Assert.Empty(addresses);
        Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute, File.GetUnixFileMode(sockets));
    }

    [Fact]
    public async Task Runs_in_a_session_of_its_own_so_that_the_terminal_cannot_interrupt_it()
    {
        await using var root = await TemporaryDataRoot.MakeAsync(TestContext.Current.CancellationToken);
        await using var server = await Servers.StartedAsync(root.Settings);

        var status = await File.ReadAllTextAsync(
            $"/proc/{server.ServerProcessId}/stat", TestContext.Current.CancellationToken);

        // After the name in brackets: state, parent, process group, session.
        var fields = status[(status.LastIndexOf(')') + 2)..].Split(' ');
        Assert.Equal(server.ServerProcessId.ToString(System.Globalization.CultureInfo.InvariantCulture), fields[2]);
        Assert.Equal(fields[2], fields[3]);
    }
}
