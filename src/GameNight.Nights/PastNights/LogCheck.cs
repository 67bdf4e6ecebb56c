using System.Globalization;
using GameNight.Nights.Records;
using GameNight.Planning.Quantities;

namespace GameNight.Nights.PastNights;

/// <summary>Checks what a host writes down after a night before anything is kept.</summary>
public static class LogCheck
{
    public const int MostHeads = 1 + NightFacts.MostCompanionsAllowed;

    /// <summary>The same facts without spaces around words, without doubles, and without pies of which nothing is said.</summary>
    public static BakeLogFacts Tidy(BakeLogFacts facts) => facts with
    {
        Came = [.. facts.Came.DistinctBy(row => row.GuestId).OrderBy(row => row.GuestId)],
        Pies = [.. facts.Pies
            .Select(pie => pie with { Remark = pie.Remark.Trim() })
            .Where(pie => pie.SlicesLeft is not null || pie.Remark.Length > 0 || pie.Won)
            .DistinctBy(pie => pie.Number).OrderBy(pie => pie.Number)],
        ToChange = facts.ToChange.Trim(),
    };

    /// <param name="pies">Numbers of the pies that were planned.</param>
    public static IReadOnlyList<LogProblem> Problems(
        BakeLogFacts facts, int slicesPerPie, IReadOnlySet<int> pies, IReadOnlySet<Guid> guests)
    {
        var problems = new List<LogProblem>();
        foreach (var row in facts.Came)
        {
            if (!guests.Contains(row.GuestId))
            {
                problems.Add(new(LogField.Heads, $"{row.GuestId:N}", LogFault.UnknownGuest));
            }

            Range(LogField.Heads, $"{row.GuestId:N}", row.Heads, MostHeads);
        }

        Range(LogField.Left, null, facts.SlicesLeft, (facts.Baked?.Value ?? PieCount.Highest) * slicesPerPie);
        foreach (var pie in facts.Pies)
        {
            var number = pie.Number.ToString(CultureInfo.InvariantCulture);
            if (!pies.Contains(pie.Number))
            {
                problems.Add(new(LogField.LeftOfPie, number, LogFault.UnknownPie));
            }

            Range(LogField.LeftOfPie, number, pie.SlicesLeft, slicesPerPie);
            TooLong(LogField.Remark, number, pie.Remark, BakeLogFacts.LongestRemark);
        }

        var ofPies = facts.Pies.Sum(pie => pie.SlicesLeft ?? 0);
        if (facts.SlicesLeft < ofPies)
        {
            problems.Add(new(LogField.Left, null, LogFault.LessThanItsPies, ofPies));
        }

        TooLong(LogField.ToChange, null, facts.ToChange, BakeLogFacts.LongestText);
        return problems;

        void Range(LogField field, string? subject, double? given, double high)
        {
            if (given is { } value && !(value >= 0 && value <= high))
            {
                problems.Add(new(field, subject, LogFault.OutOfRange, 0, high));
            }
        }

        void TooLong(LogField field, string? subject, string text, int longest)
        {
            if (text.Length > longest)
            {
                problems.Add(new(field, subject, LogFault.TooLong, 0, longest));
            }
        }
    }
}
