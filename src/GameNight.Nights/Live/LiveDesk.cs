using GameNight.Nights.ForHosts;
using GameNight.Nights.Membership;
using GameNight.Nights.Plans;
using GameNight.Nights.Records;
using GameNight.Nights.Storage;
using GameNight.Planning;
using GameNight.Planning.Live;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace GameNight.Nights.Live;

/// <summary>A night while it is on.</summary>
/// <param name="Plan">With names, items and the night it was made from.</param>
/// <param name="Evening">Null while there is no plan with pies on the table, or while it is being made anew.</param>
/// <param name="Marks">What was tapped and not taken back, first tapped first.</param>
public sealed record LiveView(PlanView Plan, LiveEvening? Evening, IReadOnlyList<LiveMark> Marks, Instant Now)
{
    /// <summary>What would be taken back; null when nothing was tapped.</summary>
    public LiveMark? LastTap => Marks.Count > 0 ? Marks[^1] : null;
}

/// <summary>What came of a tap.</summary>
public abstract record LiveResult
{
    private LiveResult()
    {
    }

    /// <summary>It counts, by this tap or by an earlier one of the same id.</summary>
    public sealed record Counted : LiveResult;

    /// <summary>Somebody tapped the same before; nothing changed.</summary>
    public sealed record AlreadySo(LiveMark Before) : LiveResult;

    /// <summary>A value is outside its range; nothing was kept.</summary>
    public sealed record Refused(string Field) : LiveResult;

    /// <summary>The night has no room for more taps.</summary>
    public sealed record Full(int Most) : LiveResult;

    /// <summary>There is nothing to take back.</summary>
    public sealed record Nothing : LiveResult;

    public sealed record Gone : LiveResult;
}

/// <summary>The night itself: taps of hosts, kept one by one, and how the night stands by them.</summary>
public sealed class LiveDesk
{
    public const int MostTaps = 2000;
    public const int LongestName = 40;
    private const int LongestStep = 40;
    private const int MostSteps = 2000;

    /// <summary>Somebody stands there and waits for the answer.</summary>
    private static readonly Effort SoonEnough = new(4);

    /// <summary>Nothing of an evening is further off.</summary>
    private static readonly Duration Furthest = Duration.FromHours(24);

    private readonly GroupSessions _sessions;
    private readonly PlanDesk _plans;
    private readonly NightPlanner _planner;
    private readonly NightChanges _changes;
    private readonly IClock _clock;

    internal LiveDesk(GroupSessions sessions, PlanDesk plans, NightPlanner planner, NightChanges changes, IClock clock)
    {
        _sessions = sessions;
        _plans = plans;
        _planner = planner;
        _changes = changes;
        _clock = clock;
    }

    /// <returns>Null when the night is not in this group.</returns>
    public async Task<LiveView?> LiveAsync(GroupAccess access, NightId id, CancellationToken cancellation)
    {
        if (await _plans.PlanAsync(access, id, cancellation) is not { } view)
        {
            return null;
        }

        await using var session = await _sessions.OpenAsync(access, cancellation);
        var marks = await MarksAsync(session, id, cancellation);
        var now = _clock.GetCurrentInstant();
        return new LiveView(view, view.Plan is { } plan ? _planner.Live(view.Night, plan, Counting(view, marks), now) : null, marks, now);
    }

    /// <summary>Another order of what is left, where the kept one breaks a limit or comes late; worked out beside the page.</summary>
    /// <returns>Null when none is needed, or none better was found soon.</returns>
    public Task<LiveOrder?> AnotherOrderAsync(LiveView view, CancellationToken cancellation) => view is { Plan: { Plan: { } plan } plans }
        ? Task.Run(() => _planner.AnotherOrder(plans.Night, plan, Counting(plans, view.Marks), view.Now, SoonEnough, cancellation), cancellation)
        : Task.FromResult<LiveOrder?>(null);

