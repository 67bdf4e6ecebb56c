using GameNight.Planning;
using GameNight.Planning.Dough;
using GameNight.Planning.Quantities;
using GameNight.Web.Host.Plan;
using GameNight.Web.Wording;
using GameNight.Web.Wording.Texts;

namespace GameNight.Web.Host.Dough;

/// <summary>What is known right after kneading, as it is typed: the flour that stayed out, and how warm the dough came out.</summary>
public sealed class KneadForm
{
    private const double ColdestFlour = -20;
    private const double HottestThing = 60;

    private IReadOnlyDictionary<string, string> _problems = new Dictionary<string, string>();

    public string Batch { get; set; } = "1";
    public string StayedOut { get; set; } = "";
    public string Dough { get; set; } = "";
    public string Flour { get; set; } = "";
    public string Room { get; set; } = "";
    public string Water { get; set; } = "";

    /// <summary>Null for a dough without.</summary>
    public string? Preferment { get; set; }

    /// <summary>Temperatures as the plan assumed them; the dough's own is for the thermometer.</summary>
    public static KneadForm Of(NightPlan plan, Measures measures)
    {
        var rule = plan.Water.Because.OfType<WaterRule>().FirstOrDefault();
        return new KneadForm
        {
            Flour = Typed(rule?.Flour),
            Room = Typed(rule?.Room),
            Water = Typed(plan.Water.Water.Expected),
            Preferment = plan.Dough.Formula.Preferment is null ? null : Typed(rule?.Preferment),
        };

        string Typed(Celsius? temperature) =>
            temperature is { } known ? measures.Temperature.Typed(Math.Round(known.Value, 1)) : "";
    }

    public string? ProblemOf(string field) => _problems.GetValueOrDefault(field);

    /// <summary>The batch that is spoken of, as it was weighed.</summary>
    public DoughBatch? BatchOf(DoughPlan dough) =>
        Weighing.Batches(dough).FirstOrDefault(batch => TypedNumbers.Text(batch.Number) == Batch);

    /// <returns>What to remember of it; null when it cannot be read.</returns>
    public KneadersCorrection? ReadCorrection(DoughPlan dough)
    {
        var numbers = new TypedNumbers("knead");
        var batch = BatchOf(dough) ?? Weighing.Batches(dough)[0];
        var grams = numbers.Read("stayedOut", StayedOut, 0, Math.Round(batch.HeldBackFlour.Value, 1, MidpointRounding.ToZero));
        _problems = numbers.Problems;
        return _problems.Count > 0 ? null : KneadersCorrection.Learn(new Grams(grams), batch, dough.Formula.Kneader);
    }

    /// <returns>Friction in kelvins of the temperature sum; null when the temperatures cannot be read or give none.</returns>
    public double? ReadFriction(Measures measures)
    {
        var numbers = new TypedNumbers("knead");
        var dough = Temperature("dough", Dough, 5, 45);
        var flour = Temperature("flour", Flour, ColdestFlour, 40);
        var room = Temperature("room", Room, 5, 40);
        var water = Temperature("water", Water, 0, HottestThing);
        var preferment = Preferment is { } typed ? Temperature("preferment", typed, 0, 40) : (Celsius?)null;
        _problems = numbers.Problems;
        if (_problems.Count > 0)
        {
            return null;
        }

        try
        {
            return FrictionFactor.Learn(dough, flour, room, water, preferment);
        }
        catch (ArgumentOutOfRangeException refused)
        {
            numbers.Refuse("dough", ProblemText.WithReason(Phrase.Fill(
                FormulaPages.FrictionOutOfRange,
                measures.SayDifference(Convert.ToDouble(refused.ActualValue, System.Globalization.CultureInfo.InvariantCulture)),
                measures.SayDifference(FrictionFactor.Least),
                measures.SayDifference(FrictionFactor.Most)), "kitchen.frictionKelvin"));
            return null;
        }

        Celsius Temperature(string field, string text, double low, double high) =>
            new(numbers.Read(field, text, low, high, measures.Temperature));
    }
}
