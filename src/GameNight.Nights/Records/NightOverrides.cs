using GameNight.Planning;
using GameNight.Planning.Quantities;
using GameNight.Planning.Timeline;
using GameNight.Planning.Toppings;
using NodaTime;

namespace GameNight.Nights.Records;

/// <summary>The numbers of a night that a host may set by hand; the time of mixing is set apart.</summary>
public enum Overridable
{
    Pies,
    BallGrams,
    YeastPercentOfFlour,
    SaucePerPieGrams,
    CheesePerPieGrams,
}

/// <summary>What a host chose about late changes, each to be taken back by itself.</summary>
public enum LateChoice
{
    Redivided,
    BallsKept,
    Course,
    Rescue,
    Accepted,
}

/// <summary>Why something that was chosen is not in the plan any more without anybody having taken it back.</summary>
public enum LetGoCause
{
    /// <summary>The night is at another time, and a rescue dough of those hours does not fit it.</summary>
    NightMoved,

    /// <summary>The night is at another time, and the begun dough cannot be baked for it.</summary>
    DoughLetGo,

    /// <summary>A host took the commitment back, and with it what was chosen about late changes.</summary>
    CommitmentTakenBack,
}

/// <summary>What was chosen about late changes and is not planned any more; told until a host has seen it.</summary>
public sealed record LetGo(LateChoices Choices, LetGoCause Cause, Instant At);

