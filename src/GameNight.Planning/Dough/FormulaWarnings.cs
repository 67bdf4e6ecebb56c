using GameNight.Planning.Quantities;
using NodaTime;

namespace GameNight.Planning.Dough;

/// <summary>Little or no salt: the dough ferments fast and tastes flat (common practice).</summary>
public sealed record LittleSalt(Share OfFlour, Share Least) : Reason;

/// <summary>So much oil makes a short crumb; little goes into the dough, more onto the ball and into the box.</summary>
public sealed record MuchOil(Share OfFlour, Share Most) : Reason;

/// <summary>This part ferments ahead. Its yeast is part of the dose, which does not count its hours.</summary>
public sealed record PrefermentAhead(string Name, Duration Before) : Reason;

/// <summary>So little of the yeast goes into this part that nothing ferments in it ahead.</summary>
/// <param name="Usual">What usually goes in at least.</param>
public sealed record PrefermentHardlyYeast(string Name, Share OfYeast, Share Usual) : Reason;

/// <summary>Balls of this mass are outside what is usual; they are planned all the same.</summary>
public sealed record UnusualBall(Grams Ball, Grams Least, Grams Most) : Conflict;

/// <summary>
/// The labels of these parts of the formula are not among what the plan knows of the dough: whoever must avoid something
/// must be told by the host.
/// </summary>
public sealed record PartsWithoutLabel(IReadOnlyList<string> Names) : Conflict;

/// <summary>What is said of a formula that is allowed and still deserves a word.</summary>
public static class FormulaWarnings
{
    /// <summary>From memory: a long preferment is started with a tenth of the yeast or more.</summary>
    private const double LeastInPreferment = 0.05;

    /// <summary>What to know before it is mixed. None for a usual formula.</summary>
    public static IEnumerable<Reason> Reasons(DoughFormula formula, DoughTable table)
    {
        if (formula.Salt.Value < table.SaltBelow.Share)
        {
            yield return new LittleSalt(formula.Salt, new Share(table.SaltBelow.Share));
        }

        if (formula.Oil.Value > table.OilAbove.Share)
        {
            yield return new MuchOil(formula.Oil, new Share(table.OilAbove.Share));
        }

        if (formula.Preferment is { } preferment)
        {
            yield return new PrefermentAhead(preferment.Name, preferment.Before);
            if (preferment.OfYeast.Value < LeastInPreferment)
            {
                yield return new PrefermentHardlyYeast(preferment.Name, preferment.OfYeast, new Share(LeastInPreferment));
            }
        }
    }

    internal static IEnumerable<Conflict> Conflicts(DoughFormula formula, Grams ball, DoughTable table)
    {
        var usual = table.Ranges.BallGrams;
        if (!usual.Holds(ball.Value))
        {
            yield return new UnusualBall(ball, new Grams(usual.Low), new Grams(usual.High));
        }

        if (formula.UnlabelledParts is { Count: > 0 } parts)
        {
            yield return new PartsWithoutLabel(parts);
        }
    }
}
