using GameNight.Planning.Foods;
using GameNight.Planning.Quantities;
using NodaTime;

namespace GameNight.Planning.Sauce;

/// <summary>
/// So much tomato made into sauce: mass in is mass finished and mass evaporated. What evaporates is counted as water (the
/// few grams of alcohol that leave are among it), and never more than leaves a sauce as thick as paste.
/// </summary>
internal sealed class SimmeredSauce
{
    public SimmeredSauce(SauceFormula formula, Grams tomato, SauceTable table, FoodTable foods)
    {
        Parts = formula.For(tomato);
        var raw = foods.Sum(Parts);
        Pots = (int)Math.Clamp(Math.Ceiling(raw.Mass / formula.Pot.Holds), 1, table.Pot.MostPots);

        var thickest = table.Thickest.WaterShare;
        var mostEvaporated = Math.Max(0, (raw.Water.Value - (thickest * raw.Mass.Value)) / (1 - thickest));
        var perMinute = formula.Pot.EvaporationGramsPerMinute * Pots;
        var asked = perMinute * formula.Simmer.TotalMinutes;
        Evaporated = new Grams(Math.Min(asked, mostEvaporated));
        Simmer = asked <= mostEvaporated ? formula.Simmer : Duration.FromMinutes(mostEvaporated / perMinute);

        var unsalted = raw.Mass.Value - Evaporated.Value;
        SaltWeighedIn = formula.TinSalt is { } label
            ? foods.Sum(Parts.Skip(1)).Salt + (tomato * label)
            : raw.Salt;
        Salt = new Grams(Math.Max(0, ((formula.Salt.Value * unsalted) - SaltWeighedIn.Value) / (1 - formula.Salt.Value)));
        Finished = new Grams(unsalted + Salt.Value);
        WaterShare = new Share((raw.Water.Value - Evaporated.Value) / Finished.Value);
        AlcoholWeighedIn = raw.Alcohol;
        RawPerPot = raw.Mass / Pots;
    }

    /// <summary>Tomato first, salt not among them.</summary>
    public IReadOnlyList<FoodPart> Parts { get; }
    public int Pots { get; }
    public Grams RawPerPot { get; }
    public Grams Evaporated { get; }
    public Duration Simmer { get; }
    public Grams SaltWeighedIn { get; }
    public Grams Salt { get; }
    public Grams Finished { get; }
    public Share WaterShare { get; }
    public Grams AlcoholWeighedIn { get; }

    public Share SaltShare => new((SaltWeighedIn + Salt) / Finished);
}
