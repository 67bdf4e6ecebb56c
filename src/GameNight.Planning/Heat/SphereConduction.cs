namespace GameNight.Planning.Heat;

/// <summary>
/// Conduction in a sphere by finite volumes: shells of equal thickness, backward Euler, one pass of elimination for each step.
/// Every new temperature is a weighted mean of old ones and of the surroundings, so that no step, however long, leaves their
/// range. Elimination factors depend only on surroundings' coefficient and step and are kept; a step allocates nothing.
/// </summary>
internal sealed class SphereConduction
{
    private readonly double[] _celsius;
    private readonly double[] _joulesPerKelvin;
    private readonly double[] _wattsPerKelvin;

    /// <summary>Weight of the shell's own old temperature, of the shell inside, and of the shell outside.</summary>
    private readonly double[] _own;
    private readonly double[] _inner;
    private readonly double[] _outer;

    private readonly double _totalJoulesPerKelvin;
    private readonly double _areaM2;
    private readonly double _halfShellM2KPerW;

    private double _surrounding;
    private double _wPerM2K;
    private double _surfaceWattsPerKelvin;
    private double _factoredSeconds;

    public SphereConduction(DoughSphere sphere, double celsius, int shells)
    {
        _celsius = new double[shells];
        _joulesPerKelvin = new double[shells];
        _wattsPerKelvin = new double[shells - 1];
        (_own, _inner, _outer) = (new double[shells], new double[shells], new double[shells]);
        Array.Fill(_celsius, celsius);

        var (dough, thickness) = (sphere.Dough, sphere.RadiusMetres / shells);
        for (var i = 0; i < shells; i++)
        {
            var (inside, outside) = (i * thickness, (i + 1) * thickness);
            _joulesPerKelvin[i] = dough.DensityKgPerM3 * dough.HeatCapacityJPerKgK
                * 4 * Math.PI / 3 * (outside * outside * outside - inside * inside * inside);
            if (i < shells - 1)
            {
                _wattsPerKelvin[i] = dough.ConductivityWPerMK * 4 * Math.PI * outside * outside / thickness;
            }
        }

        _totalJoulesPerKelvin = _joulesPerKelvin.Sum();
        _areaM2 = sphere.AreaM2;
        _halfShellM2KPerW = thickness / 2 / dough.ConductivityWPerMK;
    }

    /// <summary>Innermost shell.</summary>
    public double CoreCelsius => _celsius[0];

    public double SurfaceCelsius =>
        _surrounding - _surfaceWattsPerKelvin * (_surrounding - _celsius[^1]) / (_wPerM2K * _areaM2);

    public double MeanCelsius
    {
        get
        {
            var sum = 0.0;
            for (var i = 0; i < _celsius.Length; i++)
            {
                sum += _joulesPerKelvin[i] * _celsius[i];
            }

            return sum / _totalJoulesPerKelvin;
        }
    }

    /// <summary>Heat that went in through the surface since the start.</summary>
    public double ThroughSurfaceJoules { get; private set; }

    public void Surround(double celsius, double wPerM2K)
    {
        (_surrounding, _wPerM2K) = (celsius, wPerM2K);
        _surfaceWattsPerKelvin = _areaM2 / (1 / wPerM2K + _halfShellM2KPerW);
        _factoredSeconds = 0;
    }

    public void Step(double seconds)
    {
        // Equal steps differ in their last digits; what counts is the step that was factored.
        if (Math.Abs(seconds - _factoredSeconds) > 1e-9 * seconds)
        {
            Factor(seconds);
        }

        var (t, own, inner, outer) = (_celsius, _own, _inner, _outer);
        var below = 0.0;
        for (var i = 0; i < t.Length; i++)
        {
            t[i] = below = Math.FusedMultiplyAdd(inner[i], below, own[i] * t[i]);
        }

        var above = _surrounding;
        for (var i = t.Length - 1; i >= 0; i--)
        {
            t[i] = above = Math.FusedMultiplyAdd(outer[i], above, t[i]);
        }

        ThroughSurfaceJoules += _surfaceWattsPerKelvin * (_surrounding - t[^1]) * _factoredSeconds;
    }

    private void Factor(double seconds)
    {
        var (inside, outerBefore) = (0.0, 0.0);
        for (var i = 0; i < _celsius.Length; i++)
        {
            var held = _joulesPerKelvin[i] / seconds;
            var outside = i < _wattsPerKelvin.Length ? _wattsPerKelvin[i] : _surfaceWattsPerKelvin;
            var pivot = held + outside + inside * (1 - outerBefore);
            (_own[i], _inner[i], _outer[i]) = (held / pivot, inside / pivot, outside / pivot);
            (inside, outerBefore) = (outside, _outer[i]);
        }

        _factoredSeconds = seconds;
    }
}