    /// <summary>Safe to repeat, and on two devices at once: the first tap of a step counts, the second is told so.</summary>
    /// <param name="mark">Its moment is the desk's own: clocks of phones differ.</param>
    public async Task<LiveResult> TapAsync(GroupAccess access, NightId id, Guid tap, LiveMark mark, CancellationToken cancellation)
    {
        access.Demand(HostRole.Cook);
        var now = _clock.GetCurrentInstant();
        var field = Problem(mark) ?? (mark.Until < now || mark.Until > now + Furthest ? "until" : null);
        if (field is not null)
        {
            return new LiveResult.Refused(field);
        }

        await using var session = await _sessions.OpenAsync(access, cancellation);
        await DoughCommitments.TakeTurnAsync(session, id, cancellation);
        if (!await session.Db.Nights.AnyAsync(night => night.Id == id, cancellation))
        {
            return new LiveResult.Gone();
        }

        var kept = await session.Db.LiveTaps.AsNoTracking().Where(row => row.NightId == id).ToListAsync(cancellation);
        if (kept.Exists(row => row.Id == tap))
        {
            return new LiveResult.Counted();
        }

        if (mark.Kind is LiveMarkKind.StepBegun or LiveMarkKind.StepDone or LiveMarkKind.ClockHeard
            && kept.Find(row => row.TakenBackAt is null && row.Mark.Kind == mark.Kind && row.Mark.Step == mark.Step) is { } before)
        {
            return new LiveResult.AlreadySo(before.Mark);
        }

        if (kept.Count >= MostTaps)
        {
            return new LiveResult.Full(MostTaps);
        }

        session.Db.LiveTaps.Add(new LiveTap(access.GroupId, id, tap, mark with { Id = tap.ToString("N"), At = now }, access.HostId));
        await session.CommitAsync(cancellation);
        _changes.Publish(id);
        return new LiveResult.Counted();
    }

    /// <summary>Takes the last tap back, whoever made it; what it said is as if it had never been tapped.</summary>
    /// <param name="last">The tap that the host saw as the last: another one that came since is left alone.</param>
    public async Task<LiveResult> TakeBackAsync(GroupAccess access, NightId id, string last, CancellationToken cancellation)
    {
        access.Demand(HostRole.Cook);
        await using var session = await _sessions.OpenAsync(access, cancellation);
        await DoughCommitments.TakeTurnAsync(session, id, cancellation);
        var rows = await session.Db.LiveTaps.Where(row => row.NightId == id && row.TakenBackAt == null).ToListAsync(cancellation);
        if (rows.Find(row => row.Mark.Id == last) is not { } tap)
        {
            return new LiveResult.Nothing();
        }

        tap.TakeBack(_clock.GetCurrentInstant());
        await session.CommitAsync(cancellation);
        _changes.Publish(id);
        return new LiveResult.Counted();
    }

    /// <summary>An order was taken for the times of a plan: once there is another plan it says nothing.</summary>
    private static IReadOnlyList<LiveMark> Counting(PlanView plan, IReadOnlyList<LiveMark> marks) =>
        [.. marks.Where(mark => mark.Kind != LiveMarkKind.NewOrder || plan.MadeAt is not { } made || mark.At >= made)];

    private static async Task<IReadOnlyList<LiveMark>> MarksAsync(GroupSession session, NightId id, CancellationToken cancellation) =>
    [
        .. (await session.Db.LiveTaps.AsNoTracking().Where(row => row.NightId == id && row.TakenBackAt == null).ToListAsync(cancellation))
            .OrderBy(row => row.At).ThenBy(row => row.Id).Select(row => row.Mark),
    ];

    /// <summary>The field that is missing or outside its range, or null.</summary>
    internal static string? Problem(LiveMark mark) => mark switch
    {
        { Step.Length: > LongestStep } => "step",
        { Name.Length: > LongestName } => "name",
        { Kind: LiveMarkKind.StepBegun or LiveMarkKind.StepDone or LiveMarkKind.ClockHeard or LiveMarkKind.WentWrong, Step: null or "" } => "step",
        { Kind: LiveMarkKind.WentWrong, Trouble: null } => "trouble",
        { Kind: LiveMarkKind.HandsNow, Hands: null or < 1 or > 8 } => "hands",
        { Kind: LiveMarkKind.ClockSet, Name: null or "" } => "name",
        { Kind: LiveMarkKind.ClockSet or LiveMarkKind.NotBefore, Until: null } => "until",
        { Kind: LiveMarkKind.NewOrder, Starts: null or { Count: 0 or > MostSteps } } => "starts",
        { Starts: { } starts } when starts.Keys.Any(step => step.Length > LongestStep) => "starts",
        _ => null,
    };
}
