using System.Net;
using System.Net.Sockets;
using GameNight.LocalPostgres;
using GameNight.TestKit.Postgres;
using GameNight.TestKit.Running;

namespace GameNight.Web.Tests.Startup;

public sealed class RefusedStartTests : IAsyncLifetime
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(60);

    private TemporaryDataRoot _root = null!;

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync() => _root = await TemporaryDataRoot.MakeAsync(Cancellation);

    public ValueTask DisposeAsync() => _root.DisposeAsync();

    [Fact]
    public async Task The_port_is_taken()
    {
        using var other = new TcpListener(IPAddress.Loopback, 0);
        other.Start();

        var sentence = await RefusalAsync(new() { ["ASPNETCORE_URLS"] = $"http://127.0.0.1:{((IPEndPoint)other.LocalEndpoint).Port}" });

        Assert.StartsWith("The address is in use already", sentence, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_data_folder_is_somebody_elses()
    {
        await File.WriteAllTextAsync(Path.Combine(_root.Path, "thesis.txt"), "do not lose", Cancellation);

        var sentence = await RefusalAsync([]);

        Assert.Contains("holds files that are not GameNight's", sentence, StringComparison.Ordinal);
        Assert.Equal(["thesis.txt"], Directory.EnumerateFileSystemEntries(_root.Path).Select(Path.GetFileName));
    }

    [Theory]
    [InlineData("night.example")]
    [InlineData("ftp://night.example")]
    public async Task The_public_address_is_none(string address)
    {
        var sentence = await RefusalAsync(new() { ["GAMENIGHT_PUBLIC_ADDRESS"] = address });

        Assert.StartsWith("GAMENIGHT_PUBLIC_ADDRESS is not an address", sentence, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("http://night.example")]
    [InlineData("http://203.0.113.7:5080")]
    public async Task The_public_address_would_carry_private_links_in_the_open(string address)
    {
        var sentence = await RefusalAsync(new() { ["GAMENIGHT_PUBLIC_ADDRESS"] = address });

        Assert.StartsWith("GAMENIGHT_PUBLIC_ADDRESS is not encrypted", sentence, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("Host=nowhere;Username=gamenight_owner;Database=gamenight", "GAMENIGHT_DATABASE serves as gamenight_owner")]
    [InlineData("Host=nowhere;User ID=postgres", "GAMENIGHT_DATABASE serves as postgres")]
    [InlineData("nowhere", "GAMENIGHT_DATABASE is not a connection string")]
    public async Task The_database_would_be_served_without_walls_or_not_at_all(string connection, string beginning)
    {
        var sentence = await RefusalAsync(new() { ["GAMENIGHT_DATABASE"] = connection });

        Assert.StartsWith(beginning, sentence, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_password_of_the_database_is_not_where_it_should_be()
    {
        var sentence = await RefusalAsync(new()
        {
            ["GAMENIGHT_DATABASE"] = "Host=nowhere;Username=gamenight_app",
            ["GAMENIGHT_DATABASE_PASSWORD_FILE"] = "/no/such/password",
        });

        Assert.StartsWith("GAMENIGHT_DATABASE_PASSWORD_FILE: /no/such/password cannot be read", sentence, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("GAMENIGHT_TRUSTED_PROXIES", "the proxy")]
    [InlineData("GAMENIGHT_TRUSTED_PROXIES", "10.0.0.0/99")]
    [InlineData("GAMENIGHT_LOG", "xml")]
    [InlineData("GAMENIGHT_ADDRESS", "http://localhost:5099")]
    [InlineData("ASPNETCORE_FORWARDEDHEADERS_ENABLED", "true")]
    public async Task A_setting_says_nothing_that_can_be_done(string name, string value)
    {
        var sentence = await RefusalAsync(new() { [name] = value });

        Assert.StartsWith(name, sentence, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_reference_tables_are_not_there()
    {
        var sentence = await RefusalAsync(new() { ["GAMENIGHT_REFERENCE"] = "/no/such/folder" });

        Assert.StartsWith("GAMENIGHT_REFERENCE: the folder /no/such/folder is not there", sentence, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_reference_tables_are_broken()
    {
        var tables = Directory.CreateDirectory(Path.Combine(_root.Path, "tables")).FullName;
        await using var data = await TemporaryDataRoot.MakeAsync(Cancellation);

        var sentence = await RefusalAsync(new() { ["GAMENIGHT_REFERENCE"] = tables, ["GAMENIGHT_DATA"] = data.Path });

        Assert.Contains(".json", sentence, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("GAMENIGHT_SOLVER_SLICES", "201")]
    [InlineData("GAMENIGHT_SOLVER_SLICES", "many")]
    public async Task A_number_is_out_of_range_or_none(string name, string value)
    {
        var sentence = await RefusalAsync(new() { [name] = value });

        Assert.StartsWith(name, sentence, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Neither_npm_nor_an_installed_Postgres_is_there()
    {
        Assert.SkipWhen(Directory.Exists("/usr/lib/postgresql"), "Postgres is installed under /usr/lib/postgresql.");

        var sentence = await RefusalAsync(new()
        {
            ["PATH"] = Path.GetDirectoryName(AppProcess.Dotnet) is "/usr/bin" ? "/nowhere" : Path.GetDirectoryName(AppProcess.Dotnet),
            [PrivatePostgresSettings.BinFolderVariable] = null,
        });

        Assert.StartsWith("There is no Postgres to run: install npm", sentence, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_named_folder_of_Postgres_programs_is_empty()
    {
        var sentence = await RefusalAsync(new() { [PrivatePostgresSettings.BinFolderVariable] = "/no/such/bin" });

        Assert.StartsWith("GAMENIGHT_POSTGRES_BIN names /no/such/bin", sentence, StringComparison.Ordinal);
    }

    /// <summary>Starts the app, which must end with code 1 and one plain sentence.</summary>
    private async Task<string> RefusalAsync(Dictionary<string, string?> environment)
    {
        using var deadline = CancellationTokenSource.CreateLinkedTokenSource(Cancellation);
        deadline.CancelAfter(Patience);
        environment.TryAdd("GAMENIGHT_DATA", _root.Path);
        environment.TryAdd("ASPNETCORE_URLS", $"http://127.0.0.1:{RunningApp.FreePort()}");
        if (!environment.ContainsKey(PrivatePostgresSettings.BinFolderVariable))
        {
            environment[PrivatePostgresSettings.BinFolderVariable] = await SharedPrograms.FolderAsync(Cancellation);
        }

        using var app = AppProcess.Start(environment);
        await app.WaitForEndAsync(deadline.Token);

        var sentence = Assert.Single(app.Errors.Split('\n', StringSplitOptions.RemoveEmptyEntries));
        Assert.Equal(1, app.ExitCode);
        Assert.DoesNotContain("Exception", app.Output + app.Errors, StringComparison.Ordinal);
        return sentence;
    }
}
