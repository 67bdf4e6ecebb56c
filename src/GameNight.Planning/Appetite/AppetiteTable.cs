using GameNight.Planning.Guests;
using GameNight.Planning.Reference;

namespace GameNight.Planning.Appetite;

public sealed record PortionRow(PortionClass Portion, double Pies, double Low, double High, string Source);

public sealed record HungerRow(Hunger Hunger, double Factor, string Source);

/// <param name="Strength">Nights that this prior weighs against a guest's own; null where nothing can move it.</param>
public sealed record AttendanceRow(AnswerState Answer, double Probability, string Source, double? Strength = null);

public sealed record VariationRow(double Cv, double Low, double High, string Source);

public sealed record RunOutRow(double Usual, double Low, double High, string Source);

/// <summary>How past nights count.</summary>
/// <param name="DiscountPerNight">A night weighs this much of the one after it.</param>
/// <param name="MostNights">Older ones are forgotten.</param>
/// <param name="FewestGuests">So many guests must have nights of their own before they move what is believed of all.</param>
/// <param name="AttendanceSpread">Of the logit of a group's chance around the table's.</param>
/// <param name="AppetiteSpread">Of the logarithm of a group's appetite around the table's.</param>
/// <param name="StrengthSpread">Of the logarithm of how alike people are.</param>
public sealed record LearningRow(
    double DiscountPerNight, int MostNights, int FewestGuests, double AttendanceSpread, double AppetiteSpread,
    double StrengthSpread, string Source)
{
    internal IEnumerable<PastEvening> Remembered(GuestSnapshot guest) =>
        (guest.Past ?? []).Where(night => night.NightsAgo <= MostNights);

    internal double Weight(PastEvening night) => Math.Pow(DiscountPerNight, night.NightsAgo - 1);
}

public sealed record CourseRow(AppetiteTaken Takes, double Share, string Source);

public sealed record EveningRow(double Hours, double Factor, string Source);

/// <param name="Missed">Share of the eating time that somebody is not there, 0 to 1.</param>
/// <param name="Appetite">What is left of their appetite.</param>
public sealed record MissedRow(double Missed, double Appetite, string Source);

/// <summary>What coming late or leaving early leaves of an appetite; straight lines between the rows.</summary>
/// <param name="EatingHours">From the first pie, most pies are eaten within so many hours.</param>
public sealed record PartOfEveningRow(double EatingHours, IReadOnlyList<MissedRow> Rows, string Source);

/// <summary>A missing pie is as bad as so many left over.</summary>
public sealed record ShortageRow(double Usual, double Low, double High, string Source);

/// <summary>Priors of appetite and attendance. Appetite is in pies of <see cref="ReferenceDoughGrams"/> g of dough.</summary>
public sealed record AppetiteTable(
    double ReferenceDoughGrams,
    string ReferenceNote,
    IReadOnlyList<PortionRow> Portions,
    VariationRow BetweenPersonVariation,
    IReadOnlyList<HungerRow> Hunger,
    IReadOnlyList<AttendanceRow> Attendance,
    LearningRow Learning,
    IReadOnlyList<CourseRow> Courses,
    IReadOnlyList<EveningRow> Evening,
    PartOfEveningRow PartOfEvening,
    ShortageRow ShortageWeight,
    RunOutRow RunOutChance)
{
    internal const string File = "appetite.json";

    private readonly IReadOnlyDictionary<PortionClass, PortionRow> _portions =
        ReferenceText.OneRowEach(File, Portions, row => row.Portion);

    private readonly IReadOnlyDictionary<Hunger, HungerRow> _hunger =
        ReferenceText.OneRowEach(File, Hunger, row => row.Hunger);

    private readonly IReadOnlyDictionary<AnswerState, AttendanceRow> _attendance =
        ReferenceText.OneRowEach(File, Attendance, row => row.Answer);

    private readonly IReadOnlyDictionary<AppetiteTaken, CourseRow> _courses =
        ReferenceText.OneRowEach(File, Courses, row => row.Takes);

    public CourseRow Of(AppetiteTaken takes) => _courses[takes];
    public PortionRow Of(PortionClass portion) => _portions[portion];
    public HungerRow Of(Hunger hunger) => _hunger[hunger];
    public AttendanceRow Of(AnswerState answer) => _attendance[answer];
}
