using System.Globalization;
using System.Text;

namespace GameNight.Web.Drawings;

/// <summary>The hand of the drawings: twelve patterns that stay apart in black and white, and a slightly uneven round.</summary>
internal static class PiePatterns
{
    private static readonly string[] Marks =
    [
        """<circle cx="4" cy="4" r="1.7" class="dot"/><circle cx="13" cy="13" r="1.7" class="dot"/>""",
        """<circle cx="9" cy="9" r="4.2" class="stroke"/>""",
        """<path d="M2 12 Q9 4 16 12 Q9 15 2 12Z" class="stroke"/>""",
        """<path d="M3 12 q3 -4 6 0" class="stroke"/>""",
        """<path d="M0 0 L18 18" class="stroke wide"/>""",
        """<path d="M5 5 l8 8 M13 5 l-8 8" class="stroke"/>""",
        """<path d="M9 3 v12 M3 9 h12" class="stroke"/>""",
        """<rect x="5" y="5" width="8" height="8" class="stroke"/>""",
        """<path d="M0 9 h18" class="stroke wide"/>""",
        """<path d="M9 3 l6 11 h-12 z" class="stroke"/>""",
        """<path d="M0 5 q4.5 -5 9 0 t9 0" class="stroke"/>""",
        """<path d="M9 0 v18" class="stroke wide"/>""",
    ];

    public static string Of(string letter)
    {
        // A to Z, then AA, AB …: the patterns begin anew, and the letters keep them apart.
        var number = letter.Aggregate(0, (sum, character) => sum * 26 + character - 'A' + 1) - 1;
        return Marks[number % Marks.Length];
    }

    /// <summary>A closed round of about this radius around (100, 100), uneven like a shaped pie; the same for the same number.</summary>
    public static string Outline(int number, double radius)
    {
        const int points = 16;
        var (startX, startY) = Middle(points - 1);
        var path = new StringBuilder().Append(CultureInfo.InvariantCulture, $"M{startX:0.#} {startY:0.#} ");
        for (var i = 0; i < points; i++)
        {
            var (x, y) = Point(i);
            var (midX, midY) = Middle(i);
            path.Append(CultureInfo.InvariantCulture, $"Q{x:0.#} {y:0.#} {midX:0.#} {midY:0.#} ");
        }

        return path.Append('Z').ToString();

        (double X, double Y) Point(int index)
        {
            var turn = 2 * Math.PI * index / points;
            var uneven = 1 + 0.018 * Math.Sin(3 * turn + number) + 0.012 * Math.Sin(5 * turn + 2 * number);
            return (100 + radius * uneven * Math.Cos(turn), 100 + radius * uneven * Math.Sin(turn));
        }

        (double X, double Y) Middle(int index)
        {
            var ((x, y), (nextX, nextY)) = (Point(index), Point(index + 1));
            return ((x + nextX) / 2, (y + nextY) / 2);
        }
    }
}
