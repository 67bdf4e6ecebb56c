using GameNight.Planning.Toppings;
using SkiaSharp;

namespace GameNight.Web.Drawings;

/// <summary>What a picture of the pies says. It names no guest and promises nothing.</summary>
/// <param name="Title">Of the night.</param>
/// <param name="When">When it is served.</param>
/// <param name="Pies">Pies with the same on them once, with what they are called together.</param>
/// <param name="OnIt">For every letter what is on it.</param>
/// <param name="Cautions">Whole sentences below the pies.</param>
internal sealed record PiePictureText(
    string Title,
    string When,
    IReadOnlyList<(PieOrder Pie, string Called, string? Note)> Pies,
    IReadOnlyList<(string Letter, string OnIt)> OnIt,
    IReadOnlyList<string> Cautions);

/// <summary>The pies of a night as a picture to send around: a PNG, 1080 pixels wide and as high as it needs.</summary>
internal static class PiePicture
{
    public const int Width = 1080;

    private const int Margin = 48;
    private const int Across = 4;
    private const float Cell = (Width - (2f * Margin)) / Across;
    private const float PieSize = Cell - 24;

    private static readonly SKColor Paper = SKColor.Parse("#fffdf8");
    private static readonly SKColor Ink = SKColor.Parse("#24262b");
    private static readonly SKColor Soft = SKColor.Parse("#5b5f68");

    private static readonly Lazy<SKTypeface> Plain = new(() => Face("atkinson-hyperlegible-400.ttf"));
    private static readonly Lazy<SKTypeface> Bold = new(() => Face("atkinson-hyperlegible-700.ttf"));

    public static byte[] Png(
        PiePictureText text, IReadOnlyDictionary<string, Combination> combinations, IReadOnlySet<string> whiteBases, IReadOnlySet<string> bareBases)
    {
        var pies = new PieCanvas(whiteBases, bareBases);

        // Once for its height, once for good: both go the same way.
        using var nowhere = new SKNoDrawCanvas(Width, 1);
        var height = (int)MathF.Ceiling(Paint(nowhere));
        using var bitmap = new SKBitmap(Width, height, SKColorType.Rgba8888, SKAlphaType.Opaque);
        using var canvas = new SKCanvas(bitmap);
        canvas.Clear(Paper);
        Paint(canvas);
        canvas.Flush();
        using var data = bitmap.Encode(SKEncodedImageFormat.Png, quality: 100);
        return data.ToArray();

        float Paint(SKCanvas to)
        {
            using var heading = new SKFont(Bold.Value, 46);
            using var label = new SKFont(Bold.Value, 26);
            using var plain = new SKFont(Plain.Value, 26);
            using var small = new SKFont(Plain.Value, 23);
            using var letters = new SKFont(Bold.Value, 19);
            var y = Lines(to, text.Title, heading, Margin, Margin, Width - (2 * Margin), Ink);
            y = Lines(to, text.When, plain, Margin, y, Width - (2 * Margin), Soft) + 20;
            foreach (var row in text.Pies.Chunk(Across))
            {
                var bottom = y;
                for (var index = 0; index < row.Length; index++)
                {
                    var x = Margin + (index * Cell);
                    to.Save();
                    to.Translate(x, y);
                    to.Scale(PieSize / PieCanvas.Size);
                    pies.Paint(to, row[index].Pie, combinations, letters);
                    to.Restore();
                    var below = Lines(to, row[index].Called, label, x, y + PieSize + 6, PieSize, Ink);
                    below = row[index].Note is { } note ? Lines(to, note, small, x, below, PieSize, Soft) : below;
                    bottom = MathF.Max(bottom, below);
                }

                y = bottom + 24;
            }

            foreach (var (letter, onIt) in text.OnIt)
            {
                Lines(to, letter, label, Margin, y, 60, Ink);
                y = Lines(to, onIt, plain, Margin + 60, y, Width - (2 * Margin) - 60, Ink) + 6;
            }

            y += 18;
            foreach (var caution in text.Cautions)
            {
                y = Lines(to, caution, small, Margin, y, Width - (2 * Margin), Soft) + 10;
            }

            return y + Margin - 10;
        }
    }

    /// <returns>Where the next line would begin.</returns>
    private static float Lines(SKCanvas canvas, string text, SKFont font, float x, float y, float width, SKColor colour)
    {
        using var paint = new SKPaint { Color = colour, IsAntialias = true };
        var step = font.Size * 1.3f;
        foreach (var line in Broken(text, font, width))
        {
            canvas.DrawText(line, x, y + font.Size, SKTextAlign.Left, font, paint);
            y += step;
        }

        return y;
    }

    /// <summary>Between words; a word wider than the line stands alone and is cut by letters.</summary>
    private static IEnumerable<string> Broken(string text, SKFont font, float width)
    {
        var line = "";
        foreach (var word in text.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            var longer = line.Length == 0 ? word : $"{line} {word}";
            if (font.MeasureText(longer) <= width)
            {
                line = longer;
                continue;
            }

            if (line.Length > 0)
            {
                yield return line;
            }

            line = word;
            while (line.Length > 1 && font.MeasureText(line) > width)
            {
                var fits = Enumerable.Range(1, line.Length - 1).LastOrDefault(length => font.MeasureText(line[..length]) <= width, 1);
                yield return line[..fits];
                line = line[fits..];
            }
        }

        if (line.Length > 0)
        {
            yield return line;
        }
    }

    private static SKTypeface Face(string file)
    {
        using var stream = typeof(PiePicture).Assembly.GetManifestResourceStream(file)!;
        using var data = SKData.Create(stream);
        return SKTypeface.FromData(data);
    }
}
