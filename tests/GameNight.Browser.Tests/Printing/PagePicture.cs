using System.Diagnostics;
using System.Globalization;
using System.Text;

namespace GameNight.Browser.Tests.Printing;

/// <summary>One printed page as a picture, made by Debian's poppler. Tests are skipped where that is missing.</summary>
public sealed class PagePicture
{
    public const int DotsPerInch = 72;

    private const string Program = "pdftoppm";
    private const string HowToInstall = "pdftoppm is not installed: sudo apt-get install --no-install-recommends poppler-utils";

    private readonly byte[] _colours;

    private PagePicture(int width, int height, byte[] colours)
    {
        Width = width;
        Height = height;
        _colours = colours;
    }

    public int Width { get; }

    public int Height { get; }

    /// <summary>The pages of a PDF; they are also kept beside the pictures of the screens, to look at.</summary>
    public static async Task<IReadOnlyList<PagePicture>> OfAsync(byte[] pdf, string name)
    {
        var program = (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator)
            .Select(folder => Path.Combine(folder, Program))
            .FirstOrDefault(File.Exists);
        Assert.SkipWhen(program is null, HowToInstall);
        var folder = Path.GetFullPath(Path.Combine(AppContext.BaseDirectory, "../../../screens/paper"));
        Directory.CreateDirectory(folder);
        foreach (var old in Directory.GetFiles(folder, name + "-*"))
        {
            File.Delete(old);
        }

        var file = Path.Combine(folder, name + ".pdf");
        await File.WriteAllBytesAsync(file, pdf);
        await RunAsync(program!, "-r", DotsPerInch.ToString(CultureInfo.InvariantCulture), file, Path.Combine(folder, name));
        await RunAsync(program!, "-r", DotsPerInch.ToString(CultureInfo.InvariantCulture), "-png", file, Path.Combine(folder, name));
        return [.. Directory.GetFiles(folder, name + "-*.ppm").Order(StringComparer.Ordinal).Select(page => Read(File.ReadAllBytes(page)))];
    }

    /// <summary>How far the strongest colour of the page is from grey, 0 to 255.</summary>
    public int StrongestColour() => Enumerable.Range(0, Width * Height).Max(dot =>
    {
        var colour = _colours.AsSpan(3 * dot, 3);
        return Math.Max(colour[0], Math.Max(colour[1], colour[2])) - Math.Min(colour[0], Math.Min(colour[1], colour[2]));
    });

    /// <summary>Share of the page that is darker than a faint grey.</summary>
    public double Ink() => Enumerable.Range(0, Width * Height).Count(IsInk) / (double)(Width * Height);

    /// <summary>True when something is printed nearer to an edge than this.</summary>
    public bool HasInkWithin(double millimetres)
    {
        var dots = (int)(millimetres / 25.4 * DotsPerInch);
        return Enumerable.Range(0, Width * Height).Any(dot =>
            Math.Min(Math.Min(dot % Width, Width - 1 - dot % Width), Math.Min(dot / Width, Height - 1 - dot / Width)) < dots && IsInk(dot));
    }

    private bool IsInk(int dot) => _colours[3 * dot] < 230;

    private static async Task RunAsync(string program, params string[] arguments)
    {
        using var run = Process.Start(program, arguments);
        await run.WaitForExitAsync(TestContext.Current.CancellationToken);
        Assert.Equal(0, run.ExitCode);
    }

    /// <summary>A portable pixmap: "P6", width, height and 255 in words, then three bytes for each dot.</summary>
    private static PagePicture Read(byte[] file)
    {
        var words = new List<string>();
        var at = 0;
        while (words.Count < 4)
        {
            var end = Array.FindIndex(file, at, letter => char.IsWhiteSpace((char)letter));
            words.Add(Encoding.ASCII.GetString(file, at, end - at));
            at = end + 1;
        }

        Assert.Equal("P6", words[0]);
        return new PagePicture(int.Parse(words[1], CultureInfo.InvariantCulture), int.Parse(words[2], CultureInfo.InvariantCulture), file[at..]);
    }
}
