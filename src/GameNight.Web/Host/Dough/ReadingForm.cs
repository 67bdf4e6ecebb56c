using GameNight.Nights.Records;
using GameNight.Planning.Fermentation;
using GameNight.Planning.Quantities;
using GameNight.Web.Wording;
using GameNight.Web.Wording.Texts;
using NodaTime;

namespace GameNight.Web.Host.Dough;

/// <summary>A reading of the dough as it is typed; it stays typed until it is kept.</summary>
public sealed class ReadingForm
{
    private static readonly string[] Fields = ["doughCelsius", "fridgeCelsius", "readAt"];

    private IReadOnlyDictionary<string, string> _problems = new Dictionary<string, string>();

    public DoughLook? Look { get; set; }

    public string Dough { get; set; } = "";

    public string Fridge { get; set; } = "";

    public string At { get; set; } = "";

    /// <summary>Grows with each try that was refused, for the focus.</summary>
    public int Tries { get; private set; }

    public string? ProblemOf(string field) => _problems.GetValueOrDefault(field);

    /// <summary>The number of the try for the first field that was refused, 0 for all others.</summary>
    public int FocusOf(string field) => Fields.FirstOrDefault(_problems.ContainsKey) == field ? Tries : 0;

    /// <summary>What only the log knows, said beside its field.</summary>
    public void Refuse(string field, string problem)
    {
        _problems = new Dictionary<string, string> { [field] = problem };
        Tries++;
    }

    /// <param name="now">When no time is typed.</param>
    /// <returns>Null when something typed cannot be read.</returns>
    public DoughReading? Read(Instant now, string zone, Measures measures)
    {
        var numbers = new TypedNumbers("readings");
        var dough = Temperature("doughCelsius", Dough, -2, 45);
        var fridge = Temperature("fridgeCelsius", Fridge, -2, 20);
        var problems = new Dictionary<string, string>(numbers.Problems);
        var at = now;
        if (At.Length > 0)
        {
            var typed = TypedMoments.Parse(At);
            at = typed.Success ? NightTime.ToInstant(typed.Value, zone) : now;
            if (!typed.Success)
            {
                problems["readAt"] = DoughPages.ChooseDateAndTime;
            }
        }

        _problems = problems;
        Tries += problems.Count > 0 ? 1 : 0;
        return problems.Count > 0 ? null : new DoughReading(at, dough, fridge, Look);

        Celsius? Temperature(string field, string text, double low, double high) =>
            text.Trim().Length == 0 ? null : new Celsius(numbers.Read(field, text, low, high, measures.Temperature));
    }
}