/// <summary>What the host set by hand for a night. It sticks until it is taken back.</summary>
/// <param name="Split">What goes on which pie, as far as it is settled.</param>
/// <param name="Late">What was chosen once the dough was begun; goes with it.</param>
/// <param name="Busy">When nobody's hands are there, beside the hours of every week; in order.</param>
/// <param name="Gone">What went without having been taken back. Null when there is nothing to tell.</param>
/// <param name="Own">Steps of the host's own, by number.</param>
/// <param name="Helpers">Who helps on this night, by number from 1; null for as many hands as the kitchen has.</param>
public sealed record NightOverrides(
    PieCount? Pies, Grams? Ball, Share? Yeast, Grams? SaucePerPie, Grams? CheesePerPie, Instant? MixAt,
    LateChoices? Late = null, SplitByHand? Split = null, IReadOnlyList<BusyTime>? Busy = null, LetGo? Gone = null,
    IReadOnlyList<NamedOwnStep>? Own = null, IReadOnlyList<HelperOfNight>? Helpers = null)
{
    public static NightOverrides None { get; } = new(null, null, null, null, null, null);

    public ByHand ToByHand() => new(Pies, Ball, Yeast, SaucePerPie, CheesePerPie, MixAt, Split);

    /// <summary>Nothing decided is nothing kept.</summary>
    public NightOverrides Dividing(Func<SplitByHand, SplitByHand> change)
    {
        var split = change(Split ?? new SplitByHand());
        return this with { Split = split.IsNothing ? null : split };
    }

    /// <summary>The same time twice is once; none is nothing kept.</summary>
    public NightOverrides BusyAt(IEnumerable<BusyTime> times) =>
        times.Distinct().OrderBy(time => time.From).ThenBy(time => time.Until).ToList() is { Count: > 0 } busy
            ? this with { Busy = busy }
            : this with { Busy = null };

    /// <summary>An own step of a helper who is not there any more is anybody's.</summary>
    public NightOverrides HelpedBy(IReadOnlyList<HelperOfNight>? helpers) => this with
    {
        Helpers = helpers,
        Own = helpers is null ? Own : Own?.Select(own => own.Step.Who > helpers.Count ? own with { Step = own.Step with { Who = null } } : own).ToList(),
    };

    /// <param name="number">From 1; who comes after is one number less.</param>
    /// <param name="all">The helpers as the host saw them.</param>
    public NightOverrides WithoutHelper(int number, IReadOnlyList<HelperOfNight> all) => this with
    {
        Helpers = [.. all.Where((_, index) => index != number - 1)],
        Own = Own?.Select(own => own with
        {
            Step = own.Step with { Who = own.Step.Who == number ? null : own.Step.Who > number ? own.Step.Who - 1 : own.Step.Who },
        }).ToList(),
    };

    /// <summary>What a guest leaves behind who goes: a pair of hands.</summary>
    public NightOverrides WithoutHelperNamed(Func<HelperOfNight, bool> isGone) =>
        this with { Helpers = Helpers?.Select(helper => isGone(helper) ? helper.Unnamed() : helper).ToList() };

    /// <summary>It takes the place of the one with its number.</summary>
    public NightOverrides WithOwn(NamedOwnStep step) =>
        this with { Own = [.. (Own ?? []).Where(other => other.Step.Number != step.Step.Number).Append(step).OrderBy(other => other.Step.Number)] };

    /// <summary>
    /// What is left without any limit takes over the tie on that side of the one that goes; else it is done before the first pie is
    /// served.
    /// </summary>
    public NightOverrides WithoutOwn(int number)
    {
        if (Own?.FirstOrDefault(own => own.Step.Number == number) is not { Step: var gone })
        {
            return this;
        }

        List<NamedOwnStep> left = [.. Own.Where(own => own.Step.Number != number).Select(own => own with { Step = Untied(own.Step) })];
        return this with { Own = left.Count > 0 ? left : null };

        OwnStep Untied(OwnStep step)
        {
            var free = step with { After = IsToGone(step.After) ? null : step.After, Before = IsToGone(step.Before) ? null : step.Before };
            free = free.HasLimit ? free
                : IsToGone(step.After) ? free with { After = gone.After }
                : free with { Before = gone.Before };
            return free.HasLimit ? free : free with { Before = new StepTie(StepKind.Serve) };
        }

        bool IsToGone(StepTie? tie) => tie is { Step: StepKind.Own } && tie.Number == number;
    }

    /// <summary>Nothing chosen is nothing kept.</summary>
    public NightOverrides Choosing(LateChoices late) => this with { Late = late.AreNone ? null : late };

    public NightOverrides Without(LateChoice what) => Late is not { } late ? this : Choosing(what switch
    {
        LateChoice.Redivided => late with { Redivided = null },
        LateChoice.BallsKept => late with { BallsKept = null },
        LateChoice.Course => late with { Course = null },
        LateChoice.Rescue => late with { Rescue = null },
        LateChoice.Accepted => late with { Accepted = null },
    });

    /// <summary>All that was chosen goes with the dough, and is told.</summary>
    public NightOverrides WithoutDough(LetGoCause cause, Instant at) =>
        Late is { } late ? (this with { Late = null }).Telling(late, cause, at) : this;

    /// <summary>A rescue dough stays when it fits the night's new time; one that does not goes, and is told.</summary>
    public NightOverrides Moved(Instant serveAt, ReferenceTables tables, Instant at) =>
        Late?.Rescue is { } rescue && !RescuePlan.Fits(rescue, serveAt, tables)
            ? Without(LateChoice.Rescue).Telling(new LateChoices(Rescue: rescue), LetGoCause.NightMoved, at)
            : this;

    /// <summary>What nobody has seen yet is told with it.</summary>
    private NightOverrides Telling(LateChoices gone, LetGoCause cause, Instant at) => this with
    {
        Gone = new LetGo(
            new LateChoices(
                gone.Redivided ?? Gone?.Choices.Redivided,
                gone.BallsKept ?? Gone?.Choices.BallsKept,
                gone.Course ?? Gone?.Choices.Course,
                gone.Rescue ?? Gone?.Choices.Rescue,
                gone.Accepted ?? Gone?.Choices.Accepted),
            cause,
            at),
    };

    public NightOverrides Without(Overridable what) => what switch
    {
        Overridable.Pies => this with { Pies = null },
        Overridable.BallGrams => this with { Ball = null },
        Overridable.YeastPercentOfFlour => this with { Yeast = null },
        Overridable.SaucePerPieGrams => this with { SaucePerPie = null },
        Overridable.CheesePerPieGrams => this with { CheesePerPie = null },
    };

    /// <exception cref="ArgumentOutOfRangeException">The number is not one of its quantity.</exception>
    public NightOverrides With(Overridable what, double value) => what switch
    {
        Overridable.Pies => this with { Pies = new PieCount((int)Math.Round(value)) },
        Overridable.BallGrams => this with { Ball = new Grams(value) },
        Overridable.YeastPercentOfFlour => this with { Yeast = new Share(value / 100) },
        Overridable.SaucePerPieGrams => this with { SaucePerPie = new Grams(value) },
        Overridable.CheesePerPieGrams => this with { CheesePerPie = new Grams(value) },
    };
}
