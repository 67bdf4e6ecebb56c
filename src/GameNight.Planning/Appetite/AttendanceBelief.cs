using GameNight.Planning.Guests;
using GameNight.Planning.Quantities;

namespace GameNight.Planning.Appetite;

/// <summary>
/// How likely a guest with an answer comes: a prior shared by everybody, moved by past nights of all once enough guests have
/// some, and by the guest's own.
/// </summary>
internal sealed class AttendanceBelief
{
    private readonly AppetiteTable _table;
    private readonly Dictionary<AnswerState, BetaPrior> _chances = [];

    /// <param name="answers">Answers that are asked about.</param>
    public AttendanceBelief(IReadOnlyList<GuestSnapshot> guests, IEnumerable<AnswerState> answers, AppetiteTable table)
    {
        _table = table;
        var because = new List<Reason>();
        foreach (var row in answers.Distinct().Order().Select(table.Of).Where(row => row.Strength is not null))
        {
            _chances[row.Answer] = Shared(row, guests, because);
        }

        Because = because;
    }

    /// <summary>What past nights moved for everybody.</summary>
    public IReadOnlyList<Reason> Because { get; }

    /// <param name="answer">One of those that were asked about.</param>
    public double Chance(GuestSnapshot guest, AnswerState answer) => _chances.TryGetValue(answer, out var shared)
        ? shared.After(Of(guest, answer)).Mean
        : _table.Of(answer).Probability;

    /// <summary>Nights of the guest with that answer; 0 where nothing can move what is believed.</summary>
    public int Nights(GuestSnapshot guest, AnswerState answer) =>
        _chances.ContainsKey(answer) ? AnsweredSo(guest, answer).Count() : 0;

    private BetaPrior Shared(AttendanceRow row, IReadOnlyList<GuestSnapshot> guests, List<Reason> because)
    {
        var prior = BetaPrior.Of(row.Probability, row.Strength!.Value);
        var seen = guests.Select(guest => Of(guest, row.Answer)).Where(one => one.Nights > 0).ToList();
        if (seen.Count < _table.Learning.FewestGuests)
        {
            return prior;
        }

        var fitted = BetaPrior.Fitted(seen, prior, new Hyperprior(
            Math.Log(prior.Alpha / prior.Beta), Math.Log(prior.Strength), _table.Learning.AttendanceSpread, _table.Learning.StrengthSpread));
        because.Add(new ChanceFromPastNights(row.Answer, seen.Count, new Share(prior.Mean), new Share(fitted.Mean)));
        return fitted;
    }

    private Attended Of(GuestSnapshot guest, AnswerState answer)
    {
        var nights = AnsweredSo(guest, answer).ToList();
        return new Attended(nights.Where(night => night.Came == true).Sum(_table.Learning.Weight), nights.Sum(_table.Learning.Weight));
    }

    private IEnumerable<PastEvening> AnsweredSo(GuestSnapshot guest, AnswerState answer) =>
        _table.Learning.Remembered(guest).Where(night => night.Answer == answer && night.Came is not null);
}
