using GameNight.Planning.Dough;

namespace GameNight.Nights.Records;

/// <summary>A dough of the group: formula and shape of the pie, with a name.</summary>
public sealed class DoughRecipe
{
    public const int LongestName = 60;

    public DoughRecipe(GroupId groupId, FormulaId id, string name, DoughFormula formula, PieShape shape)
    {
        GroupId = groupId;
        Id = id;
        Name = name;
        Formula = formula;
        Shape = shape;
    }

    public GroupId GroupId { get; private set; }
    public FormulaId Id { get; private set; }
    public string Name { get; private set; }
    public DoughFormula Formula { get; private set; }
    public PieShape Shape { get; private set; }
    public uint Version { get; private set; }

    public void Set(string name, DoughFormula formula, PieShape shape)
    {
        Name = name;
        Formula = formula;
        Shape = shape;
    }
}
