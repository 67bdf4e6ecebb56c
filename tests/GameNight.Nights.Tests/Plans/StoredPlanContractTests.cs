using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using GameNight.Nights.Records;
using GameNight.Planning;
using GameNight.Planning.Contract;

namespace GameNight.Nights.Tests.Plans;

/// <summary>
/// Documents kept from earlier versions. One is added with each new envelope and none is ever edited: a sample that cannot
/// be read means that plans in people's databases cannot be read.
/// </summary>
public class StoredPlanContractTests
{
    [Theory]
    [InlineData("plan-v1.json", 1)]
    public async Task A_stored_plan_of_every_version_can_be_read_and_written_again(string file, int envelope)
    {
        var sample = JsonNode.Parse(await File.ReadAllTextAsync(
            Path.Combine(AppContext.BaseDirectory, "Samples", file), TestContext.Current.CancellationToken))!;
        var document = sample["document"]!;

        var plan = document.Deserialize<NightPlan>(PlanJson.Options)!;

        Assert.Equal(envelope, (int)sample["envelope"]!);
        Assert.Equal(PlanJson.Canonical(document), PlanJson.Canonical(plan));
        Assert.NotEmpty(plan.Timeline.Steps);
        Assert.NotEmpty(plan.Conflicts);
        Assert.NotEmpty(plan.Cautions);
    }

    [Fact]
    public void The_newest_version_has_a_sample() =>
        Assert.True(File.Exists(Path.Combine(AppContext.BaseDirectory, "Samples", $"plan-v{SavedPlan.CurrentEnvelope}.json")));

    [Fact]
    public void Kinds_stay_in_front_when_Postgres_sorts_the_members()
    {
        // jsonb keeps members by length, then by bytes; a kind that is not the first member cannot be read back.
        foreach (var type in Discriminators.Reasons.Keys.Concat(Discriminators.Conflicts.Keys))
        {
            Assert.All(
                PlanJson.Options.GetTypeInfo(type).Properties.Select(property => Encoding.UTF8.GetBytes(property.Name)),
                name => Assert.True(
                    name.Length > 4 || (name.Length == 4 && name.AsSpan().SequenceCompareTo("kind"u8) > 0),
                    $"{type.Name}.{Encoding.UTF8.GetString(name)} comes before its kind."));
        }
    }
}
