using System.Globalization;
using GameNight.Planning.Toppings;
using GameNight.Web.Wording;
using GameNight.Web.Wording.Texts;

namespace GameNight.Web.Drawings;

/// <summary>
/// Where a sector lies: parts follow one another clockwise from six o'clock, so that the first half is on the left.
/// </summary>
/// <param name="From">Where it begins, in parts of the whole.</param>
/// <param name="Span">How much of the pie it is; 1 for all of it.</param>
public sealed record PiePart(double From, double Span)
{
    /// <summary>Room for the division of slices.</summary>
    private const double Near = 0.01;

    /// <summary>Far beyond the rim of the drawing, in its units.</summary>
    private const double Reach = 200;

    public static IReadOnlyList<PiePart> Of(PieOrder pie)
    {
        var slices = pie.Sectors.Sum(sector => sector.Slices);
        var before = 0;
        var parts = new List<PiePart>();
        foreach (var sector in pie.Sectors)
        {
            parts.Add(new PiePart((double)before / slices, (double)sector.Slices / slices));
            before += sector.Slices;
        }

        return parts;
    }

    public bool IsWhole => Span > 1 - Near;

    /// <summary>"Left half", "Three quarters", "Upper right quarter".</summary>
    public string Name => this switch
    {
        { IsWhole: true } => PieWords.Whole,
        { Span: > 0.5 + Near } => PieWords.ThreeQuarters,
        { Span: > 0.5 - Near } => Is(0) ? PieWords.LeftHalf : PieWords.RightHalf,
        _ => Is(0) ? PieWords.LowerLeftQuarter : Is(0.25) ? PieWords.UpperLeftQuarter : Is(0.5) ? PieWords.UpperRightQuarter : PieWords.LowerRightQuarter,
    };

    /// <summary>Where its letter stands.</summary>
    public (double X, double Y) Letter => IsWhole ? (100, 100) : Point(From + (Span / 2), Span > 0.3 ? 40 : 46);

    /// <summary>Its edge where it begins, as far as the cut is drawn.</summary>
    public (double X, double Y) Cut => Point(From, 80);

    /// <summary>A wedge over the whole drawing, as a path.</summary>
    public string Wedge
    {
        get
        {
            // A corner at every quarter keeps wedges beyond a half from being drawn across the middle.
            var corners = Enumerable.Range(0, 5).Select(step => From + (Math.Min(step * 0.25, Span)))
                .Append(From + Span).Distinct().Select(turn => Point(turn, Reach))
                .Select(point => string.Create(CultureInfo.InvariantCulture, $"L{point.X:0.##} {point.Y:0.##}"));
            return $"M100 100 {string.Join(' ', corners)} Z";
        }
    }

    public string Say(string letter, string onIt) => Phrase.Fill(PieWords.DrawnPart, Name.ToLower(CultureInfo.CurrentCulture), letter, onIt);

    private bool Is(double from) => Math.Abs(From - from) < Near;

    /// <summary>Clockwise from six o'clock.</summary>
    private static (double X, double Y) Point(double turn, double radius) =>
        (100 - (radius * Math.Sin(2 * Math.PI * turn)), 100 + (radius * Math.Cos(2 * Math.PI * turn)));
}
