using System.Diagnostics;
using GameNight.Planning;
using GameNight.Planning.Appetite;
using GameNight.Planning.Dough;
using GameNight.Planning.Fermentation;
using GameNight.Planning.Toppings;
using static GameNight.Web.Wording.QuantityText;

namespace GameNight.Web.Wording;

/// <summary>Says each reason in one sentence. A test demands a sentence for every reason there is.</summary>
public static class ReasonText
{
    public static string Say(Reason reason) => reason switch
    {
        AnswersCounted r => $"{People(r.Guests, "guest")}{Bringing(r.Companions)}: {WordText.Say(r.Answer)}, counted with a chance of {Chance(r.Chance)}.",
        EatersCounted r => $"{People(r.Eaters, WordText.Say(r.Portion))} at about {Number(r.SlicesEach)} slices each, when they come (a prior, mostly from memory; differs between people by 45 %).",
        RemoteNotCounted r => $"{People(r.People, "person")} joining from elsewhere: no slices.",
        RunOutChanceAsked r => $"You accept a run-out chance of {Chance(r.Asked)}; {Pies(r.Pies)} reach {Chance(r.Reached)}, one fewer would not.",
        DoughIsBegun r => $"The dough is begun: {Pies(r.Pies)}, whatever is answered now.",
        BallFromShape r => $"{Centimetres(r.Diameter)} across at {r.ThicknessGramsPerCm2:0.00} g of dough per square centimetre.",
        LossAdded r => $"{Percent(r.Loss)} more, for what stays in the bowl and on the bench.",
        BatchesByCapacity r => $"Your bowl or mixer takes {Grams(r.Capacity)} at once: {Count(r.Batches, "batch", "batches")}.",
        WaterRule r => $"Three times {Celsius(r.Dough)}, less flour {Celsius(r.Flour)}, room {Celsius(r.Room)} and {Number(r.FrictionKelvin)} for kneading (handbook rule).",
        WaterLimited r => $"The rule asks for {Number(r.NeededCelsius)} °C; {Celsius(r.Limit)} is as far as yeast and tap allow.",
        DoseForHours r => $"{Length(r.AtRoom)} in a room of {Celsius(r.Room)}, {Length(r.InFridge)} in a fridge of {Celsius(r.Fridge)}, {Length(r.Tempering)} tempering.",
        FridgeAssumed r => $"Your fridge is not measured: {Celsius(r.Assumed)} is assumed, the mean of homes, and the band is wider. Put a glass of water in for a night and measure that.",
        DoseForAltitude r => $"At {Whole(r.Metres)} m gas takes more room: {Percent(r.Factor)} of the sea-level dose.",
        ColdDoseIsUncertain r => $"A cold dose is the weakest number here: the truth may lie a factor of {Number(r.BandFactor)} away. Look at the dough, not only at the clock.",
        SpreadOnArea r => $"{Whole(r.AreaCm2)} cm² at {r.GramsPerCm2:0.00} g per square centimetre (from memory; the hand moves it by 15 %).",
        _ => throw new UnreachableException($"No wording for {reason.GetType().Name}."),
    };

    private static string People(int count, string word) => Count(count, word, word == "person" ? "people" : word == "child" ? "children" : $"{word}s");

    private static string Count(int count, string one, string many) => count == 1 ? $"1 {one}" : $"{count} {many}";

    private static string Bringing(int companions) => companions == 0 ? "" : $" with {Count(companions, "companion", "companions")}";
}
