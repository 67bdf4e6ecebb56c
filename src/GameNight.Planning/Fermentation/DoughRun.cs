using GameNight.Planning.Dough;
using GameNight.Planning.Heat;
using GameNight.Planning.Quantities;
using NodaTime;

namespace GameNight.Planning.Fermentation;

/// <summary>One dough on one journey: its temperatures, its gas, and what is wanted of it.</summary>
internal sealed class DoughRun
{
    private readonly FermentationCalibration _calibration;
    private readonly MaterialsTable _materials;

    public DoughRun(DoughJourney journey, DoughFormula formula, FermentationCalibration calibration, FermentationTable table,
        MaterialsTable materials)
    {
        (Journey, Formula, _calibration, Table, _materials) = (journey, formula, calibration, table, materials);
        var fridge = journey.Fridge ?? new Celsius(table.Fridge.AssumedCelsius);
        Temperatures = new JourneyTemperatures(journey, fridge, formula, materials);
        Pressure = new Altitude(journey.AltitudeMetres).PressureFactor;
        Target = table.Target.MillilitresPer100GramsFlour * Pressure;
    }

    public DoughJourney Journey { get; }

    public DoughFormula Formula { get; }

    public FermentationTable Table { get; }

    public JourneyTemperatures Temperatures { get; private init; }

    /// <summary>Air pressure over that at sea level.</summary>
    public double Pressure { get; }

    /// <summary>Gas of a dough that is as it should be, mL at 25 °C and 1 atm per 100 g of flour.</summary>
    public double Target { get; }

    /// <summary>The gas at which a dough can first and last be baked, over that at its best.</summary>
    public (double From, double Until) ReadyRatios
    {
        get
        {
            var ready = Table.Ready;
            var best = Regulated(ready.BestHours);
            return (Regulated(ready.FromHours) / best, Regulated(ready.UntilHours) / best);

            double Regulated(double hours) => new FermentationModel(
                    new TemperatureSeries(Enumerable.Repeat(ready.Celsius, (int)(hours * 60) + 1).ToArray(), 1.0 / 60),
                    Table, FermentationCalibration.None)
                .From(ready.FreshYeastPercent).GasMillilitresPer100GramsFlour;
        }
    }

    public FermentationModel Over(TemperatureSeries series, double ripenedHours) => new(
        series, Table, _calibration, YeastDoseModel.SaltFactor(Formula.Salt, Table.SaltPerPoint), ripenedHours);

    public double Dissolvable(double celsius) => CarbonDioxide.Dissolvable(celsius, Formula.PouredPerFlour, Pressure, Table);

    public DoughState State(Instant at, double celsius, double gas)
    {
        var dissolved = Math.Min(gas, Dissolvable(celsius));
        var volume = CarbonDioxide.Volume(gas - dissolved, celsius, Formula.TotalPerFlour, Pressure);
        var look = Table.Looks.Where(row => row.FromVolume <= volume).MaxBy(row => row.FromVolume)!.Look;
        return new DoughState(at, new Celsius(celsius), gas, dissolved, volume, look);
    }

    /// <summary>The same dough in a kitchen with other factors.</summary>
    public DoughRun With(FermentationCalibration calibration) =>
        new(Journey, Formula, calibration, Table, _materials) { Temperatures = Temperatures };

    /// <summary>The same dough in a fridge of that temperature.</summary>
    public DoughRun In(Celsius fridge) => new(Journey with { Fridge = fridge }, Formula, _calibration, Table, _materials);

    /// <summary>The dough left where it rests longest, to be taken from there at any minute.</summary>
    public Lasting LongestOut(Duration furthest) => new(this, furthest);

    /// <summary>A dough that stays in the fridge (or, never there, in its bowl) until somebody takes it.</summary>
    internal sealed class Lasting
    {
        private readonly DoughRun _run;
        private readonly TemperatureSeries _series;
        private readonly bool _isCold;
        private readonly int _earliest;

        public Lasting(DoughRun run, Duration furthest)
        {
            _run = run;
            _isCold = run.Journey.InFridge > Duration.Zero;
            var temperatures = _isCold
                ? run.Temperatures
                : new DoughRun(run.Journey with { AtRoom = furthest }, run.Formula, run._calibration, run.Table, run._materials).Temperatures;
            _series = temperatures.UntilOut(_isCold ? furthest : Duration.Zero);
            _earliest = _isCold ? JourneyTemperatures.Minutes(run.Journey.AtRoom) : 0;
            Model = run.Over(_series, 0);
        }

        public FermentationModel Model { get; }

        /// <summary>Minutes from mixing at which the dough, tempered, has made that much gas; null when it never does.</summary>
        public double? Reaches(double wanted, double[] gas, double fresh)
        {
            var (low, high) = (_earliest, _series.Celsius.Length - 1);
            if (Made(high) < wanted)
            {
                return null;
            }

            while (high - low > 1)
            {
                var middle = (low + high) / 2;
                (low, high) = Made(middle) < wanted ? (middle, high) : (low, middle);
            }

            return high + (_isCold ? JourneyTemperatures.Minutes(_run.Journey.Tempering) : 0);

            double Made(int minute) => gas[minute] + (_isCold ? Tempered(minute) : 0);

            double Tempered(int minute) => _run
                .Over(_run.Temperatures.Tempering(_series.Celsius[minute], minute), Model.RipenedHours[minute])
                .From(fresh).GasMillilitresPer100GramsFlour;
        }
    }
}
