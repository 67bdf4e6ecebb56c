using System.Globalization;
using System.Security.Cryptography;
using GameNight.Nights.Records;
using GameNight.Planning;
using GameNight.Planning.Timeline;
using GameNight.Web.Wording;
using GameNight.Web.Wording.Texts;
using Microsoft.AspNetCore.Components;
using NodaTime;

namespace GameNight.Web.Host.Timeline;

/// <summary>Which limits the form asks for.</summary>
public enum OwnStepWhen
{
    At,
    Between,
    After,
    Before,
    BetweenSteps,
}

public sealed partial class OwnStepsPanel
{
    private static readonly StepKind[] OfDough = [StepKind.Shop, StepKind.Mix, StepKind.Knead, StepKind.Ball];

    private bool _isOpen;
    private int? _number;
    private string _name = "";
    private string _minutes = "";
    private bool _needsHands = true;
    private string _who = "";
    private string _takes = "";
    private OwnStepWhen _when = OwnStepWhen.At;
    private string _from = "";
    private string _until = "";
    private string _after = Value(new StepTie(StepKind.Shop));
    private string _before = Value(new StepTie(StepKind.Preheat));
    private string? _nameProblem;
    private string? _minutesProblem;
    private string? _problem;

    [Inject] private ReferenceTables Tables { get; init; } = null!;

    [Parameter, EditorRequired] public IReadOnlyList<NamedOwnStep> Steps { get; set; } = [];

    [Parameter, EditorRequired] public HostTimeline Timeline { get; set; } = null!;

    [Parameter, EditorRequired] public Instant ServeAt { get; set; }

    [Parameter, EditorRequired] public Instant Now { get; set; }

    [Parameter, EditorRequired] public string Zone { get; set; } = "UTC";

    [Parameter] public People People { get; set; } = People.Unnamed;

    /// <summary>Pairs of hands, the host's counted in.</summary>
    [Parameter] public int Hands { get; set; } = 1;

    /// <summary>The dough is committed: nothing new comes before it.</summary>
    [Parameter] public bool IsBegun { get; set; }

    [Parameter] public bool MayChange { get; set; }

    [Parameter] public bool IsBusy { get; set; }

    /// <summary>Keeps a step, in the place of the one with its number; gives what was refused, or null.</summary>
    [Parameter, EditorRequired] public Func<NamedOwnStep, Task<string?>> Keep { get; set; } = null!;

    [Parameter] public EventCallback<int> Drop { get; set; }

    protected override void OnInitialized() => Clear();

    private OwnStepNames Names => new(Steps);

    private void Clear()
    {
        (_isOpen, _number, _name, _minutes) = (false, null, "", QuantityText.Exact(Tables.Steps.MinutesOf(StepName.Own)));
        (_who, _takes) = ("", "");
        (_needsHands, _when, _from, _until, _nameProblem, _minutesProblem, _problem) = (true, OwnStepWhen.At, "", "", null, null, null);
    }

    private void Open(NamedOwnStep own)
    {
        Clear();
        var step = own.Step;
        (_isOpen, _number, _name, _needsHands) = (true, step.Number, own.Name, step.NeedsHands);
        _minutes = QuantityText.Exact(step.Length.TotalMinutes);
        _who = step.Who?.ToString(CultureInfo.InvariantCulture) ?? "";
        _takes = step.Takes?.ToString() ?? "";
        _when = WhenOf(step);
        (_from, _until) = (Typed(step.From), Typed(step.Until));
        (_after, _before) = (step.After is { } after ? Value(after) : _after, step.Before is { } before ? Value(before) : _before);
    }

    private static OwnStepWhen WhenOf(OwnStep step) => step switch
    {
        { After: not null, Before: not null } => OwnStepWhen.BetweenSteps,
        { After: not null } => OwnStepWhen.After,
        { Before: not null } => OwnStepWhen.Before,
        _ => step.Until - step.From == step.Length ? OwnStepWhen.At : OwnStepWhen.Between,
    };

    private async Task KeepAsync()
    {
        (_nameProblem, _minutesProblem, _problem) = (null, null, null);
        var (name, longest) = (_name.Trim(), (int)OwnStep.Longest.TotalMinutes);
        var isWhole = int.TryParse(_minutes, NumberStyles.None, CultureInfo.InvariantCulture, out var minutes);
        _nameProblem = name.Length is 0 or > NamedOwnStep.LongestName ? Phrase.Fill(TimelinePages.OwnNeedsName, NamedOwnStep.LongestName) : null;
        _minutesProblem = isWhole && minutes >= 1 && minutes <= longest ? null : ProblemText.TypeWholeNumber(1, longest, "ownSteps.lengthMinutes");
        _isOpen = true;
        if (_nameProblem is not null || _minutesProblem is not null || Limited(minutes) is not { } step)
        {
            return;
        }

        IReadOnlyList<OwnStep> all = [.. Steps.Select(own => own.Step).Where(own => own.Number != step.Number), step];
        if (OwnStepCheck.Problems(all) is [var problem, ..])
        {
            _problem = problem.Fault == SnapshotFault.Circle
                ? Phrase.Fill(TimelinePages.OwnCircle, name)
                : problem.Fault == SnapshotFault.WrongCount ? Phrase.Fill(TimelinePages.OwnTooMany, OwnStep.Most) : ProblemText.SayHere(problem, Measures.Metric);
            return;
        }

        await SaveAsync(new NamedOwnStep(name, step));
    }

