using GameNight.Planning.Reference;

namespace GameNight.Planning.Dough;

/// <summary>How far flour may lie off the kernels' laws, in points of moisture.</summary>
public sealed record MoistureBandRow(double PointsBelow, double PointsAbove, string Source);

/// <summary>How the room's humidity moves the water of a dough.</summary>
/// <param name="Damping">Share of the moisture's difference to 14 % that is acted on.</param>
/// <param name="CapPoints">Most that water is moved by moisture, in points of hydration.</param>
/// <param name="BandPoints">Half width of the band of the right hydration, when the moisture is not measured.</param>
/// <param name="MeasuredBandPoints">The same when it is.</param>
public sealed record HumidityRow(
    double Damping, double CapPoints, double BandPoints, double MeasuredBandPoints, string Source);

public sealed record HeatRow(double FlourJPerKgK, double WaterJPerKgK, string Source);

/// <summary>Flour and the room: isotherms of wheat, what is made of them, and heat capacities.</summary>
public sealed record FlourTable(
    IReadOnlyList<WheatIsotherm> Wheats, MoistureBandRow Band, HumidityRow Humidity, HeatRow Heat)
{
    internal const string File = "flour.json";

    private readonly IReadOnlyDictionary<WheatKind, WheatIsotherm> _wheats =
        ReferenceText.OneRowEach(File, Wheats, row => row.Wheat);

    public WheatIsotherm Of(WheatKind wheat) => _wheats[wheat];
}
