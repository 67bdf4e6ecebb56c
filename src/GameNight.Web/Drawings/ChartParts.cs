namespace GameNight.Web.Drawings;

/// <summary>One line of a chart.</summary>
/// <param name="Kind">Its class in the stylesheet.</param>
/// <param name="NamedAt">Where along the time its name stands.</param>
public sealed record ChartLine(string Name, string Kind, IReadOnlyList<(double At, double Value)> Points, double NamedAt);

/// <summary>A time that is shaded behind the lines.</summary>
/// <param name="Lane">A strip of its own below the top, counted from 0; null shades the whole height.</param>
public sealed record ChartSpan(double From, double Until, string Name, string Kind, int? Lane = null);

/// <summary>A place on an axis, with what is written there.</summary>
public sealed record ChartMark(double At, string Name, string Kind = "");

/// <summary>The height of a chart, with the places that are named.</summary>
public sealed record ChartScale(double Low, double High, IReadOnlyList<ChartMark> Marks)
{
    /// <summary>From nothing to a round number over the highest value, named at quarters.</summary>
    public static ChartScale Over(double highest, Func<double, string> name, double low = 0)
    {
        var step = Math.Pow(10, Math.Floor(Math.Log10(Math.Max(highest - low, 1e-6))));
        step = new[] { step / 5, step / 4, step / 2, step, 2 * step }.First(one => (highest - low) / one <= 6);
        var top = low + step * Math.Ceiling((highest - low) / step);
        return new ChartScale(low, top, [.. Enumerable.Range(0, (int)Math.Round((top - low) / step) + 1).Select(index => new ChartMark(low + index * step, name(low + index * step)))]);
    }
}
