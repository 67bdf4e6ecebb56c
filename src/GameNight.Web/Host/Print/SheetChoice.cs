namespace GameNight.Web.Host.Print;

/// <summary>Which sheets an address asks for: <c>?sheet=plan&amp;sheet=cards</c>.</summary>
internal static class SheetChoice
{
    public const string Parameter = "sheet";

    /// <summary>In printing order, each once. An address that names none asks for all.</summary>
    public static IReadOnlyList<Sheet> Of(IReadOnlyList<string>? names)
    {
        var chosen = Enum.GetValues<Sheet>().Where(sheet => names?.Contains(NameOf(sheet)) ?? false).ToList();
        return chosen.Count > 0 ? chosen : Enum.GetValues<Sheet>();
    }

    public static string NameOf(Sheet sheet) => sheet.ToString().ToLowerInvariant();
}
