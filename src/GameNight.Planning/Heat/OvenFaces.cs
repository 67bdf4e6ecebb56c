namespace GameNight.Planning.Heat;

/// <summary>What the faces of a baking surface, and of a plate above it, see in an oven.</summary>
internal sealed class OvenFaces
{
    private readonly double _convection;
    private readonly double _multiplier;
    private readonly double _openBelow;
    private readonly double _emissivity;
    private readonly double _ironEmissivity;
    private readonly double _view;
    private readonly double _exchange;

    public OvenFaces(BakingSurface surface, Oven oven, MaterialsTable table)
    {
        _multiplier = oven.HeatMultiplier;
        _convection = table.Of(oven.Air).WPerM2K * _multiplier;
        _openBelow = table.Of(oven.Support).OpenShare;
        _emissivity = table.Of(surface.Kind).Emissivity;
        if (oven.IronAbove is { } iron)
        {
            _ironEmissivity = table.Of(iron.Kind).Emissivity;
            _view = table.Ready.IronViewShare;
            // Two parallel grey faces.
            _exchange = _view / (1 / _emissivity + 1 / _ironEmissivity - 1);
        }
    }

    public FaceHeat Top(double airCelsius, double? ironCelsius) =>
        Face(airCelsius, _emissivity * (1 - _view), ironCelsius);

    public FaceHeat Bottom(double airCelsius) => new(
        _convection * _openBelow, airCelsius, _multiplier * _openBelow * _emissivity, airCelsius);

    public FaceHeat IronTop(double airCelsius) => Face(airCelsius, _ironEmissivity, null);

    public FaceHeat IronBottom(double airCelsius, double belowCelsius) =>
        Face(airCelsius, _ironEmissivity * (1 - _view), belowCelsius);

    private FaceHeat Face(double airCelsius, double wallShare, double? bodyCelsius) => new(
        _convection, airCelsius, _multiplier * wallShare, airCelsius,
        bodyCelsius is null ? 0 : _multiplier * _exchange, bodyCelsius ?? 0);
}
