using GameNight.Planning.Dough;
using GameNight.Planning.Reference;

namespace GameNight.Planning;

/// <summary>Valid ranges of a formula with all its parts.</summary>
internal static class FormulaCheck
{
    private const int MostExtras = 12;
    private const int MostFlours = 6;

    /// <summary>Typed percentages add up to the whole as closely as this.</summary>
    private const double SharesAddUp = 0.001;

    /// <summary>Water that is left to pour, per flour: salt and yeast must go in, and moist flour may take two points off.</summary>
    private const double LeastPoured = 0.05;

    public static IEnumerable<SnapshotProblem> Problems(string path, DoughFormula formula, DoughTable table)
    {
        var ranges = table.Ranges;
        SnapshotProblem?[] all =
        [
            // Milk may stand in for all of the water, so that the range is about both.
            SnapshotCheck.Range($"{path}.water", formula.PouredPerFlour, ranges.Water.Low, ranges.Water.High),
            SnapshotCheck.Range($"{path}.salt", formula.Salt.Value, ranges.Salt.Low, ranges.Salt.High),
            SnapshotCheck.Range($"{path}.oil", formula.Oil.Value, ranges.Oil.Low, ranges.Oil.High),
            SnapshotCheck.Range($"{path}.sugar", formula.Sugar.Value, ranges.Sugar.Low, ranges.Sugar.High),
            SnapshotCheck.Range($"{path}.heldBackFlour", formula.HeldBackFlour.Value, 0, KneadersCorrection.Most),
            SnapshotCheck.Range($"{path}.loss", formula.Loss.Value, 0, 0.1),
            formula.Kneader is { } kneader
                ? SnapshotCheck.Range($"{path}.kneader.stayedOut", kneader.StayedOut.Value, 0, KneadersCorrection.Most)
                : null,
            .. Extras($"{path}.extras", formula, ranges),
            .. Flours($"{path}.flours", formula, ranges),
            .. Ahead(path, formula, ranges),
        ];
        return all.OfType<SnapshotProblem>();
    }

    private static IEnumerable<SnapshotProblem?> Extras(string path, DoughFormula formula, DoughRanges ranges)
    {
        var extras = formula.Extras ?? [];
        return
        [
            Count(path, extras.Count, MostExtras),
            .. extras.SelectMany((extra, index) => new[]
            {
                Name($"{path}[{index}].name", extra.Name),
                In($"{path}[{index}].ofFlour", extra.OfFlour.Value, ranges.Extra),
                SnapshotCheck.Range($"{path}[{index}].water", extra.Water.Value, 0, 1),
            }),
        ];
    }

    private static IEnumerable<SnapshotProblem?> Flours(string path, DoughFormula formula, DoughRanges ranges)
    {
        var flours = formula.Flours ?? [];
        return
        [
            Count(path, flours.Count, MostFlours),
            flours.Count > 0
                ? SnapshotCheck.Range(path, flours.Sum(flour => flour.OfFlour.Value), 1 - SharesAddUp, 1 + SharesAddUp)
                : null,
            .. flours.SelectMany((flour, index) => new[]
            {
                Name($"{path}[{index}].name", flour.Name),
                In($"{path}[{index}].absorption", flour.Absorption.Value, ranges.Absorption),
                In($"{path}[{index}].protein", flour.Protein.Value, ranges.Protein),
            }),
        ];
    }

    private static IEnumerable<SnapshotProblem?> Ahead(string path, DoughFormula formula, DoughRanges ranges)
    {
        if (formula.Preferment is { } preferment)
        {
            yield return Name($"{path}.preferment.name", preferment.Name);
            yield return In($"{path}.preferment.ofFlour", preferment.OfFlour.Value, ranges.PrefermentFlour);
            yield return In($"{path}.preferment.waterPerFlour", preferment.WaterPerFlour.Value, ranges.PrefermentWater);
            yield return SnapshotCheck.Range(
                $"{path}.preferment.beforeMinutes",
                preferment.Before.TotalMinutes, ranges.PrefermentHours.Low * 60, ranges.PrefermentHours.High * 60);
            yield return SnapshotCheck.Range($"{path}.preferment.ofYeast", preferment.OfYeast.Value, 0, 1);
        }

        if (formula.Soaker is { } soaker)
        {
            yield return Name($"{path}.soaker.name", soaker.Name);
            yield return In($"{path}.soaker.ofFlour", soaker.OfFlour.Value, ranges.SoakerFlour);
            yield return In($"{path}.soaker.waterPerFlour", soaker.WaterPerFlour.Value, ranges.SoakerWater);
        }

        if (formula.FlourAhead > 0)
        {
            // Both are parts of the formula's totals: what is ahead cannot be more than there is.
            var part = formula.Preferment is null ? "soaker" : "preferment";
            yield return SnapshotCheck.Range($"{path}.{part}.ofFlour", formula.FlourAhead, 0, 1 - formula.HeldBackFlour.Value);
            yield return SnapshotCheck.Range(
                $"{path}.{part}.waterPerFlour",
                formula.WaterAhead / formula.FlourAhead,
                0,
                Math.Max(0, formula.Water.Value - LeastPoured) / formula.FlourAhead);
        }
    }

    private static SnapshotProblem? In(string field, double given, ValidRange range) =>
        SnapshotCheck.Range(field, given, range.Low, range.High);

    private static SnapshotProblem? Count(string field, int count, int most) =>
        count <= most ? null : new(field, SnapshotFault.WrongCount, count, 0, most);

    private static SnapshotProblem? Name(string field, string name) =>
        name.Trim().Length is >= 1 && name.Length <= SnapshotCheck.LongestId
            ? null
            : new(field, SnapshotFault.WrongCount, name.Trim().Length, 1, SnapshotCheck.LongestId);
}
