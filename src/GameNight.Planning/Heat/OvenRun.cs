using NodaTime;

namespace GameNight.Planning.Heat;

/// <summary>What a pie on a surface takes from it: contact to a layer that boils.</summary>
internal readonly record struct PieContact(double WPerM2K, double BoilingCelsius);

/// <summary>A baking surface in an oven, step by step from switching on, with the plate above it if there is one.</summary>
internal sealed class OvenRun
{
    /// <summary>So many that doubling them moves the time until a stone is ready by a few seconds.</summary>
    internal const int Cells = 10;

    /// <summary>Backward Euler is late by about two steps when a surface comes near to its oven: six seconds here.</summary>
    internal const double StepSeconds = 3;

    /// <summary>A plate of iron has one temperature through its thickness: its Biot number is below 0.01.</summary>
    private const int IronCells = 1;

    private readonly Oven _oven;
    private readonly OvenFaces _faces;
    private readonly SlabConduction _slab;
    private readonly SlabConduction? _iron;
    private readonly double _stepSeconds;
    private readonly double _heldAtStart;
    private long _steps;

    /// <param name="startCelsius">Of surface and plate.</param>
    /// <exception cref="ArgumentOutOfRangeException">Surface or oven is outside its range, which the message names.</exception>
    public OvenRun(
        BakingSurface surface, Oven oven, MaterialsTable table, double startCelsius, int cells = Cells,
        double stepSeconds = StepSeconds)
    {
        surface.Demand(table);
        oven.Demand(surface, table);
        (_oven, _stepSeconds) = (oven, stepSeconds);
        _faces = new OvenFaces(surface, oven, table);
        _slab = Slab(surface, cells);
        _iron = oven.IronAbove is { } plate ? Slab(plate, IronCells) : null;
        _heldAtStart = _slab.HeldJPerM2;

        SlabConduction Slab(BakingSurface body, int count)
        {
            var row = table.Of(body.Kind);
            return new SlabConduction(row.At20, row.HeatCapacityJPerKgK2, body.ThicknessMetres, startCelsius, count);
        }
    }

    public double Seconds => _steps * _stepSeconds;
    public double AirCelsius => _oven.AirCelsiusAfter(Seconds);
    public double TopCelsius => _slab.TopCelsius;
    public double BottomCelsius => _slab.BottomCelsius;
    public double? IronCelsius => _iron?.MeanCelsius;
    public double StoredJPerM2 => _slab.HeldJPerM2 - _heldAtStart;
    public double ThroughFacesJPerM2 => _slab.ThroughFacesJPerM2;

    public void Step(PieContact? pie = null)
    {
        _steps++;
        var air = AirCelsius;
        var top = pie is { } lies ? Under(lies) : _faces.Top(air, _iron?.BottomCelsius);
        _slab.Step(_stepSeconds, top, _faces.Bottom(air));
        _iron?.Step(_stepSeconds, _faces.IronTop(air), _faces.IronBottom(air, pie?.BoilingCelsius ?? TopCelsius));
    }

    /// <summary>Goes on until the top is this hot, and says how long that took; null when it is not within the horizon.</summary>
    public Duration? UntilTop(double celsius, Duration horizon)
    {
        for (var passed = 0.0; passed <= horizon.TotalSeconds; passed += _stepSeconds)
        {
            if (TopCelsius >= celsius)
            {
                return Duration.FromSeconds(passed);
            }

            Step();
        }

        return null;
    }

    /// <summary>A surface that is itself colder than the wet layer gives it nothing.</summary>
    private FaceHeat Under(PieContact pie) => new(
        ContactWPerM2K: TopCelsius > pie.BoilingCelsius ? pie.WPerM2K : 0, ContactCelsius: pie.BoilingCelsius);
}
