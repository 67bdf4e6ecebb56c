using CsCheck;
using GameNight.Planning.Dough;
using GameNight.Planning.Quantities;
using NodaTime;

namespace GameNight.Planning.Tests.Dough;

/// <summary>Formulas with every part that a formula may have.</summary>
internal static class Formulas
{
    /// <summary>Within the ranges of the check, and with water enough for preferment and soaker.</summary>
    public static Gen<DoughFormula> Whole { get; } =
        from shares in Gen.Select(Gen.Double[0.5, 0.9], Gen.Double[0, 0.04], Gen.Double[0, 0.15], Gen.Double[0, 0.1])
        from honey in Gen.Bool
        from yeast in Gen.Enum<YeastForm>()
        from heldBack in Gen.Double[0, 0.2]
        from loss in Gen.Double[0, 0.1]
        from extras in Gen.Select(Gen.Double[0, 0.1], Gen.Double[0, 1]).Array[0, 3]
        from flours in Gen.Select(Gen.Double[0.1, 1], Gen.Double[0.5, 0.8], Gen.Double[0.08, 0.15]).Array[0, 4]
        from preferment in Gen.Select(Gen.Double[0.02, 0.4], Gen.Double[0.4, 1], Gen.Double[0, 1])
        from soaker in Gen.Select(Gen.Double[0.01, 0.1], Gen.Double[0.3, 1])
        from parts in Gen.Select(Gen.Bool, Gen.Bool)
        select new DoughFormula(
            new Share(shares.Item1), new Share(shares.Item2), new Share(shares.Item3), new Share(shares.Item4), honey, yeast,
            new Share(heldBack), new Share(loss),
            [.. extras.Select((extra, index) => new ExtraIngredient($"extra {index}", new Share(extra.Item1), new Share(extra.Item2)))],
            [.. flours.Select((flour, index) => new FlourPart(
                $"flour {index}", new Share(flour.Item1 / flours.Sum(row => row.Item1)), new Share(flour.Item2), new Share(flour.Item3)))],
            parts.Item1
                ? new Preferment(
                    "ahead", new Share(preferment.Item1), new Share(preferment.Item2), Duration.FromHours(12), new Share(preferment.Item3))
                : null,
            parts.Item2 ? new Soaker("seeds", new Share(soaker.Item1), new Share(soaker.Item2)) : null);

    public static DoughFormula Plain { get; } = new(
        new Share(0.62), new Share(0.025), new Share(0.02), new Share(0), false, YeastForm.Instant, new Share(0.125), new Share(0.02));
}
