namespace GameNight.Planning.Appetite;

/// <summary>
/// The lowest point of a smooth function of two variables without its derivatives (Nelder and Mead 1965): a triangle that
/// is reflected, stretched and shrunk until it is as small as asked.
/// </summary>
internal static class DownhillSimplex
{
    private const double Close = 1e-8;
    private const int MostPasses = 500;

    public static (double X, double Y) Lowest(Func<double, double, double> of, double x, double y, double step)
    {
        var corners = new[] { At(x, y), At(x + step, y), At(x, y + step) };
        for (var pass = 0; pass < MostPasses; pass++)
        {
            Array.Sort(corners, static (left, right) => left.Value.CompareTo(right.Value));
            var (best, good, worst) = (corners[0], corners[1], corners[2]);
            if (Math.Max(Math.Abs(worst.X - best.X), Math.Abs(worst.Y - best.Y)) < Close
                && Math.Max(Math.Abs(good.X - best.X), Math.Abs(good.Y - best.Y)) < Close)
            {
                break;
            }

            var mirrored = Beyond(1);
            if (mirrored.Value < best.Value)
            {
                var further = Beyond(2);
                corners[2] = further.Value < mirrored.Value ? further : mirrored;
            }
            else if (mirrored.Value < good.Value)
            {
                corners[2] = mirrored;
            }
            else
            {
                var within = mirrored.Value < worst.Value ? Beyond(0.5) : Beyond(-0.5);
                if (within.Value < Math.Min(worst.Value, mirrored.Value))
                {
                    corners[2] = within;
                }
                else
                {
                    corners[1] = At((best.X + good.X) / 2, (best.Y + good.Y) / 2);
                    corners[2] = At((best.X + worst.X) / 2, (best.Y + worst.Y) / 2);
                }
            }

            Corner Beyond(double times) => At(
                (best.X + good.X) / 2 * (1 + times) - worst.X * times,
                (best.Y + good.Y) / 2 * (1 + times) - worst.Y * times);
        }

        var lowest = corners.MinBy(corner => corner.Value);
        return (lowest.X, lowest.Y);

        Corner At(double atX, double atY) => new(atX, atY, of(atX, atY));
    }

    private readonly record struct Corner(double X, double Y, double Value);
}
