using GameNight.Planning.Heat;

namespace GameNight.Reference.Tests;

/// <summary>What the series and the slab say of the examples of textbooks.</summary>
internal static class BodyHeatAnswers
{
    private static readonly double[] Biots = [0.1, 0.5, 1, 2, 5, 10];

    private static readonly ThermalProperties PipelineSteel = OfDiffusivity(63.9, 18.8e-6);
    private static readonly ThermalProperties Brass = OfDiffusivity(110, 33.9e-6);

    public static IEnumerable<(string Id, Func<double> Answer)> All =>
    [
        .. Biots.SelectMany(biot => Series("wall", BodyShape.PlaneWall, biot)),
        .. Biots.SelectMany(biot => Series("sphere", BodyShape.Sphere, biot)),
        .. new double[] { 1, 10 }.SelectMany(biot => Series("cylinder", BodyShape.Cylinder, biot)),
        ("E5", () => Until(Bead(25), Gas, celsius => celsius >= 199, 0.001)),
        ("E6.steady", BeadBetweenWalls),
        ("E6.time", () => Until(Bead(25), GasAndWalls, celsius => celsius >= BeadBetweenWalls() - 1, 0.001)),
        ("E7.cure", () => Cured().Seconds),
        ("E7.total", CuredAndCooled),
        ("E8.biot", () => 500 * 0.04 / PipelineSteel.ConductivityWPerMK),
        ("E8.insulated", () => 60 - 80 * Pipeline(0)),
        ("E8.slab", () =>
        {
            var slab = new SlabConduction(PipelineSteel, 0, 0.04, -20, 40);
            Run(slab, new FaceHeat(500, 60), default, 480, 1);
            return slab.BottomCelsius;
        }),
        ("E8.flux", () => 500 * 80 * Pipeline(1) / 1000),
        ("E10", () => FrostMetres(1.38e-7, 20, -15, 60)),
        ("E11", () => FrostMetres(0.15e-6, 15, -10, 90)),
        ("E13.series", () => 500 - 480 * OneTermSeries.For(BodyShape.PlaneWall, 120 * 0.02 / 110)
            .LeftAt(Brass.DiffusivityM2PerS * 420 / (0.02 * 0.02), position: 1)),
        ("E13.slab", () =>
        {
            var slab = new SlabConduction(Brass, 0, 0.04, 20, 40);
            Run(slab, new FaceHeat(120, 500), new FaceHeat(120, 500), 420, 1);
            return slab.TopCelsius;
        }),
    ];

    private static FaceHeat Gas => new(400, 200);
    private static FaceHeat GasAndWalls => Gas with { WallShare = 0.9, WallCelsius = 400 };

    private static IEnumerable<(string Id, Func<double> Answer)> Series(string name, BodyShape shape, double biot)
    {
        yield return ($"E4.{name}.{biot}.root", () => OneTermSeries.For(shape, biot).Root);
        yield return ($"E4.{name}.{biot}.amplitude", () => OneTermSeries.For(shape, biot).Amplitude);
    }

    private static double Pipeline(double position) => OneTermSeries
        .For(BodyShape.PlaneWall, 500 * 0.04 / PipelineSteel.ConductivityWPerMK)
        .LeftAt(PipelineSteel.DiffusivityM2PerS * 480 / (0.04 * 0.04), position);

    /// <summary>A bead of one temperature as a plate with the same volume for its surface: a third of the diameter thick.</summary>
    private static SlabConduction Bead(double celsius) =>
        new(new ThermalProperties(20, 8500, 400), 0, 7.06e-4 / 3, celsius, cells: 1);

    private static double BeadBetweenWalls()
    {
        var bead = Bead(25);
        Run(bead, GasAndWalls, GasAndWalls, 60, 0.01);
        return bead.MeanCelsius;
    }

    private static (SlabConduction Panel, double Seconds) Cured()
    {
        var panel = new SlabConduction(new ThermalProperties(177, 2770, 875), 0, 0.003, 25, cells: 1);
        return (panel, Until(panel, new FaceHeat(40, 175, 0.8, 175), celsius => celsius >= 150, 0.1));
    }

    private static double CuredAndCooled()
    {
        var (panel, seconds) = Cured();
        var oven = new FaceHeat(40, 175, 0.8, 175);
        Run(panel, oven, oven, 300, 0.1);
        return seconds + 300 + Until(panel, new FaceHeat(10, 25, 0.8, 25), celsius => celsius <= 37, 0.1);
    }

    /// <summary>Where the temperature passes 0 °C in a slab so thick that its other face knows nothing of the cold.</summary>
    private static double FrostMetres(double diffusivityM2PerS, double soilCelsius, double surfaceCelsius, int days)
    {
        const double thickness = 6;
        var soil = new SlabConduction(OfDiffusivity(0.5, diffusivityM2PerS), 0, thickness, soilCelsius, cells: 600);
        Run(soil, new FaceHeat(1e6, surfaceCelsius), default, days * 86_400, 7200);

        var cells = soil.CellsCelsius;
        var first = Enumerable.Range(0, cells.Count).First(i => cells[i] > 0);
        var cell = thickness / cells.Count;
        return cell * (first + 0.5 - cells[first] / (cells[first] - cells[first - 1]));
    }

    private static double Until(SlabConduction slab, FaceHeat both, Func<double, bool> isReached, double stepSeconds)
    {
        var steps = 0;
        for (; !isReached(slab.MeanCelsius); steps++)
        {
            slab.Step(stepSeconds, both, both);
        }

        return steps * stepSeconds;
    }

    private static void Run(SlabConduction slab, FaceHeat top, FaceHeat bottom, double seconds, double stepSeconds)
    {
        for (var i = 0; i < (int)Math.Round(seconds / stepSeconds); i++)
        {
            slab.Step(stepSeconds, top, bottom);
        }
    }

    private static ThermalProperties OfDiffusivity(double conductivity, double diffusivityM2PerS) =>
        new(conductivity, 1000, conductivity / diffusivityM2PerS / 1000);
}
