using GameNight.Planning.Dough;
using GameNight.Planning.Quantities;
using GameNight.TestKit;

namespace GameNight.Reference.Tests;

/// <summary>What the engine says of flour, its moisture and the wheat's laws; in % on wet basis.</summary>
internal static class FlourAnswers
{
    private static readonly (double Celsius, int Percent)[] Cells = [(10, 30), (20, 50), (30, 80)];

    public static IReadOnlyDictionary<string, Func<double>> ById { get; } = new Dictionary<string, Func<double>>
    {
        ["B4"] = () => FlourMoisture.AsIs(new Grams(100), new Share(0.1365)).Value,
        ["B4b.12"] = () => AsIs(0.12),
        ["B4b.13"] = () => AsIs(0.13),
        ["B4b.15"] = () => AsIs(0.15),
        ["B5.henderson"] = () => Henderson(WheatKind.Soft, FromFahrenheit(90), 50),
        ["B5.chungPfost"] = () => ChungPfost(WheatKind.Soft, FromFahrenheit(90), 50),
        ["B7.warm"] = () => Henderson(WheatKind.Soft, FromFahrenheit(60), 65),
        ["B7.cold"] = () => Henderson(WheatKind.Soft, FromFahrenheit(30), 65),
        ["B9.25"] = () => Henderson(WheatKind.Durum, 21.1, 25),
        ["B9.30"] = () => Henderson(WheatKind.Durum, 21.1, 30),
        ["B9.35"] = () => Henderson(WheatKind.Durum, 21.1, 35),
        ["B9b.henderson"] = () => Henderson(WheatKind.Hard, 20, 70),
        ["B9b.chungPfost"] = () => ChungPfost(WheatKind.Hard, 20, 70),
        ["B9c.low"] = () => Hydration.MoistureInRoom(
            WheatKind.Hard, new Celsius(25), new Share(0.65), SharedFolder.Tables.Flour).Low.Percent,
        ["S2.slope"] = () => AsIs(0.13) - AsIs(0.14),
    }.Concat(Cells.SelectMany(cell => new[] { WheatKind.Hard, WheatKind.Soft }.SelectMany(wheat => new[]
    {
        Answer("henderson", wheat, cell, Henderson), Answer("chungPfost", wheat, cell, ChungPfost),
    }))).ToDictionary();

    private static KeyValuePair<string, Func<double>> Answer(
        string law, WheatKind wheat, (double Celsius, int Percent) cell, Func<WheatKind, double, double, double> by) =>
        new($"S2.{(wheat == WheatKind.Hard ? "hard" : "soft")}.{law}.{cell.Celsius}.{cell.Percent}", () => by(wheat, cell.Celsius, cell.Percent));

    private static double AsIs(double moisture) => FlourMoisture.AbsorptionAsIs(new Share(0.6), new Share(moisture)).Percent;

    private static double Henderson(WheatKind wheat, double celsius, double percent) =>
        SharedFolder.Tables.Flour.Of(wheat).ByHenderson(new Celsius(celsius), new Share(percent / 100)).Percent;

    private static double ChungPfost(WheatKind wheat, double celsius, double percent) =>
        SharedFolder.Tables.Flour.Of(wheat).ByChungPfost(new Celsius(celsius), new Share(percent / 100)).Percent;

    private static double FromFahrenheit(double fahrenheit) => (fahrenheit - 32) / 1.8;
}
