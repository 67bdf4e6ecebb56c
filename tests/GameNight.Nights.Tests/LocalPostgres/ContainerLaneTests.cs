using GameNight.TestKit.Postgres;

namespace GameNight.Nights.Tests.LocalPostgres;

public class ContainerLaneTests
{
    [Fact]
    public async Task Roles_and_database_are_the_same_in_a_container()
    {
        var lane = await ContainerLane.StartAsync(TestContext.Current.CancellationToken);
        Assert.SkipWhen(lane is ContainerLaneClosed, (lane as ContainerLaneClosed)?.Reason ?? "");
        await using var open = Assert.IsType<ContainerLaneOpen>(lane);
        await using var server = TestPostgres.On(open.AdminConnectionString);

        var database = await server.CreateAsync(template: null, TestContext.Current.CancellationToken);

        Assert.Equal(
            "gamenight_app", await Servers.AskAsync<string>(database.AppConnectionString, "select current_user::text"));
    }
}
