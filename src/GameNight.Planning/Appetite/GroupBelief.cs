using GameNight.Planning.Guests;
using GameNight.Planning.Quantities;

namespace GameNight.Planning.Appetite;

/// <summary>
/// What is believed of each guest: a prior shared by everybody, moved by past nights of all once enough guests have some,
/// and by the guest's own. Without past nights it is the table.
/// </summary>
internal sealed class GroupBelief
{
    private readonly AppetiteTable _table;
    private readonly Grams _slice;
    private readonly AttendanceBelief _attendance;
    private readonly GammaPrior _usual;

    /// <param name="slice">Dough of one slice tonight.</param>
    public GroupBelief(IReadOnlyList<GuestSnapshot> guests, Grams slice, AppetiteTable table)
    {
        (_table, _slice) = (table, slice);
        _attendance = new AttendanceBelief(guests, guests.Select(guest => guest.Answer), table);
        var because = new List<Reason>(_attendance.Because);
        _usual = SharedAppetite(guests, because);
        Because = because;
    }

    /// <summary>What past nights moved for everybody.</summary>
    public IReadOnlyList<Reason> Because { get; }

    public double Chance(GuestSnapshot guest) => _attendance.Chance(guest, guest.Answer);

    /// <summary>Slices on a usual evening when usually hungry. A companion's is what everybody's is.</summary>
    public GammaPrior Appetite(GuestSnapshot guest, Eater eater)
    {
        var prior = Prior(eater.Portion);
        return eater.Id == guest.Id
            ? prior.After(Told(guest)).After(BoundsOf(guest))
            : prior;
    }

    /// <summary>What past nights moved for a guest; null when they say nothing of tonight.</summary>
    public PastCounted? Counted(GuestSnapshot guest)
    {
        var self = guest.Eaters.FirstOrDefault(eater => eater.Id == guest.Id);
        var (answered, bounds) = (_attendance.Nights(guest, guest.Answer), BoundsOf(guest).Count);
        var told = self is null ? 0 : TellingNights(guest).Count();
        if (answered + (self is null ? 0 : told + bounds) == 0)
        {
            return null;
        }

        var row = _table.Of(guest.Answer);
        return new PastCounted(
            guest.Id,
            answered,
            new Share(row.Probability),
            new Share(Chance(guest)),
            told,
            bounds,
            self is null ? 0 : MeanSlices(self.Portion),
            self is null ? 0 : Appetite(guest, self).Mean);
    }

    private double MeanSlices(PortionClass portion) => _table.Of(portion).Pies * _table.ReferenceDoughGrams / _slice.Value;

    private GammaPrior Prior(PortionClass portion) => _usual with { Rate = _usual.Rate / MeanSlices(portion) };

    /// <summary>Of everybody's appetite over that of their portion class. Nights that ran out say too little of it and stay out.</summary>
    private GammaPrior SharedAppetite(IReadOnlyList<GuestSnapshot> guests, List<Reason> because)
    {
        var cv = _table.BetweenPersonVariation.Cv;
        var prior = new GammaPrior(1 / (cv * cv), 1 / (cv * cv));
        var seen = guests
            .Select(guest => guest.Eaters.FirstOrDefault(eater => eater.Id == guest.Id) is { } self ? Told(guest, MeanSlices(self.Portion)) : default)
            .Where(one => one.Exposure > 0)
            .ToList();
        if (seen.Count < _table.Learning.FewestGuests)
        {
            return prior;
        }

        var fitted = GammaPrior.Fitted(seen, prior, new Hyperprior(
            0, Math.Log(prior.Shape), _table.Learning.AppetiteSpread, _table.Learning.StrengthSpread));
        because.Add(new AppetiteFromPastNights(seen.Count, new Share(fitted.Mean)));
        return fitted;
    }

    private IEnumerable<PastEvening> TellingNights(GuestSnapshot guest) =>
        _table.Learning.Remembered(guest).Where(night => night is { Slices: not null, Came: not false } && night.RanOut != true);

    /// <param name="usual">What counts as an exposure of 1 over this.</param>
    private Eaten Told(GuestSnapshot guest, double usual = 1)
    {
        var nights = TellingNights(guest).ToList();
        return new Eaten(
            nights.Sum(night => _table.Learning.Weight(night) * night.Slices!.Value),
            nights.Sum(night => _table.Learning.Weight(night) * usual * Exposure(night)));
    }

    private List<AtLeast> BoundsOf(GuestSnapshot guest) =>
    [
        .. _table.Learning.Remembered(guest)
            .Where(night => night is { Slices: > 0, Came: not false, RanOut: true })
            .Select(night => new AtLeast(night.Slices!.Value, Exposure(night), _table.Learning.Weight(night))),
    ];

    /// <summary>A usual appetite of tonight's slices is so many of that night's slices and of that night's appetite.</summary>
    private double Exposure(PastEvening night) =>
        _table.Of(night.Hunger ?? Hunger.AsUsual).Factor * (night.Appetite?.Value ?? 1) * (night.Slice is { } then ? _slice / then : 1);
}
