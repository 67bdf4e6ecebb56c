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
    public async Task A_committed_night_with_every_part_can_be_read_and_written_again()
    {
        var sample = await NightAsync();

        Assert.Equal(PlanJson.Canonical(sample["snapshot"]!), PlanJson.Canonical(sample["snapshot"].Deserialize<NightSnapshot>(PlanJson.Options)!));
        Assert.Equal(PlanJson.Canonical(sample["plan"]!), PlanJson.Canonical(sample["plan"].Deserialize<NightPlan>(PlanJson.Options)!));
    }

    /// <summary>A member without a place in the sample could be renamed or dropped, and doughs people committed could not be read any more.</summary>
    [Fact]
    public async Task The_night_with_every_part_has_every_member_that_came_later()
    {
        var sample = await NightAsync();
        var night = sample["snapshot"].Deserialize<NightSnapshot>(PlanJson.Options)!;
        var plan = sample["plan"].Deserialize<NightPlan>(PlanJson.Options)!;

        Assert.All(
            new object[] { night, night.Kitchen, night.Kitchen.Place!, night.Formula, night.Shape, night.Sauce!, plan, plan.Dough, plan.Dough.Batches[0], plan.Ripening!,
                night.Late!, night.Guests[0], night.Guests[0].Eaters[0], night.Guests[0].Past![0], night.Guests[0].Eaters[0].Needs, night.Menu, night.Menu.Items[^1], night.Menu.SecondDough!.Recipe, plan.Split.Pies[0], night.ByHand, night.ByHand.Split!, night.OwnSteps![0], night.OwnSteps[0].After!, plan.Slices, plan.Pies, plan.Timeline },
            part => Assert.All(
                part.GetType().GetConstructors().MaxBy(made => made.GetParameters().Length)!.GetParameters()
                    .Where(member => member is { HasDefaultValue: true, DefaultValue: null }),
                member => Assert.True(part.GetType().GetProperty(member.Name!)!.GetValue(part) is not null, $"{part.GetType().Name}.{member.Name}")));
    }

    [Fact]
    public void The_newest_version_has_a_sample() =>
        Assert.True(File.Exists(Path.Combine(AppContext.BaseDirectory, "Samples", $"plan-v{SavedPlan.CurrentEnvelope}.json")));

    private static async Task<JsonNode> NightAsync() => JsonNode.Parse(await File.ReadAllTextAsync(
        Path.Combine(AppContext.BaseDirectory, "Samples", "night-v1.json"), TestContext.Current.CancellationToken))!;

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
