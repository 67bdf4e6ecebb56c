using GameNight.Planning.Dough;
using GameNight.Planning.Toppings;
using NodaTime;

namespace GameNight.Planning;

/// <summary>Valid ranges of a menu, for the whole snapshot and for the rules of a house that are typed by themselves.</summary>
public static class MenuCheck
{
    public const int MostToppings = 5;
    public const int MostApart = 100;
    public const int MostNamed = 20;
    public const double MostOnHandGrams = 50_000;
    public const double LeastPackGrams = 1;
    public const double MostPackGrams = 20_000;
    public const double LeastMixGrams = 20;
    public const double MostMixGrams = 1_000;
    public const double MostYeastGrams = 50;
    public const double MostOilGrams = 200;
    public const double MostSaltGrams = 30;
    public const double LeastPaperCelsius = 120;
    public const double MostPaperCelsius = 300;

    /// <summary>A dough that rises longer is no dough of the day.</summary>
    public static readonly Duration LongestRise = Duration.FromHours(12);

    public static IEnumerable<SnapshotProblem> Problems(Menu menu)
    {
        if (menu.Items.Count > SnapshotCheck.MostMenuItems)
        {
            yield return new("menu.items", SnapshotFault.WrongCount, menu.Items.Count, 0, SnapshotCheck.MostMenuItems);
        }

        foreach (var problem in menu.Items.SelectMany(Item).Concat(Rules(menu.MostToppings, menu.Apart, menu.Named)).Concat(Problems(menu.SecondDough)))
        {
            yield return problem;
        }

        foreach (var problem in SnapshotCheck.Ids("menu.items", [.. menu.Items.Select(item => item.Id)]))
        {
            yield return problem;
        }
    }

    /// <summary>How toppings go together, whatever there is on offer.</summary>
    public static IEnumerable<SnapshotProblem> Rules(
        int mostToppings, IReadOnlyList<ToppingPair>? apart, IReadOnlyList<ToppingSet>? named)
    {
        SnapshotProblem?[] all =
        [
            SnapshotCheck.Range("menu.mostToppings", mostToppings, 0, MostToppings),
            Longest("menu.apart", apart?.Count ?? 0, MostApart),
            Longest("menu.named", named?.Count ?? 0, MostNamed),
            .. (apart ?? []).Select((pair, index) => pair.FirstId == pair.SecondId
                ? new SnapshotProblem($"menu.apart[{index}]", SnapshotFault.Repeated)
                : BadId($"menu.apart[{index}]", pair.FirstId, pair.SecondId)),
            .. (named ?? []).SelectMany((set, index) => (SnapshotProblem?[])
            [
                set.ToppingIds.Count is >= 1 and <= MostToppings
                    ? null
                    : new($"menu.named[{index}].toppings", SnapshotFault.WrongCount, set.ToppingIds.Count, 1, MostToppings),
                set.ToppingIds.Distinct().Count() == set.ToppingIds.Count
                    ? null
                    : new($"menu.named[{index}].toppings", SnapshotFault.Repeated),
                BadId($"menu.named[{index}].toppings", [.. set.ToppingIds]),
            ]),
        ];
        return all.OfType<SnapshotProblem>();
    }

    /// <summary>What goes into one pie of the second dough, and what it lies on.</summary>
    public static IEnumerable<SnapshotProblem> Problems(SecondDough? second)
    {
        const string Path = "menu.secondDough.recipe";
        if (second?.Recipe is not { } recipe)
        {
            return [];
        }

        SnapshotProblem?[] all =
        [
            SnapshotCheck.Range($"{Path}.mixGrams", recipe.Mix.Value, LeastMixGrams, MostMixGrams),
            SnapshotCheck.Range($"{Path}.waterGrams", recipe.Water.Value, 0, MostMixGrams),
            SnapshotCheck.Range($"{Path}.yeastGrams", recipe.Yeast.Value, 0, MostYeastGrams),
            SnapshotCheck.Range($"{Path}.oilGrams", recipe.Oil.Value, 0, MostOilGrams),
            SnapshotCheck.Range($"{Path}.saltGrams", recipe.Salt.Value, 0, MostSaltGrams),
            SnapshotCheck.Range($"{Path}.riseMinutes", recipe.Rise.TotalMinutes, 0, LongestRise.TotalMinutes),
            recipe.PaperUpTo is { } limit ? SnapshotCheck.Range($"{Path}.paperUpToCelsius", limit.Value, LeastPaperCelsius, MostPaperCelsius)
                : recipe.On == SecondDoughOn.BakingPaper ? new SnapshotProblem($"{Path}.paperUpToCelsius", SnapshotFault.OutOfRange, 0, LeastPaperCelsius, MostPaperCelsius)
                : null,
        ];
        return all.OfType<SnapshotProblem>();
    }

    private static IEnumerable<SnapshotProblem> Item(MenuItem item)
    {
        SnapshotProblem?[] all =
        [
            SnapshotCheck.Range($"menu.items[{item.Id}].gramsPerCm2", item.GramsPerCm2, 0, 1),
            SnapshotCheck.Range($"menu.items[{item.Id}].waterShare", item.WaterShare?.Value ?? 0, 0, 1),
            item.OnHand is { } there ? SnapshotCheck.Range($"menu.items[{item.Id}].onHandGrams", there.Value, 0, MostOnHandGrams) : null,
            item.Pack is { } pack ? SnapshotCheck.Range($"menu.items[{item.Id}].packGrams", pack.Value, LeastPackGrams, MostPackGrams) : null,
        ];
        return all.OfType<SnapshotProblem>();
    }

    private static SnapshotProblem? Longest(string field, int count, int most) =>
        count <= most ? null : new(field, SnapshotFault.WrongCount, count, 0, most);

    private static SnapshotProblem? BadId(string field, params IReadOnlyList<string> ids) =>
        ids.Any(id => id.Length is 0 or > SnapshotCheck.LongestId) ? new(field, SnapshotFault.BadId, 0, 1, SnapshotCheck.LongestId) : null;
}
