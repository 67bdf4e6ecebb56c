namespace GameNight.Planning.Heat;

/// <summary>Shapes whose warming has a series. Their length is half the thickness, or the radius.</summary>
public enum BodyShape
{
    PlaneWall,
    Cylinder,
    Sphere,
}

/// <summary>
/// Leading term of the series for a body of one temperature that is put into air of another: the difference that is left, as
/// a fraction of the first one. Within 2 % from a Fourier number of 0.2 on. (Textbooks after Heisler and Gröber, for example
/// Incropera, table 5.1.)
/// </summary>
public readonly record struct OneTermSeries
{
    public const double LeastFourier = 0.2;

    private const int Bisections = 60;

    /// <summary>First zero of the Bessel function J0.</summary>
    private const double FirstZeroOfJ0 = 2.404825557695773;

    private readonly BodyShape _shape;

    private OneTermSeries(BodyShape shape, double root, double amplitude) =>
        (_shape, Root, Amplitude) = (shape, root, amplitude);

    /// <summary>First root ζ of the shape's equation.</summary>
    public double Root { get; }

    /// <summary>C1: the term at the centre for a Fourier number of zero.</summary>
    public double Amplitude { get; }

    /// <param name="biot">Coefficient times length over conductivity, above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">The Biot number is not positive and finite.</exception>
    public static OneTermSeries For(BodyShape shape, double biot)
    {
        if (!(biot > 0 && double.IsFinite(biot)))
        {
            throw new ArgumentOutOfRangeException(nameof(biot), biot, "A Biot number is above 0 and finite.");
        }

        var z = RootOf(shape, biot);
        var (sin, cos, j0, j1) = (Math.Sin(z), Math.Cos(z), Bessel(0, z), Bessel(1, z));
        return new OneTermSeries(shape, z, shape switch
        {
            BodyShape.PlaneWall => 4 * sin / (2 * z + Math.Sin(2 * z)),
            BodyShape.Cylinder => 2 * j1 / (z * (j0 * j0 + j1 * j1)),
            BodyShape.Sphere => 4 * (sin - z * cos) / (2 * z - Math.Sin(2 * z)),
        });
    }

    /// <param name="fourier">Diffusivity times time over length squared, from 0.2 on.</param>
    /// <param name="position">0 at the centre to 1 at the surface.</param>
    /// <exception cref="ArgumentOutOfRangeException">Too early for one term, or outside the body.</exception>
    public double LeftAt(double fourier, double position = 0)
    {
        if (!(position is >= 0 and <= 1))
        {
            throw new ArgumentOutOfRangeException(nameof(position), position, "A position runs from 0 (centre) to 1 (surface).");
        }

        var z = Root * position;
        return LeftAtCentre(fourier) * _shape switch
        {
            BodyShape.PlaneWall => Math.Cos(z),
            BodyShape.Cylinder => Bessel(0, z),
            BodyShape.Sphere => z == 0 ? 1 : Math.Sin(z) / z,
        };
    }

    /// <summary>The difference that is left on average over the volume.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Too early for one term.</exception>
    public double LeftOnAverage(double fourier)
    {
        var z = Root;
        return LeftAtCentre(fourier) * _shape switch
        {
            BodyShape.PlaneWall => Math.Sin(z) / z,
            BodyShape.Cylinder => 2 * Bessel(1, z) / z,
            BodyShape.Sphere => 3 * (Math.Sin(z) - z * Math.Cos(z)) / (z * z * z),
        };
    }

    /// <summary>Fourier number at which the centre has this fraction left; below 0.2 the answer is only a guide.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The fraction is not between 0 and 1.</exception>
    public double FourierWhenLeftAtCentre(double fraction) => fraction is > 0 and < 1
        ? Math.Log(Amplitude / fraction) / (Root * Root)
        : throw new ArgumentOutOfRangeException(nameof(fraction), fraction, "What is left lies between 0 and 1.");

    private double LeftAtCentre(double fourier) => fourier >= LeastFourier
        ? Amplitude * Math.Exp(-Root * Root * fourier)
        : throw new ArgumentOutOfRangeException(
            nameof(fourier), fourier, "One term describes a body from a Fourier number of 0.2 on.");

    private static double RootOf(BodyShape shape, double biot)
    {
        var (low, high) = (0.0, shape switch
        {
            BodyShape.PlaneWall => Math.PI / 2,
            BodyShape.Cylinder => FirstZeroOfJ0,
            BodyShape.Sphere => Math.PI,
        });

        // Each equation is written without poles: negative below its one root in the bracket, positive above.
        for (var i = 0; i < Bisections; i++)
        {
            var z = (low + high) / 2;
            var isAbove = shape switch
            {
                BodyShape.PlaneWall => z * Math.Sin(z) - biot * Math.Cos(z),
                BodyShape.Cylinder => z * Bessel(1, z) - biot * Bessel(0, z),
                BodyShape.Sphere => (1 - biot) * Math.Sin(z) - z * Math.Cos(z),
            } > 0;
            (low, high) = isAbove ? (low, z) : (z, high);
        }

        return (low + high) / 2;
    }

    /// <summary>Bessel function of the first kind by its power series, exact enough up to its first zeros.</summary>
    private static double Bessel(int order, double x)
    {
        var term = order == 0 ? 1 : x / 2;
        var sum = term;
        for (var k = 1; Math.Abs(term) > 1e-17 && k < 40; k++)
        {
            term *= -x * x / (4.0 * k * (k + order));
            sum += term;
        }

        return sum;
    }
}
