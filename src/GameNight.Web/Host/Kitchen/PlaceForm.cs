using GameNight.Planning;
using GameNight.Planning.Heat;
using GameNight.Planning.Quantities;
using GameNight.Web.Wording;

namespace GameNight.Web.Host.Kitchen;

/// <summary>What is baked on, as text fields in the measures of the host.</summary>
/// <param name="shown">What the fields showed; null when nobody said.</param>
public sealed class PlaceForm(BakingPlace? shown, Measures measures)
{
    /// <summary>No plate is thicker than a metre. What a material allows is said by the planner's check.</summary>
    private const double MostMillimetres = 1000;

    private const double LeastCentimetres = 10;
    private const double MostCentimetres = 100;

    public bool IsSaid => shown is not null;

    /// <summary>Null: not said, a stone is assumed.</summary>
    public SurfaceKind? Kind { get; set; } = shown?.Surface.Kind;

    public string Thickness { get; set; } = measures.Thickness.Typed((shown ?? BakingPlace.Assumed).Surface.ThicknessMillimetres);

    public string Width { get; set; } = measures.Length.Typed((shown ?? BakingPlace.Assumed).Surface.Width.Value);

    public string Depth { get; set; } = measures.Length.Typed((shown ?? BakingPlace.Assumed).Surface.Depth.Value);

    public OvenAir Air { get; set; } = (shown ?? BakingPlace.Assumed).Air;

    public SurfaceSupport Support { get; set; } = (shown ?? BakingPlace.Assumed).Support;

    public SoakLead Lead { get; set; } = (shown ?? BakingPlace.Assumed).Lead;

    /// <summary>Null: nothing above.</summary>
    public SurfaceKind? Iron { get; set; } = shown?.IronAbove?.Kind;

    public string IronThickness { get; set; } = measures.Thickness.Typed(shown?.IronAbove?.ThicknessMillimetres ?? 6);

    public static PlaceForm Of(BakingPlace? place, Measures measures) => new(place, measures);

    /// <summary>A problem of the plate above with a name of its own: its thickness is not that of the surface.</summary>
    public static SnapshotProblem Named(SnapshotProblem problem) =>
        problem.Field.EndsWith("ironAbove.thicknessMillimetres", StringComparison.Ordinal)
            ? problem with { Field = "ironThicknessMillimetres" }
            : problem;

    /// <param name="numbers">Collects what cannot be read. What a material allows is the planner's to check.</param>
    /// <param name="kept">As it is kept now: its readings stay, as long as they are of this surface in this oven.</param>
    public BakingPlace? Read(TypedNumbers numbers, BakingPlace? kept, bool isSameOven)
    {
        if (Kind is not { } kind)
        {
            return null;
        }

        var before = (shown ?? BakingPlace.Assumed).Surface;
        var surface = new BakingSurface(
            kind,
            numbers.Read("thicknessMillimetres", Thickness, 0, MostMillimetres, measures.Thickness, before.ThicknessMillimetres),
            new Centimetres(numbers.Read("widthCentimetres", Width, LeastCentimetres, MostCentimetres, measures.Length, before.Width.Value)),
            new Centimetres(numbers.Read("depthCentimetres", Depth, LeastCentimetres, MostCentimetres, measures.Length, before.Depth.Value)));
        var iron = Iron is { } plate
            ? surface with
            {
                Kind = plate,
                ThicknessMillimetres = numbers.Read(
                    "ironThicknessMillimetres", IronThickness, 0, MostMillimetres, measures.Thickness, shown?.IronAbove?.ThicknessMillimetres),
            }
            : null;
        var place = new BakingPlace(surface, Air, Support, Lead, iron);
        var isSamePlace = isSameOven && kept is not null && place == kept with { Lead = Lead, Readings = null };
        return isSamePlace ? place with { Readings = kept!.Readings } : place;
    }
}
