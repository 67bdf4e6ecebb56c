using GameNight.Nights.Records;
using GameNight.Planning;
using GameNight.Planning.Dough;
using GameNight.Planning.Guests;
using GameNight.Planning.Quantities;
using GameNight.Planning.Timeline;
using GameNight.Planning.Toppings;
using NodaTime;

namespace GameNight.Nights.ForHosts;

/// <summary>
/// Checks kitchen, dough and menu against the planner's own ranges, by placing them into an otherwise plain night.
/// </summary>
internal sealed class KitchenCheck(ReferenceTables tables)
{
    /// <summary>23:59.</summary>
    private const int LastMinute = (24 * 60) - 1;

    /// <summary>Three a day: more would not fit into the hours that a snapshot may hold.</summary>
    private const int MostWorkingHours = 21;

    private readonly SnapshotCheck _check = new(tables);

    public IReadOnlyList<SnapshotProblem> Problems(KitchenFacts facts) =>
    [
        .. _check.Problems(Plain(facts)), .. Hours(facts.Hours), .. Menu(facts.Menu ?? HouseMenu.Usual),
        .. Id("sauce.baseId", facts.Sauce?.BaseId), .. Id("cheeseBlend.cheeseId", facts.CheeseBlend?.CheeseId),
    ];

    public IReadOnlyList<SnapshotProblem> Problems(string name, DoughFormula formula, PieShape shape) =>
    [
        .. Name(name, DoughRecipe.LongestName),
        .. _check.Problems(Plain(KitchenFacts.Starting) with { Formula = formula, Shape = shape }),
    ];

    public static IReadOnlyList<SnapshotProblem> Problems(
        string name, double gramsPerCm2, double? waterShare, PantryStock? stock, int count)
    {
        var problems = Name(name, PantryItem.LongestName).ToList();
        if (!(gramsPerCm2 is >= 0 and <= 1))
        {
            problems.Add(new("gramsPerCm2", SnapshotFault.OutOfRange, gramsPerCm2, 0, 1));
        }

        if (waterShare is { } water and not (>= 0 and <= 1))
        {
            problems.Add(new("waterShare", SnapshotFault.OutOfRange, water, 0, 1));
        }

        if (stock?.OnHandGrams is { } there and not (>= 0 and <= MenuCheck.MostOnHandGrams))
        {
            problems.Add(new("onHandGrams", SnapshotFault.OutOfRange, there, 0, MenuCheck.MostOnHandGrams));
        }

        if (stock?.PackGrams is { } pack and not (>= MenuCheck.LeastPackGrams and <= MenuCheck.MostPackGrams))
        {
            problems.Add(new("packGrams", SnapshotFault.OutOfRange, pack, MenuCheck.LeastPackGrams, MenuCheck.MostPackGrams));
        }

        if (count > SnapshotCheck.MostMenuItems)
        {
            problems.Add(new("menu.items", SnapshotFault.WrongCount, count, 0, SnapshotCheck.MostMenuItems));
        }

        return problems;
    }

    /// <summary>Whether the menu still offers it is seen night by night.</summary>
    private static IEnumerable<SnapshotProblem> Id(string field, string? id) => id is { Length: 0 or > SnapshotCheck.LongestId }
        ? [new SnapshotProblem(field, SnapshotFault.BadId, 0, 1, SnapshotCheck.LongestId)]
        : [];

    private static IEnumerable<SnapshotProblem> Hours(HostHours hours)
    {
        int[] sleep = [hours.SleepFromMinute, hours.SleepUntilMinute];
        foreach (var minute in sleep.Where(minute => minute is < 0 or > LastMinute))
        {
            yield return new("sleep", SnapshotFault.OutOfRange, minute, 0, LastMinute);
        }

        if (hours.Work.Count > MostWorkingHours)
        {
            yield return new("work", SnapshotFault.WrongCount, hours.Work.Count, 0, MostWorkingHours);
        }

        foreach (var work in hours.Work)
        {
            if (work.FromMinute is < 0 or > LastMinute || work.UntilMinute is < 0 or > LastMinute)
            {
                yield return new("work", SnapshotFault.OutOfRange, work.FromMinute, 0, LastMinute);
            }
            else if (work.UntilMinute <= work.FromMinute)
            {
                yield return new("work", SnapshotFault.BackToFront, work.FromMinute);
            }
        }
    }

    /// <summary>Whether the toppings are still on offer is seen night by night.</summary>
    private static IEnumerable<SnapshotProblem> Menu(HouseMenu house)
    {
        var named = house.Named ?? [];
        return
        [
            .. MenuCheck.Rules(
                house.MostToppings ?? HouseMenu.UsualMostToppings, house.Apart, [.. named.Select(set => new ToppingSet(set.ToppingIds))]),
            .. MenuCheck.Problems(house.SecondDough?.Dough),
            .. house.SecondDough is { } second ? Name("menu.secondDough.name", second.Name, HouseSecondDough.LongestName) : [],
            .. named.SelectMany((set, index) => Name($"menu.named[{index}].name", set.Name, NamedToppings.LongestName)),
            .. Alike("menu.named.name", named.Select(set => set.Name.Trim().ToUpperInvariant())),
            .. Alike("menu.named.toppings", named.Select(set => string.Join(' ', set.ToppingIds.Order(StringComparer.Ordinal)))),
        ];
    }

    private static IEnumerable<SnapshotProblem> Alike(string field, IEnumerable<string> texts) =>
        texts.GroupBy(text => text).Any(same => same.Count() > 1) ? [new SnapshotProblem(field, SnapshotFault.Repeated)] : [];

    private static IEnumerable<SnapshotProblem> Name(string name, int longest) => Name("name", name, longest);

    private static IEnumerable<SnapshotProblem> Name(string field, string name, int longest)
    {
        var length = name.Trim().Length;
        return length >= 1 && length <= longest
            ? []
            : [new SnapshotProblem(field, SnapshotFault.WrongCount, length, 1, longest)];
    }

    private NightSnapshot Plain(KitchenFacts facts)
    {
        var style = tables.Dough.Styles[0];
        return new NightSnapshot(
            Instant.FromUnixTimeSeconds(0),
            [],
            facts.Kitchen,
            new DoughFormula(
                new Share(style.Water), new Share(style.Salt), default, default, false, YeastForm.Instant, default, default),
            new PieShape(
                new Centimetres(style.DiameterCentimetres), style.ThicknessGramsPerCm2,
                new Centimetres(style.RimCentimetres), default, default, style.SlicesPerPie),
            new Menu([], 0, Composition.Nothing),
            [],
            new ColdFerment(Duration.Zero, Duration.Zero, Duration.Zero),
            new Share(tables.Appetite.RunOutChance.Usual),
            ByHand.Nothing,
            Sauce: facts.Sauce,
            CheeseBlend: facts.CheeseBlend);
    }
}