    private async Task SaveAsync(NamedOwnStep own)
    {
        if (await Keep(own) is { } refused)
        {
            _problem = refused;
        }
        else
        {
            Clear();
        }
    }

    /// <summary>The step as the form says it; null with the problem said.</summary>
    private OwnStep? Limited(int minutes)
    {
        var step = new OwnStep(_number ?? RandomNumberGenerator.GetInt32(1, OwnStep.HighestNumber + 1), Duration.FromMinutes(minutes), _needsHands,
            Who: _needsHands && Hands > 1 && int.TryParse(_who, NumberStyles.None, CultureInfo.InvariantCulture, out var who) ? who : null,
            Takes: Enum.TryParse<Station>(_takes, out var station) ? station : null);
        if (_when is not (OwnStepWhen.At or OwnStepWhen.Between))
        {
            return step with { After = _when == OwnStepWhen.Before ? null : TieOf(_after), Before = _when == OwnStepWhen.After ? null : TieOf(_before) };
        }

        var (from, until) = (TypedMoments.Parse(_from), TypedMoments.Parse(_until));
        if (!from.Success || (_when == OwnStepWhen.Between && !until.Success))
        {
            _problem = _when == OwnStepWhen.At ? TimelinePages.ChooseDateAndTime : TimelinePages.BusyGiveBoth;
            return null;
        }

        var begins = NightTime.ToInstant(from.Value, Zone);
        step = step with { From = begins, Until = _when == OwnStepWhen.At ? begins + step.Length : NightTime.ToInstant(until.Value, Zone) };
        _problem = step.Until - step.From < step.Length ? TimelinePages.OwnTooShort
            : !new BusyTime(begins, step.Until!.Value, IsAtTable: false).IsOf(ServeAt)
                ? Phrase.Fill(TimelinePages.BusyOutOfReach, QuantityText.Moment(ServeAt - BusyTime.FurthestBefore, Zone), QuantityText.Moment(ServeAt + BusyTime.FurthestAfter, Zone))
            : step.Until - step.Length < Now ? TimelinePages.OwnHasPassed
            : null;
        return _problem is null ? step : null;
    }

    private async Task DropAsync(NamedOwnStep own)
    {
        if (_number == own.Step.Number)
        {
            Clear();
        }

        await Drop.InvokeAsync(own.Step.Number);
    }

    private Task MoveAsync(NamedOwnStep own, Instant to) => SaveAsync(own with
    {
        Step = own.Step with { From = to, Until = to + own.Step.Length, After = null, Before = null },
    });

    private Instant? RoomFor(OwnStep step) =>
        Timeline.Conflicts.OfType<OwnStepFindsNoRoom>().FirstOrDefault(conflict => conflict.Number == step.Number)?.NearestFree;

    /// <summary>Where the plan has it.</summary>
    private string Stands(OwnStep step) =>
        Timeline.Steps.FirstOrDefault(placed => placed.Kind == StepKind.Own && placed.Number == step.Number) is { } at
            ? Phrase.Fill(TimelinePages.OwnPlanned, QuantityText.Moment(at.Start, Zone))
            : Timeline.Conflicts.OfType<OwnStepFindsNoRoom>().Any(conflict => conflict.Number == step.Number) ? TimelinePages.OwnNoRoom
            : TimelinePages.OwnNotPlanned;

    private string Said(OwnStep step) => WordText.List(
    [
        QuantityText.Length(step.Length),
        step is { NeedsHands: true, Who: > 0 and { } who } ? People.Name(who) : StepNames.Who(step.NeedsHands),
        .. step.Takes is { } station ? [WordText.Say(station)] : Array.Empty<string>(),
        WhenOf(step) switch
        {
            OwnStepWhen.BetweenSteps => Phrase.Fill(TimelinePages.OwnSaidBetweenSteps, NameOf(step.After!), NameOf(step.Before!)),
            OwnStepWhen.After => Phrase.Fill(TimelinePages.OwnSaidAfter, NameOf(step.After!)),
            OwnStepWhen.Before => Phrase.Fill(TimelinePages.OwnSaidBefore, NameOf(step.Before!)),
            OwnStepWhen.At => Phrase.Fill(TimelinePages.OwnSaidAt, QuantityText.Moment(step.From!.Value, Zone)),
            OwnStepWhen.Between => Phrase.Fill(TimelinePages.OwnSaidBetween, QuantityText.Moment(step.From!.Value, Zone), QuantityText.Moment(step.Until!.Value, Zone)),
        },
    ]);

    private string NameOf(StepTie tie) => Names.Of(tie.Step, tie.Number ?? 0);

    private IEnumerable<(string Value, string Name)> Ties(bool isBefore) =>
    [
        .. StepTie.Kinds.Where(kind => !(isBefore && IsBegun && OfDough.Contains(kind))).Select(kind => (Value(new StepTie(kind)), WordText.Say(kind))),
        .. Steps.Select(own => (Value(new StepTie(StepKind.Own, own.Step.Number)), own.Name)),
    ];

    private static string Value(StepTie tie) => tie.Number is { } number ? number.ToString(CultureInfo.InvariantCulture) : tie.Step.ToString();

    private static StepTie TieOf(string value) => int.TryParse(value, NumberStyles.None, CultureInfo.InvariantCulture, out var number)
        ? new StepTie(StepKind.Own, number)
        : new StepTie(Enum.Parse<StepKind>(value));

    private string Typed(Instant? at) => at is { } moment ? TypedMoments.Show(QuantityText.Local(moment, Zone)) : "";
}
