using GameNight.Planning.Quantities;
using GameNight.Planning.Reference;
using NodaTime;

namespace GameNight.Planning.Sauce;

/// <summary>What was done to a dish with alcohol in it.</summary>
public enum AlcoholCooking
{
    /// <summary>Stirred into boiling liquid off the heat.</summary>
    StirredOffHeat,

    /// <summary>Stirred in, then baked or simmered.</summary>
    Simmered,

    /// <summary>Baked without being stirred in.</summary>
    NotStirred,

    Flamed,

    /// <summary>Stored overnight without heat.</summary>
    NoHeat,
}

public sealed record AlcoholRow(AlcoholCooking Cooking, double Minutes, double Retained, string Source);

/// <summary>
/// How much of the alcohol stays, by the published table: linear between its rows, from what is stirred into boiling liquid
/// off the heat (no minutes) on; what simmers longer than the last row keeps as much as that row.
/// </summary>
public sealed class AlcoholRetention
{
    private readonly List<AlcoholRow> _rows;

    internal AlcoholRetention(string file, IEnumerable<AlcoholRow> rows)
    {
        _rows =
        [
            .. rows.Where(row => row.Cooking is AlcoholCooking.StirredOffHeat or AlcoholCooking.Simmered).OrderBy(row => row.Minutes),
        ];
        if (_rows is not [{ Minutes: 0 }, _, ..])
        {
            throw new ReferenceTableException(file, "needs alcohol stirred in off the heat at 0 minutes, and simmered.");
        }
    }

    /// <summary>Share of the alcohol that is left after so long.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The time is negative.</exception>
    public Share After(Duration simmer)
    {
        var minutes = simmer.TotalMinutes;
        if (minutes < 0)
        {
            throw new ArgumentOutOfRangeException(nameof(simmer), minutes, "A simmer is 0 minutes or longer.");
        }

        var next = _rows.FindIndex(row => row.Minutes >= minutes);
        if (next <= 0)
        {
            return new Share(next == 0 ? _rows[0].Retained : _rows[^1].Retained);
        }

        var (from, to) = (_rows[next - 1], _rows[next]);
        return new Share(from.Retained + ((to.Retained - from.Retained) * (minutes - from.Minutes) / (to.Minutes - from.Minutes)));
    }
}
