using GameNight.Planning.Guests;
using GameNight.Planning.Reference;

namespace GameNight.Planning.Appetite;

public sealed record PortionRow(PortionClass Portion, double Pies, double Low, double High, string Source);

public sealed record HungerRow(Hunger Hunger, double Factor, string Source);

public sealed record AttendanceRow(AnswerState Answer, double Probability, string Source);

public sealed record VariationRow(double Cv, double Low, double High, string Source);

public sealed record RunOutRow(double Usual, double Low, double High, string Source);

/// <summary>Priors of appetite and attendance. Appetite is in pies of <see cref="ReferenceDoughGrams"/> g of dough.</summary>
public sealed record AppetiteTable(
    double ReferenceDoughGrams,
    string ReferenceNote,
    IReadOnlyList<PortionRow> Portions,
    VariationRow BetweenPersonVariation,
    IReadOnlyList<HungerRow> Hunger,
    IReadOnlyList<AttendanceRow> Attendance,
    RunOutRow RunOutChance)
{
    internal const string File = "appetite.json";

    private readonly IReadOnlyDictionary<PortionClass, PortionRow> _portions =
        ReferenceText.OneRowEach(File, Portions, row => row.Portion);

    private readonly IReadOnlyDictionary<Hunger, HungerRow> _hunger =
        ReferenceText.OneRowEach(File, Hunger, row => row.Hunger);

    private readonly IReadOnlyDictionary<AnswerState, AttendanceRow> _attendance =
        ReferenceText.OneRowEach(File, Attendance, row => row.Answer);

    public PortionRow Of(PortionClass portion) => _portions[portion];
    public HungerRow Of(Hunger hunger) => _hunger[hunger];
    public AttendanceRow Of(AnswerState answer) => _attendance[answer];
}
