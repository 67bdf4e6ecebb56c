using GameNight.Planning.Reference;
namespace GameNight.Planning.Timeline;

/// <summary>The rows of the table of step durations.</summary>
public enum StepName
{
    Shop,
    Preferment,
    Mix,
    KneadByHand,
    KneadMixer,
    BulkRest,
    BallEach,
    Temper,
    Sauce,
    GrateCheese,
    PrepareToppings,
    SecondMix,
    Preheat,
    Soak,
    Shape,
    Top,
    Bake,
    Recovery,
    Rack,
    Serve,
    Own,
}

/// <param name="Skill">Whose work it is; of steps without hands it says nothing. Common practice, no source.</param>
/// <param name="Band">Four times in five it takes between minutes divided by this and minutes times this; 1 to 3.</param>
public sealed record StepRow(StepName Step, double Minutes, double Band, StepSkill Skill, string Source);

public sealed record ColdFermentRow(double ShortestHours, double WantedHours, double LongestHours, string Source);

/// <summary>A dough that is made on the day, from mixing to serving.</summary>
public sealed record RescueDoughRow(double ShortestHours, double WantedHours, double LongestHours, string Source);

public sealed record RestRow(double Minutes, string Source);

/// <summary>Expected durations of the steps and the window of the cold ferment.</summary>
public sealed record StepTable(
    IReadOnlyList<StepRow> Steps, ColdFermentRow ColdFerment, RescueDoughRow RescueDough, RestRow RestAfterBalling,
    IReadOnlyList<TroubleRow> Troubles)
{
    internal const string File = "steps.json";

    private readonly IReadOnlyDictionary<StepName, StepRow> _steps =
        ReferenceText.OneRowEach(File, Steps, row => row.Step);

    private readonly IReadOnlyDictionary<StepTrouble, TroubleRow> _troubles =
        ReferenceText.OneRowEach(File, Troubles, row => row.Trouble);

    public TroubleRow Of(StepTrouble trouble) => _troubles[trouble];

    /// <summary>What only who does everything does. How it is kneaded makes no difference.</summary>
    public IReadOnlyList<StepKind> ForCooks => [.. Enum.GetValues<StepKind>().Where(kind => _steps[OnTime.NameOf(kind, isKneadedByHand: true)].Skill == StepSkill.Cook)];

    public double BandOf(StepName step) => _steps[step].Band;

    public double MinutesOf(StepName step) => _steps[step].Minutes;
}
