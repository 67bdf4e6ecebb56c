using GameNight.Nights.Records;
using GameNight.Planning;
using GameNight.Planning.Dough;
using GameNight.Planning.Quantities;
using GameNight.Web.Wording;
using GameNight.Web.Wording.Texts;

namespace GameNight.Web.Host.Dough;

/// <summary>One way to do it otherwise, as it is typed. What is empty stays as planned.</summary>
public sealed class WayForm
{
    private IReadOnlyDictionary<string, string> _problems = new Dictionary<string, string>();

    public string MixAt { get; set; } = "";

    public string Fridge { get; set; } = "";

    public string Room { get; set; } = "";

    public YeastForm? Yeast { get; set; }

    public bool IsEmpty => MixAt.Length == 0 && Fridge.Trim().Length == 0 && Room.Trim().Length == 0 && Yeast is null;

    public string? ProblemOf(string field) => _problems.GetValueOrDefault(field);

    /// <returns>Null when something typed cannot be read.</returns>
    public Variation? Read(string zone, Measures measures)
    {
        var numbers = new TypedNumbers("kitchen");
        var fridge = Temperature("fridgeCelsius", Fridge, -1, 14);
        var room = Temperature("roomCelsius", Room, 5, 40);
        var mixAt = MixAt.Length > 0 ? TypedMoments.Parse(MixAt) : null;
        var problems = new Dictionary<string, string>(numbers.Problems);
        if (mixAt is { Success: false })
        {
            problems["mix"] = DoughPages.ChooseDateAndTime;
        }

        _problems = problems;
        return problems.Count > 0
            ? null
            : new Variation(mixAt is null ? null : NightTime.ToInstant(mixAt.Value, zone), fridge, room, Yeast);

        Celsius? Temperature(string field, string text, double low, double high) =>
            text.Trim().Length == 0 ? null : new Celsius(numbers.Read(field, text, low, high, measures.Temperature));
    }
}
