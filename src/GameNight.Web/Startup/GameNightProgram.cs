using GameNight.LocalPostgres;
using GameNight.Nights;
using GameNight.Nights.Membership;
using GameNight.Planning.Reference;
using Microsoft.AspNetCore.Connections;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;

namespace GameNight.Web.Startup;

/// <summary>Starts the database if need be, then the app; says in one sentence what is in the way.</summary>
public static partial class GameNightProgram
{
    private const int ExitRefused = 1;

    public static async Task<int> RunAsync(string[] args)
    {
        if (args is [HealthProbe.Argument])
        {
            return await HealthProbe.AskAsync();
        }

        var options = GameNightOptions.Read(args);
        if (options.Problems() is { Count: > 0 } problems)
        {
            return Refuse(string.Join(Environment.NewLine, problems));
        }

        if (options.Database.Length > 0)
        {
            return await ServeAsync(args, options, ServingConnection.Of(options));
        }

        var settings = new PrivatePostgresSettings { DataRoot = options.DataRoot };
        var outcome = await PrivatePostgres.StartAsync(settings, Console.WriteLine, CancellationToken.None);
        if (outcome is not Started { Server: var server })
        {
            return Refuse(((Refused)outcome).Sentence);
        }

        await using (server)
        {
            await NightsRegistration.MigrateAsync(server.OwnerConnectionString, CancellationToken.None);
            return await ServeAsync(args, options, server.AppConnectionString);
        }
    }

    private static async Task<int> ServeAsync(string[] args, GameNightOptions options, string database)
    {
        WebApplication app;
        try
        {
            app = GameNightApp.Build(args, options, database);
        }
        catch (ReferenceTableException problem)
        {
            return Refuse(problem.Message);
        }

        await using (app)
        {
            try
            {
                await app.StartAsync();
            }
            catch (IOException fault) when (fault.InnerException is AddressInUseException)
            {
                // The services in the background have started already; they end before what they work with goes.
                await app.StopAsync();
                return Refuse("The address is in use already: stop the other program, or choose another with ASPNETCORE_URLS=http://localhost:5081.");
            }

            await GreetAsync(app, options.LogsJson ? sentence => Say(app.Logger, sentence) : Console.WriteLine);
            await app.WaitForShutdownAsync();
            return 0;
        }
    }

    private static async Task GreetAsync(WebApplication app, Action<string> say)
    {
        var addresses = app.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses;
        var address = addresses.First().Replace("[::]", "localhost", StringComparison.Ordinal)
            .Replace("0.0.0.0", "localhost", StringComparison.Ordinal);
        say($"GameNight is open at {address}");
        if (addresses.Any(open => open.Contains("0.0.0.0", StringComparison.Ordinal) && open.StartsWith("http:", StringComparison.Ordinal)))
        {
            say("It is open to your home network without encryption: put a server with TLS in front of it before you open it further.");
        }

        try
        {
            if (await app.Services.GetRequiredService<HostAccounts>().AreNoneAsync(CancellationToken.None))
            {
                say($"No account yet. Open {address}/first and enter this code: {app.Services.GetRequiredService<SetupCode>().Text}");
            }
        }
        catch (Exception fault) when (fault is not OperationCanceledException)
        {
            // The app is up and says "not ready" until the database answers.
            Console.Error.WriteLine("The database does not answer yet; the app keeps trying.");
        }
    }

    /// <summary>With a JSON log, what is said at the start is a line of it too.</summary>
    [LoggerMessage(LogLevel.Information, "{Sentence}")]
    private static partial void Say(ILogger log, string sentence);

    private static int Refuse(string sentence)
    {
        Console.Error.WriteLine(sentence);
        return ExitRefused;
    }
}
