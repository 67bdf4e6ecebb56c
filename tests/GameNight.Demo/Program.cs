using GameNight.Demo;
using GameNight.LocalPostgres;
using GameNight.Nights;
using GameNight.Nights.Membership;
using GameNight.Web.Startup;
using Microsoft.Extensions.DependencyInjection;

// Fills a group of our own invention, once, on a data folder of its own; the app is run on it afterwards.
var options = GameNightOptions.Read(args);
if (options.Database.Length > 0 || options.Data.Length == 0)
{
    Console.Error.WriteLine("The demo keeps to a database of its own: unset GAMENIGHT_DATABASE and name a folder with --data DIR.");
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
    await using var services = DemoServices.On(server.AppConnectionString, options, clock);
    if (await services.GetRequiredService<HostAccounts>().AreNoneAsync(CancellationToken.None))
    {
        Console.WriteLine("Filling the demo, once.");
        await using (await DemoServices.PlanningAsync(services))
        {
            await new Filling(services, clock, Console.WriteLine).FillAsync(CancellationToken.None);
        }
    }
}

Console.WriteLine($"Sign in as {LanternTable.Email} with the password: {LanternTable.Password}");
return 0;
