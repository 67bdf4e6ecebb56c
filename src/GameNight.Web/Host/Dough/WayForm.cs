using GameNight.Nights.Records;
using GameNight.Planning;
using GameNight.Planning.Dough;
using GameNight.Planning.Quantities;
using GameNight.Web.Wording;
using GameNight.Web.Wording.Texts;
using NodaTime;

namespace GameNight.Web.Host.Dough;

/// <summary>One way to do it otherwise, as it is typed. What is empty stays as planned.</summary>
public sealed class WayForm
{
    private static readonly string[] Fields = ["mixAt", "fridgeCelsius", "roomCelsius"];

    private Dictionary<string, string> _problems = [];

    public string MixAt { get; set; } = "";

    public string Fridge { get; set; } = "";

    public string Room { get; set; } = "";

    public YeastForm? Yeast { get; set; }

    public bool IsEmpty => MixAt.Length == 0 && Fridge.Trim().Length == 0 && Room.Trim().Length == 0 && Yeast is null;

    public bool IsRefused => _problems.Count > 0;

    /// <summary>The first field with a problem, in the order of the form.</summary>
    public string? FirstRefused => Fields.FirstOrDefault(_problems.ContainsKey);

    public string? ProblemOf(string field) => _problems.GetValueOrDefault(field);

    /// <summary>What only the planner's check of the whole night knows, said beside the field that was typed.</summary>
    /// <returns>False when no typed field is about it.</returns>
    public bool Refuse(SnapshotProblem problem, Measures measures)
    {
        var field = problem.Field[(problem.Field.LastIndexOf('.') + 1)..];

        // A fridge is judged against the room: whichever of the two was typed is the one to mend.
        var named = field == "fridgeCelsius" && Fridge.Trim().Length == 0 && Room.Trim().Length > 0 ? "roomCelsius" : field;
        var isTyped = named switch
        {
            "fridgeCelsius" => Fridge.Trim().Length > 0,
            "roomCelsius" => Room.Trim().Length > 0,
            _ => false,
        };
        if (isTyped)
        {
            _problems[named] = ProblemText.SayHere(problem, measures);
        }

        return isTyped;
    }

    /// <param name="now">Mixing cannot begin before it, nor after <paramref name="serveAt"/>.</param>
    /// <returns>Null when something typed cannot be read.</returns>
    public Variation? Read(string zone, Measures measures, Instant now, Instant serveAt)
    {
        var numbers = new TypedNumbers("kitchen");
        var fridge = Temperature("fridgeCelsius", Fridge, -1, 14);
        var room = Temperature("roomCelsius", Room, 5, 40);
        _problems = new Dictionary<string, string>(numbers.Problems);
        var mixAt = ReadMixAt(zone, now, serveAt);
        return _problems.Count > 0 ? null : new Variation(mixAt, fridge, room, Yeast);

        Celsius? Temperature(string field, string text, double low, double high) =>
            text.Trim().Length == 0 ? null : new Celsius(numbers.Read(field, text, low, high, measures.Temperature));
    }

    private Instant? ReadMixAt(string zone, Instant now, Instant serveAt)
    {
        if (MixAt.Length == 0)
        {
            return null;
        }

        if (TypedMoments.Parse(MixAt) is not { Success: true } typed)
        {
            _problems["mixAt"] = DoughPages.ChooseDateAndTime;
            return null;
        }

        var mixAt = NightTime.ToInstant(typed.Value, zone);
        if (mixAt < now || mixAt >= serveAt)
        {
            _problems["mixAt"] = Phrase.Fill(
                mixAt < now ? DoughPages.MixHasPassed : DoughPages.MixTooLate, QuantityText.Moment(now, zone), QuantityText.Moment(serveAt, zone));
        }

        return mixAt;
    }
}
