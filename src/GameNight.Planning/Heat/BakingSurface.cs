using GameNight.Planning.Quantities;
using GameNight.Planning.Reference;

namespace GameNight.Planning.Heat;

/// <summary>A stone, plate or sheet to bake on, or an iron plate above it.</summary>
/// <param name="ThicknessMillimetres">In the range of its row in the table of materials.</param>
/// <param name="Width">10 to 100 cm.</param>
/// <param name="Depth">10 to 100 cm.</param>
public sealed record BakingSurface(SurfaceKind Kind, double ThicknessMillimetres, Centimetres Width, Centimetres Depth)
{
    private static readonly ValidRange Side = new(10, 100, "smaller carries no pie, larger fits no domestic oven");

    public double AreaM2 => Width.Value * Depth.Value / 10_000;
    public double ThicknessMetres => ThicknessMillimetres / 1000;

    /// <summary>What is wrong with what a host typed, for screens and API.</summary>
    /// <param name="path">Of the surface in the document it came in.</param>
    public IReadOnlyList<SnapshotProblem> Problems(string path, MaterialsTable table) =>
    [
        .. Problem($"{path}.thicknessMillimetres", ThicknessMillimetres, table.Of(Kind).ThicknessMillimetres),
        .. Problem($"{path}.widthCentimetres", Width.Value, Side),
        .. Problem($"{path}.depthCentimetres", Depth.Value, Side),
    ];

    /// <summary>Heat that warms the whole surface by a kelvin at a temperature.</summary>
    public double JoulesPerKelvinAt(double celsius, MaterialsTable table)
    {
        var row = table.Of(Kind);
        return row.DensityKgPerM3 * ThicknessMetres * AreaM2
            * (row.HeatCapacityAt20JPerKgK + row.HeatCapacityJPerKgK2 * (celsius - 20));
    }

    /// <exception cref="ArgumentOutOfRangeException">Thickness or size is outside its range, which the message names.</exception>
    internal void Demand(MaterialsTable table)
    {
        table.Of(Kind).ThicknessMillimetres.Demand(ThicknessMillimetres, nameof(ThicknessMillimetres), "mm");
        Side.Demand(Width.Value, nameof(Width), "cm");
        Side.Demand(Depth.Value, nameof(Depth), "cm");
    }

    private static IReadOnlyList<SnapshotProblem> Problem(string field, double given, ValidRange range) => range.Holds(given)
        ? []
        : [new SnapshotProblem(field, SnapshotFault.OutOfRange, given, range.Low, range.High)];
}
