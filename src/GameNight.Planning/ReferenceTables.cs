using System.Security.Cryptography;
using System.Text;
using GameNight.Planning.Appetite;
using GameNight.Planning.Cheese;
using GameNight.Planning.Dough;
using GameNight.Planning.Fermentation;
using GameNight.Planning.Foods;
using GameNight.Planning.Heat;
using GameNight.Planning.Reference;
using GameNight.Planning.Safety;
using GameNight.Planning.Sauce;
using GameNight.Planning.Timeline;
using GameNight.Planning.Toppings;

namespace GameNight.Planning;

/// <summary>All reference data, read once. Immutable and safe to share between threads.</summary>
public sealed record ReferenceTables(
    AppetiteTable Appetite,
    DoughTable Dough,
    FlourTable Flour,
    FermentationTable Fermentation,
    StepTable Steps,
    SafetyTable Safety,
    MenuTable Menu,
    MaterialsTable Materials,
    FoodTable Foods,
    SauceTable Sauces,
    CheeseTable Cheese,
    string Hash)
{
    public static IReadOnlyList<string> Files { get; } =
    [
        AppetiteTable.File, CheeseTable.File, DoughTable.File, FermentationTable.File, FlourTable.File, FoodTable.File,
        MaterialsTable.File, MenuTable.File, SafetyTable.File, SauceTable.File, StepTable.File,
    ];

    /// <param name="textByFile">File name to its text, one entry for each of <see cref="Files"/>.</param>
    /// <exception cref="ReferenceTableException">A table is missing or malformed; the message names it.</exception>
    public static ReferenceTables Parse(IReadOnlyDictionary<string, string> textByFile) => new(
        ReferenceText.Parse<AppetiteTable>(textByFile, AppetiteTable.File),
        ReferenceText.Parse<DoughTable>(textByFile, DoughTable.File),
        ReferenceText.Parse<FlourTable>(textByFile, FlourTable.File),
        ReferenceText.Parse<FermentationTable>(textByFile, FermentationTable.File),
        ReferenceText.Parse<StepTable>(textByFile, StepTable.File),
        ReferenceText.Parse<SafetyTable>(textByFile, SafetyTable.File),
        ReferenceText.Parse<MenuTable>(textByFile, MenuTable.File).Checked(),
        ReferenceText.Parse<MaterialsTable>(textByFile, MaterialsTable.File),
        ReferenceText.Parse<FoodTable>(textByFile, FoodTable.File),
        ReferenceText.Parse<SauceTable>(textByFile, SauceTable.File),
        ReferenceText.Parse<CheeseTable>(textByFile, CheeseTable.File),
        HashOf(textByFile));

    private static string HashOf(IReadOnlyDictionary<string, string> textByFile)
    {
        var all = string.Concat(Files.Select(file => $"{file}\n{textByFile[file]}\n"));
        return Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(all)));
    }
}
