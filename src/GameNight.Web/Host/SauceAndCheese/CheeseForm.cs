using GameNight.Planning;
using GameNight.Planning.Cheese;
using GameNight.Planning.Quantities;
using GameNight.Web.Wording;
using GameNight.Web.Wording.Texts;

namespace GameNight.Web.Host.SauceAndCheese;

/// <summary>A cheese blend as text fields; shares are typed in percent.</summary>
public sealed class CheeseForm(CheeseTable table)
{
    public string CheeseId { get; set; } = "";
    public Dictionary<CheeseKind, string> Shares { get; } = [];
    public string Drained { get; set; } = "";
    public bool HardIsVegetarian { get; set; }

    /// <summary>Key of a share's field among the problems.</summary>
    public static string FieldOf(CheeseKind kind) => $"share{kind}";

    public static CheeseForm Of(HouseCheese cheese, CheeseTable table)
    {
        var form = new CheeseForm(table)
        {
            CheeseId = cheese.CheeseId,
            Drained = TypedNumbers.Text(cheese.Blend.Drained.Percent),
            HardIsVegetarian = cheese.Blend.HardIsVegetarian,
        };
        foreach (var kind in Enum.GetValues<CheeseKind>())
        {
            form.Shares[kind] = TypedNumbers.Text(cheese.Blend.Of(kind).Percent);
        }

        return form;
    }

    /// <returns>The blend, or the fields that cannot be read. The sum of the shares has the field "blend".</returns>
    public (HouseCheese? Cheese, IReadOnlyDictionary<string, string> Problems) Read()
    {
        var numbers = new TypedNumbers("cheeseBlend");
        var blend = new CheeseBlend(
            Of(CheeseKind.LowMoisture), Of(CheeseKind.Hard), Of(CheeseKind.Fresh),
            new Share(Math.Round(numbers.Read("drained", Drained, table.Drained.Low * 100, Math.Round(table.Drained.High * 100, 6)) / 100, 8)), HardIsVegetarian);
        var problems = numbers.Problems.ToDictionary();
        if (numbers.Problems.Keys.All(field => field == "drained") && Math.Abs(blend.Sum - 1) > CheeseBlend.SumTolerance)
        {
            problems["blend"] = ProblemText.WithReason(Phrase.Fill(SaucePages.AddUp, QuantityText.Percent(blend.Sum)), "cheeseBlend.blend");
        }

        if (CheeseId.Length == 0)
        {
            problems["cheeseId"] = SaucePages.ChooseCheese;
        }

        return (problems.Count == 0 ? new HouseCheese(CheeseId, blend) : null, problems);

        Share Of(CheeseKind kind) => new(Math.Round(numbers.Read(FieldOf(kind), Shares.GetValueOrDefault(kind, ""), 0, 100) / 100, 8));
    }
}
