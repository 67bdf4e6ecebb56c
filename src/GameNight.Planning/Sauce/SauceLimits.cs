using System.Text.Json;
using GameNight.Planning.Quantities;
using GameNight.Planning.Reference;

namespace GameNight.Planning.Sauce;

/// <summary>Which values of a formula lie outside the table's ranges, with the range and its reason.</summary>
internal static class SauceLimits
{
    public const int MostTinSizes = 6;

    /// <summary>Field in JSON terms, the given value and the range it must keep.</summary>
    public static IEnumerable<(string Field, double Given, ValidRange Range)> Broken(SauceFormula formula, SauceTable table)
    {
        var ranges = table.Ranges;
        (string Field, double Given, ValidRange Range)[] all =
        [
            ("tomatoGrams", formula.Tomato.Value, ranges.TomatoGrams),
            ("salt", formula.Salt.Value, ranges.Salt),
            ("tinSalt", formula.TinSalt?.Value ?? 0, ranges.TinSalt),
            ("simmerMinutes", formula.Simmer.TotalMinutes, ranges.SimmerMinutes),
            ("pot.diameterCentimetres", formula.Pot.Diameter.Value, ranges.PotDiameterCentimetres),
            ("pot.holdsGrams", formula.Pot.Holds.Value, ranges.PotHoldsGrams),
            (
                "pot.evaporationGramsPerMinutePerCm2",
                formula.Pot.EvaporationGramsPerMinutePerCm2,
                ranges.EvaporationGramsPerMinutePerCm2),
            .. formula.Parts.Select(part => ($"parts[{JsonNamingPolicy.CamelCase.ConvertName(part.Food.ToString())}].grams", part.Grams.Value, RangeOf(part.Food))),
        ];
        return all.Where(value => !value.Range.Holds(value.Given));

        ValidRange RangeOf(Foods.Food food) => table.Parts.SingleOrDefault(row => row.Food == food) is { } row
            ? new ValidRange(0, row.MostPerTomato * formula.Tomato.Value, row.Source)
            : new ValidRange(0, 0, "it is no part of a sauce: tomato is what the parts are for, and salt is dosed last");
    }

    public static bool RepeatsAPart(SauceFormula formula) =>
        formula.Parts.DistinctBy(part => part.Food).Count() != formula.Parts.Count;

    /// <exception cref="ArgumentOutOfRangeException">A range does not hold; the message gives it with its reason.</exception>
    public static void Demand(SauceFormula formula, IReadOnlyList<Grams> tins, SauceTable table)
    {
        if (tins.Count is 0 or > MostTinSizes)
        {
            throw new ArgumentOutOfRangeException(nameof(tins), tins.Count, $"Tins come in 1 to {MostTinSizes} sizes: a sauce without tomato is none.");
        }

        if (RepeatsAPart(formula))
        {
            throw new ArgumentOutOfRangeException(nameof(formula), formula.Parts.Count, "Each part of a sauce is named once.");
        }

        var broken = Broken(formula, table).Concat(tins
            .Where(tin => !table.Ranges.TinGrams.Holds(tin.Value))
            .Select(tin => ("tinGrams", tin.Value, table.Ranges.TinGrams)));
        foreach (var (field, given, range) in broken)
        {
            throw new ArgumentOutOfRangeException(
                nameof(formula), given, FormattableString.Invariant($"{field} lies between {range.Low:G4} and {range.High:G4}: {range.Source}."));
        }
    }
}
