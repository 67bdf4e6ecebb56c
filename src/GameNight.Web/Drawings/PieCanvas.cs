using System.Globalization;
using System.Xml.Linq;
using GameNight.Planning.Toppings;
using SkiaSharp;

namespace GameNight.Web.Drawings;

/// <summary>
/// Paints a pie as <see cref="PieDrawing"/> draws it, from the same outlines, parts and marks, for pictures that leave the
/// browser.
/// </summary>
/// <param name="whiteBases">Bases that are drawn pale.</param>
/// <param name="bareBases">Bases that are none.</param>
internal sealed class PieCanvas(IReadOnlySet<string> whiteBases, IReadOnlySet<string> bareBases)
{
    /// <summary>The drawing's own units: it is this wide and high.</summary>
    public const float Size = 200;

    private const int Tile = 18;

    private static readonly SKColor Ink = SKColor.Parse("#24262b");
    private static readonly SKColor Crust = SKColor.Parse("#b9783a");
    private static readonly SKColor Red = SKColor.Parse("#e8b1a2");
    private static readonly SKColor White = SKColor.Parse("#f4ead0");
    private static readonly SKColor Bare = SKColor.Parse("#ecd3a4");
    private static readonly SKColor Disc = SKColor.Parse("#fffdf8");
    private static readonly SKColor Care = SKColor.Parse("#a3301f");

    /// <summary>Paints into a square of <see cref="Size"/> at the origin; the caller moves and scales.</summary>
    public void Paint(SKCanvas canvas, PieOrder pie, IReadOnlyDictionary<string, Combination> combinations, SKFont letters)
    {
        using var crust = SKPath.ParseSvgPathData(PiePatterns.Outline(pie.Number, 92));
        using var top = SKPath.ParseSvgPathData(PiePatterns.Outline(pie.Number, 80));
        FillAndLine(canvas, crust, Crust, 2);
        var parts = PiePart.Of(pie);
        for (var index = 0; index < parts.Count; index++)
        {
            var sector = pie.Sectors[index];
            canvas.Save();
            if (parts.Count > 1)
            {
                using var wedge = SKPath.ParseSvgPathData(parts[index].Wedge);
                canvas.ClipPath(wedge, antialias: true);
            }

            FillAndLine(canvas, top, TintOf(combinations[sector.Letter].BaseId), 1.5f);
            canvas.ClipPath(top, antialias: true);
            Marks(canvas, sector.Letter);
            canvas.Restore();
        }

        using var line = Line(2);
        foreach (var cut in parts.Where(_ => parts.Count > 1).Select(part => part.Cut))
        {
            canvas.DrawLine(100, 100, (float)cut.X, (float)cut.Y, line);
        }

        for (var index = 0; index < parts.Count; index++)
        {
            var (x, y) = ((float)parts[index].Letter.X, (float)parts[index].Letter.Y);
            using var disc = Fill(Disc);
            using var ink = Fill(Ink);
            canvas.DrawCircle(x, y, 17, disc);
            canvas.DrawCircle(x, y, 17, line);
            canvas.DrawText(pie.Sectors[index].Letter, x, y + 7, SKTextAlign.Center, letters, ink);
        }

        if (pie.IsOwnPie)
        {
            using var pennant = SKPath.ParseSvgPathData("M152 8 h40 l-7 11 l7 11 h-40 z");
            FillAndLine(canvas, pennant, Care, 1.5f);
        }
    }

    private SKColor TintOf(string baseId) => whiteBases.Contains(baseId) ? White : bareBases.Contains(baseId) ? Bare : Red;

    /// <summary>The marks of a letter, tile by tile over the whole drawing.</summary>
    private static void Marks(SKCanvas canvas, string letter)
    {
        var marks = XElement.Parse($"<g>{PiePatterns.Of(letter)}</g>").Elements().ToList();
        for (var x = 0; x < Size; x += Tile)
        {
            for (var y = 0; y < Size; y += Tile)
            {
                canvas.Save();
                canvas.Translate(x, y);
                canvas.ClipRect(new SKRect(0, 0, Tile, Tile));
                marks.ForEach(mark => Mark(canvas, mark));
                canvas.Restore();
            }
        }
    }

    private static void Mark(SKCanvas canvas, XElement mark)
    {
        var kind = (string?)mark.Attribute("class") ?? "";
        using var paint = kind == "dot" ? Fill(Ink) : Line(kind == "stroke wide" ? 1.8f : 1.3f);
        switch (mark.Name.LocalName)
        {
            case "circle":
                canvas.DrawCircle(Of("cx"), Of("cy"), Of("r"), paint);
                break;
            case "rect":
                canvas.DrawRect(Of("x"), Of("y"), Of("width"), Of("height"), paint);
                break;
            case "path":
                using (var path = SKPath.ParseSvgPathData((string?)mark.Attribute("d") ?? ""))
                {
                    canvas.DrawPath(path, paint);
                }

                break;
            default:
                throw new NotSupportedException($"Say here how a {mark.Name.LocalName} is painted.");
        }

        float Of(string name) => float.Parse(mark.Attribute(name)!.Value, CultureInfo.InvariantCulture);
    }

    private static void FillAndLine(SKCanvas canvas, SKPath path, SKColor colour, float width)
    {
        using var fill = Fill(colour);
        using var line = Line(width);
        canvas.DrawPath(path, fill);
        canvas.DrawPath(path, line);
    }

    private static SKPaint Fill(SKColor colour) => new() { Color = colour, IsAntialias = true, Style = SKPaintStyle.Fill };

    private static SKPaint Line(float width) => new() { Color = Ink, IsAntialias = true, Style = SKPaintStyle.Stroke, StrokeWidth = width };
}
