using GameNight.Planning.Appetite;
using GameNight.Planning.Guests;
using GameNight.Planning.Quantities;
using NodaTime;

namespace GameNight.TestKit.Nights;

/// <summary>
/// A night drawn by lot, again and again: who comes, then how hungry each is, then how many slices. Written from the
/// description alone and shares nothing with the forecast but the table; always the same sequence.
/// </summary>
public sealed class Lots
{
    private readonly Random _random = new(20261212);
    private readonly List<(double Chance, List<double> Means)> _parties;
    private readonly double _shape;

    public Lots(IReadOnlyList<GuestSnapshot> guests, IReadOnlyList<Course> courses, Duration? length, Grams slice)
    {
        var table = SharedFolder.Tables.Appetite;
        var evening = EveningAppetite.Factor(courses, length, table);
        _shape = 1 / Math.Pow(table.BetweenPersonVariation.Cv, 2);
        _parties = [.. guests
            .GroupBy(guest => $"{guest.Household ?? "alone " + guest.Id}/{guest.Answer}")
            .Select(party => (
                table.Of(party.First().Answer).Probability,
                party.SelectMany(guest => guest.Eaters).Where(eater => eater.EatsHere).Select(eater =>
                    table.Of(eater.Portion).Pies * table.ReferenceDoughGrams / slice.Value * table.Of(eater.Hunger).Factor * evening).ToList()))];
    }

    /// <summary>Slices wanted on one night.</summary>
    public int Draw()
    {
        var slices = 0;
        foreach (var (chance, means) in _parties)
        {
            if (_random.NextDouble() < chance)
            {
                foreach (var mean in means)
                {
                    slices += Poisson(Gamma() * mean / _shape);
                }
            }
        }

        return slices;
    }

    /// <summary>Marsaglia and Tsang 2000, for shapes over 1.</summary>
    private double Gamma()
    {
        var d = _shape - 1.0 / 3;
        while (true)
        {
            var normal = Math.Sqrt(-2 * Math.Log(1 - _random.NextDouble())) * Math.Cos(2 * Math.PI * _random.NextDouble());
            var v = Math.Pow(1 + normal / Math.Sqrt(9 * d), 3);
            if (v > 0 && Math.Log(1 - _random.NextDouble()) < normal * normal / 2 + d - d * v + d * Math.Log(v))
            {
                return d * v;
            }
        }
    }

    private int Poisson(double mean)
    {
        var (count, product, least) = (0, _random.NextDouble(), Math.Exp(-mean));
        while (product > least)
        {
            product *= _random.NextDouble();
            count++;
        }

        return count;
    }
}
