using GameNight.Demo;
using GameNight.LocalPostgres;
using GameNight.Nights;
using GameNight.Nights.ForHosts;
using GameNight.Nights.Membership;
using GameNight.Web.Startup;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;

// Fills a group of our own invention once, on a data folder of its own, and runs the app on it.
if (!args.Contains("--data"))
{
    args = [.. args, "--data", new PrivatePostgresSettings().DataRoot + "-demo"];
}

var options = GameNightOptions.Read(args);
if (options.Database.Length > 0)
{
    Console.Error.WriteLine("The demo keeps to a database of its own: unset GAMENIGHT_DATABASE.");
    return 1;
}

var outcome = await PrivatePostgres.StartAsync(
    new PrivatePostgresSettings { DataRoot = options.DataRoot }, Console.WriteLine, CancellationToken.None);
if (outcome is not Started { Server: var server })
{
    Console.Error.WriteLine(((Refused)outcome).Sentence);
    return 1;
}

await using (server)
{
    await NightsRegistration.MigrateAsync(server.OwnerConnectionString, CancellationToken.None);
    var clock = new MovedClock();
    await using var app = GameNightApp.Build([], options, server.AppConnectionString, clock);
    if (await app.Services.GetRequiredService<HostAccounts>().AreNoneAsync(CancellationToken.None))
    {
        Console.WriteLine("Filling the demo (once, about a minute).");
        var planners = app.Services.GetServices<IHostedService>()
            .Where(service => service.GetType().Assembly == typeof(HostDesk).Assembly).ToList();
        foreach (var planner in planners)
        {
            await planner.StartAsync(CancellationToken.None);
        }

        await new Filling(app.Services, clock, Console.WriteLine).FillAsync(CancellationToken.None);
        foreach (var planner in planners)
        {
            await planner.StopAsync(CancellationToken.None);
        }
    }
}

Console.WriteLine($"Sign in as {LanternTable.Email} with the password: {LanternTable.Password}");
return await GameNightProgram.RunAsync(args);
