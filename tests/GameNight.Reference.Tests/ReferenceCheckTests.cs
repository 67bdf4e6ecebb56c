using GameNight.TestKit;

namespace GameNight.Reference.Tests;

public class ReferenceCheckTests
{
    public static TheoryData<string> Ids => [.. ReferenceCheck.All.Select(check => check.Id)];

    [Theory]
    [MemberData(nameof(Ids))]
    public void Engine_meets_the_number_from_outside(string id)
    {
        var check = ReferenceCheck.All.Single(row => row.Id == id);

        var ours = EngineAnswers.ById[id]();

        Assert.True(
            Math.Abs(ours - check.Expected) <= check.Tolerance,
            $"{check.Id} {check.What}: {check.Source} gives {check.Expected} ± {check.Tolerance} {check.Unit}, ours is {ours}.");
    }

    [Fact]
    public void The_table_of_checks_says_what_the_engine_says_now()
    {
        var says = CheckTable.Of(ReferenceCheck.All, EngineAnswers.ById);
        var file = Path.Combine(SharedFolder.Checks, "README.md");
        if (!File.Exists(file) || File.ReadAllText(file) != says)
        {
            var beside = Path.Combine(AppContext.BaseDirectory, "README.md");
            File.WriteAllText(beside, says);
            Assert.Fail($"The engine says other numbers than the table. If that is meant, copy {beside} over {file}.");
        }
    }

    [Fact]
    public void Every_check_has_a_source_and_every_answer_a_check()
    {
        Assert.All(ReferenceCheck.All, check => Assert.NotEmpty(check.Source));
        Assert.Equal(
            ReferenceCheck.All.Select(check => check.Id).Order(StringComparer.Ordinal),
            EngineAnswers.ById.Keys.Order(StringComparer.Ordinal));
    }
}
