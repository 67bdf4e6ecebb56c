using System.Globalization;

namespace GameNight.Web.Wording;

/// <summary>
/// The languages that have texts. English is built in; every other one is a folder of satellites beside the program, made from
/// <c>Texts/NAME.de.resx</c> and its like.
/// </summary>
public static class Language
{
    public static CultureInfo English { get; } = CultureInfo.GetCultureInfo("en");

    public static IReadOnlyList<CultureInfo> Shipped { get; } = [English, .. Satellites()];

    /// <summary>What numbers and dates are written in: the reader's culture when its language has texts, else English.</summary>
    public static CultureInfo Current
    {
        get
        {
            var asked = CultureInfo.CurrentUICulture;
            for (var culture = asked; culture.Name.Length > 0; culture = culture.Parent)
            {
                if (Shipped.Contains(culture))
                {
                    return asked;
                }
            }

            return English;
        }
    }

    private static IEnumerable<CultureInfo> Satellites()
    {
        var file = $"{typeof(Language).Assembly.GetName().Name}.resources.dll";
        return Directory.EnumerateDirectories(AppContext.BaseDirectory)
            .Where(folder => File.Exists(Path.Combine(folder, file)))
            .Select(folder => CultureInfo.GetCultureInfo(Path.GetFileName(folder)))
            .OrderBy(culture => culture.Name, StringComparer.Ordinal);
    }
}
