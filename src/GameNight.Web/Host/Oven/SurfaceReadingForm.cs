using GameNight.Planning.Heat;
using GameNight.Planning.Quantities;
using GameNight.Web.Wording;
using NodaTime;

namespace GameNight.Web.Host.Oven;

/// <summary>A reading of the surface as it is typed; it stays typed until it is kept.</summary>
public sealed class SurfaceReadingForm
{
    private IReadOnlyDictionary<string, string> _problems = new Dictionary<string, string>();

    public string After { get; set; } = "";

    public string Top { get; set; } = "";

    public string? ProblemOf(string field) => _problems.GetValueOrDefault(field);

    /// <returns>Null when something typed cannot be read.</returns>
    public SurfaceReading? Read(Measures measures)
    {
        var numbers = new TypedNumbers("place.readings");
        var reading = new SurfaceReading(
            Duration.FromMinutes(numbers.Read("afterSwitchOnMinutes", After, 0, 360)),
            new Celsius(numbers.Read("topCelsius", Top, 0, 600, measures.Temperature)));
        _problems = numbers.Problems;
        return _problems.Count == 0 ? reading : null;
    }
}
