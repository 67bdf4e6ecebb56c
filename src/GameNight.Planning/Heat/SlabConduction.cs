namespace GameNight.Planning.Heat;

/// <summary>
/// Conduction through a slab by finite volumes, backward Euler. Radiation and a heat capacity that grows with temperature
/// make a step an equation that is solved by Newton's method to the last digits, so that heat stored is heat that came in.
/// </summary>
internal sealed class SlabConduction
{
    private const int MostIterations = 25;

    /// <summary>Newton squares what is left: after a last move of this size it is far below rounding.</summary>
    private const double SolvedKelvin = 1e-6;

    private readonly double _conductance;
    private readonly double _faceConductance;
    private readonly double _capacityAt20;
    private readonly double _capacityGrowth;

    private readonly double[] _celsius;
    private readonly double[] _old;
    private readonly double[] _before;
    private readonly double[] _factor;

    private double _top;
    private double _bottom;

    /// <param name="heatCapacityJPerKgK2">Growth of the heat capacity with each kelvin above 20 °C.</param>
    public SlabConduction(
        ThermalProperties at20, double heatCapacityJPerKgK2, double thicknessMetres, double celsius, int cells)
    {
        var cell = thicknessMetres / cells;
        _conductance = at20.ConductivityWPerMK / cell;
        _faceConductance = 2 * _conductance;
        _capacityAt20 = at20.DensityKgPerM3 * at20.HeatCapacityJPerKgK * cell;
        _capacityGrowth = at20.DensityKgPerM3 * heatCapacityJPerKgK2 * cell;

        (_celsius, _old, _before, _factor) = (new double[cells], new double[cells], new double[cells], new double[cells]);
        Array.Fill(_celsius, celsius);
        (_top, _bottom) = (celsius, celsius);
    }

    public double TopCelsius => _top;
    public double BottomCelsius => _bottom;
    public double MeanCelsius => _celsius.Average();
    public IReadOnlyList<double> CellsCelsius => _celsius;

    /// <summary>Heat that came in through both faces since the start.</summary>
    public double ThroughFacesJPerM2 { get; private set; }

    /// <summary>Heat held above 20 °C.</summary>
    public double HeldJPerM2 => _celsius.Sum(Held);

    /// <exception cref="InvalidOperationException">The step did not converge: a bug, or a step far too long.</exception>
    public void Step(double seconds, in FaceHeat top, in FaceHeat bottom)
    {
        _celsius.CopyTo(_old, 0);
        for (var i = 0; i < MostIterations; i++)
        {
            if (Improve(seconds, top, bottom) < SolvedKelvin)
            {
                ThroughFacesJPerM2 += (top.WPerM2(_top) + bottom.WPerM2(_bottom)) * seconds;
                return;
            }
        }

        throw new InvalidOperationException($"A step of {seconds} s did not converge.");
    }

    private double Held(double celsius) => (celsius - 20) * (_capacityAt20 + _capacityGrowth / 2 * (celsius - 20));

    /// <summary>One iteration: all equations made linear around the last guess, and solved. Says how far that moved.</summary>
    private double Improve(double seconds, in FaceHeat top, in FaceHeat bottom)
    {
        var last = _celsius.Length - 1;
        var (topIn, topFall) = ThroughFace(top, _top);
        var (bottomIn, bottomFall) = ThroughFace(bottom, _bottom);

        for (var i = 0; i <= last; i++)
        {
            var guess = _celsius[i];
            var capacity = _capacityAt20 + _capacityGrowth * (guess - 20);
            var right = (capacity * guess - Held(guess) + Held(_old[i])) / seconds;
            var diagonal = capacity / seconds;
            if (i == 0)
            {
                (diagonal, right) = (diagonal + topFall, right + topIn);
            }
            else
            {
                diagonal += _conductance * (1 - _factor[i - 1]);
                right += _conductance * _before[i - 1];
            }

            diagonal += i == last ? bottomFall : _conductance;
            right += i == last ? bottomIn : 0;
            (_before[i], _factor[i]) = (right / diagonal, _conductance / diagonal);
        }

        var moved = 0.0;
        for (var i = last; i >= 0; i--)
        {
            var now = _before[i] + (i == last ? 0 : _factor[i] * _celsius[i + 1]);
            moved = Math.Max(moved, Math.Abs(now - _celsius[i]));
            _celsius[i] = now;
        }

        var (newTop, newBottom) = (Face(top, _top, _celsius[0]), Face(bottom, _bottom, _celsius[last]));
        moved = Math.Max(moved, Math.Max(Math.Abs(newTop - _top), Math.Abs(newBottom - _bottom)));
        (_top, _bottom) = (newTop, newBottom);
        return moved;
    }

    /// <summary>
    /// A face has no heat capacity: what comes in from outside goes on into the outermost cell. With the outside made linear
    /// around the guess, the flux into that cell is the first number less the second times the cell's temperature.
    /// </summary>
    private (double In, double Fall) ThroughFace(in FaceHeat face, double guess)
    {
        var fall = face.FallWPerM2K(guess);
        var part = _faceConductance / (_faceConductance + fall);
        return (part * (face.WPerM2(guess) + fall * guess), part * fall);
    }

    private double Face(in FaceHeat face, double guess, double cellCelsius)
    {
        var fall = face.FallWPerM2K(guess);
        return (_faceConductance * cellCelsius + face.WPerM2(guess) + fall * guess) / (_faceConductance + fall);
    }
}
