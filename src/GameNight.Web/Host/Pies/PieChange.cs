using GameNight.Nights.Records;
using GameNight.Planning.Toppings;

namespace GameNight.Web.Host.Pies;

/// <summary>What a host chooses for a sector: one of the combinations on the table, or another one.</summary>
public sealed class PieChange(Pin before)
{
    /// <summary>Stands for a combination that is put together here.</summary>
    public const string Another = "another";

    public Pin Before { get; } = before;

    /// <summary>A letter, or <see cref="Another"/>.</summary>
    public string Choice { get; set; } = "";

    public int Parts { get; set; } = before.Parts;
    public string BaseId { get; set; } = before.BaseId;
    public string CheeseId { get; set; } = before.CheeseId;
    public HashSet<string> Toppings { get; } = [.. before.ToppingIds];

    public void Tick(string topping, bool isOn)
    {
        if (isOn)
        {
            Toppings.Add(topping);
        }
        else
        {
            Toppings.Remove(topping);
        }
    }

    /// <summary>Null while nothing is chosen.</summary>
    /// <param name="menu">In the host's order, in which toppings are named.</param>
    public Pin? Read(IReadOnlyList<Combination> onTable, IReadOnlyList<PantryItem> menu) => Choice switch
    {
        "" => null,
        Another => new Pin(
            Before.Pie, Parts, BaseId, CheeseId,
            [.. menu.Where(item => item.Role == MenuRole.Topping).Select(item => item.Id.ToString()).Where(Toppings.Contains)]),
        var letter => onTable.FirstOrDefault(combination => combination.Letter == letter) is { } combination
            ? new Pin(Before.Pie, Parts, combination.BaseId, combination.CheeseId, combination.ToppingIds)
            : null,
    };
}
