using GameNight.Nights.ForHosts;
using GameNight.Nights.Live;
using GameNight.Nights.Membership;
using GameNight.Nights.Records;
using GameNight.Planning;
using GameNight.Planning.Guests;
using GameNight.Planning.Live;
using GameNight.Planning.Timeline;
using GameNight.Planning.Toppings;
using GameNight.Web.Drawings;
using GameNight.Web.Host.Print;
using GameNight.Web.Wording;
using GameNight.Web.Wording.Texts;
using Microsoft.AspNetCore.Components;
using Microsoft.JSInterop;
using NodaTime;

namespace GameNight.Web.Host.Live;

/// <summary>The night itself. Nothing is decided here: a tap is kept, and the night stands as the planner says.</summary>
public sealed partial class LivePage : IAsyncDisposable
{
    private const int ThenShown = 3;

    [CascadingParameter] private Measures Measures { get; set; } = Measures.Metric;

    /// <summary>What is due by the clock alone is looked at this often; a clock that rings is looked at on the second.</summary>
    private static readonly Duration BetweenLooks = Duration.FromSeconds(20);

    /// <summary>Time alone makes another order worth a look this often; a tap does at once.</summary>
    private static readonly Duration BetweenOrders = Duration.FromMinutes(2);

    private static readonly Duration Shortly = Duration.FromMilliseconds(200);

    private LiveView? _view;
    private string? _said;
    private LiveOrder? _order;
    private (string? Tap, Instant? Made, Instant At) _lookedForOrder;
    private IReadOnlyDictionary<string, Composition>? _labels;
    private IReadOnlySet<string> _bases = new HashSet<string>();
    private OwnStepNames _own = OwnStepNames.None;
    private IJSObjectReference? _module;

    [Inject] private LiveDesk Lives { get; init; } = null!;

    [Inject] private KitchenDesk Kitchens { get; init; } = null!;

    [Inject] private ReferenceTables Tables { get; init; } = null!;

    [Inject] private IClock Clock { get; init; } = null!;

    [Inject] private IJSRuntime Script { get; init; } = null!;

    private string? LastTap => _view is { LastTap: { } tap, Evening: { } live }
        ? LiveText.Say(tap, live.Steps.FirstOrDefault(step => step.Id == tap.Step), _own)
        : null;

    protected override async Task<bool> LoadAsync(GroupAccess access)
    {
        if (!await base.LoadAsync(access))
        {
            return false;
        }

        _own = new OwnStepNames(View!.Overrides.Own);
        _view = await Lives.LiveAsync(access, NightId, Closed);
        if (_view is not null && _labels is null)
        {
            var menu = await Kitchens.MenuAsync(access, Closed);
            (_labels, _bases) = (HouseLabels.Of(_view.Plan.Night, menu, Tables), WhiteBases.Of(menu));
        }

        _ = LookForOrderAsync();
        return _view is not null;
    }

    /// <summary>Beside the page: what is next never waits for it.</summary>
    private async Task LookForOrderAsync()
    {
        if (_view is not { Evening: { } live } view || (live.Risks.Count == 0 && live.Late == Duration.Zero) || !May(HostRole.Cook))
        {
            _order = null;
            return;
        }

        var (tap, made) = (view.LastTap?.Id, view.Plan.MadeAt);
        if ((tap, made) == (_lookedForOrder.Tap, _lookedForOrder.Made) && view.Now < _lookedForOrder.At + BetweenOrders)
        {
            return;
        }

        _lookedForOrder = (tap, made, view.Now);
        _order = null;
        try
        {
            var order = await Lives.AnotherOrderAsync(view, Closed);
            if ((_view?.LastTap?.Id, _view?.Plan.MadeAt) == (tap, made))
            {
                await InvokeAsync(() =>
                {
                    _order = order;
                    StateHasChanged();
                });
            }
        }
        catch (OperationCanceledException) when (Closed.IsCancellationRequested)
        {
            // The page is gone, and with it the need.
        }
    }

    private Task TakeOrderAsync() => _order is { } order
        ? TapAsync(new LiveMark("", default, LiveMarkKind.NewOrder, Starts: order.Starts))
        : Task.CompletedTask;

    /// <summary>Not offered again until something is tapped.</summary>
    private void LeaveOrder() => (_order, _lookedForOrder) = (null, (_view?.LastTap?.Id, _view?.Plan.MadeAt, Instant.MaxValue - BetweenOrders));

    protected override async Task OnAfterRenderAsync(bool firstRender)
    {
        if (firstRender)
        {
            _module = await Script.InvokeAsync<IJSObjectReference>("import", $"./{Assets["js/live.js"]}");
            await _module.InvokeVoidAsync("begin");
            _ = LookAgainAsync();
        }
    }

    /// <summary>A step is done because time went on, too: nobody has to tap for the page to say so.</summary>
    private async Task LookAgainAsync()
    {
        try
        {
            while (!Closed.IsCancellationRequested)
            {
                await Task.Delay(UntilNextLook().ToTimeSpan(), Closed);
                await InvokeAsync(async () =>
                {
                    await RefreshAsync();
                    StateHasChanged();
                });
            }
        }
        catch (OperationCanceledException) when (Closed.IsCancellationRequested)
        {
            // The page is gone, and with it the need.
        }
    }

    private Duration UntilNextLook()
    {
        var now = Clock.GetCurrentInstant();
        var rings = _view?.Evening?.Clocks.Select(clock => clock.Ends - now).Where(left => left > Duration.Zero).DefaultIfEmpty(BetweenLooks).Min() ?? BetweenLooks;
        return Duration.Min(BetweenLooks, rings + Shortly);
    }

    /// <summary>What is not over, at the times that are expected now.</summary>
    private static List<TimelineStep> Coming(LiveEvening live) =>
        [.. live.Steps.Where(step => step.State != LiveState.Done).Select(step => step.Planned with { Start = step.Start, End = step.End })];

    private static IEnumerable<LiveStep> Following(LiveEvening live) => live.Steps
        .Where(step => step is { IsTapped: true, State: LiveState.Later or LiveState.Due or LiveState.Running, Kind: not (StepKind.Bake or StepKind.Top) }
            && step.Id != live.Next?.Id && !(step.StartsItself && step.State == LiveState.Running))
        .Take(ThenShown);

    private Task DoneAsync(LiveStep step) => TapAsync(new LiveMark(
        "", default,
        step.StartsItself ? LiveMarkKind.StepBegun : LiveMarkKind.StepDone,
        step.Kind == StepKind.Shape ? _view!.Evening!.Steps.Single(top => top.Kind == StepKind.Top && top.Number == step.Number).Id : step.Id));

    private Task HearAsync(LiveClock clock) => TapAsync(clock.Kind == LiveClockKind.PieOut
        ? new LiveMark("", default, LiveMarkKind.StepDone, _view!.Evening!.Steps.Single(bake => bake.Kind == StepKind.Bake && bake.Number == clock.Number).Id)
        : new LiveMark("", default, LiveMarkKind.ClockHeard, clock.Id));

    private Task LateAsync(int minutes)
    {
        var next = _view!.Evening!.Next?.Start ?? Clock.GetCurrentInstant();
        return TapAsync(new LiveMark(
            "", default, LiveMarkKind.NotBefore, Until: Instant.Max(next, Clock.GetCurrentInstant()) + Duration.FromMinutes(minutes)));
    }

    private async Task WrongAsync((LiveStep Step, StepTrouble Trouble) wrong)
    {
        await TapAsync(new LiveMark("", default, LiveMarkKind.WentWrong, wrong.Step.Id, Trouble: wrong.Trouble));
        _said ??= Phrase.Fill(LivePages.TroubleNoted, LiveText.WhatToDo(wrong.Trouble));
    }

    private Task SetClockAsync((string Name, int Minutes) set) => TapAsync(new LiveMark(
        "", default, LiveMarkKind.ClockSet, Until: Clock.GetCurrentInstant() + Duration.FromMinutes(set.Minutes), Name: set.Name));

    private Task SetHandsAsync(int hands) => TapAsync(new LiveMark("", default, LiveMarkKind.HandsNow, Hands: hands));

    private Task TapAsync(LiveMark mark)
    {
        var tap = Guid.CreateVersion7();
        return WorkAsync(async access =>
        {
            var result = await Lives.TapAsync(access, NightId, tap, mark, Closed);
            await LoadAsync(access);
            _said = Say(result);
        });
    }

    private Task UndoAsync() => WorkAsync(async access =>
    {
        if (_view?.LastTap is { } last)
        {
            var result = await Lives.TakeBackAsync(access, NightId, last.Id, Closed);
            await LoadAsync(access);
            _said = Say(result);
        }
    });

    private string? Say(LiveResult result) => result switch
    {
        LiveResult.AlreadySo { Before: var before } => Phrase.Fill(
            LivePages.ItWasTapped, LiveText.Say(before, _view?.Evening?.Steps.FirstOrDefault(step => step.Id == before.Step), _own), Time(before.At)),
        LiveResult.Full full => Phrase.Fill(LivePages.TooManyTaps, full.Most),
        LiveResult.Nothing => LivePages.TapNothing,
        LiveResult.Gone => LivePages.NightIsGone,
        LiveResult.Refused { Field: "name" } => LivePages.ClockNeedsName,
        LiveResult.Refused => LivePages.ClockNeedsMinutes,
        _ => null,
    };

    /// <summary>A helper who is there; the host needs no telling.</summary>
    private string? WhoDoes(LiveStep step) =>
        step.Planned.By is { } helper && helper < _view!.Evening!.Hands ? People.Of(View!).Name(helper) : null;

    private PieOrder? PieOf(LiveStep step) => step.Kind is StepKind.Shape or StepKind.Top or StepKind.Serve
        ? _view?.Plan.Plan?.Split.Pies.FirstOrDefault(pie => pie.Number == step.Number)
        : null;

    private NextStep.Pie? Drawn(LiveStep step) => PieOf(step) is { } pie
        ? new NextStep.Pie(pie, new PieNames(_view!.Plan.Plan!.Split, _view.Plan.Items, _view.Plan.Named), _bases)
        : null;

    private IReadOnlyList<StepAmount> TakesOf(LiveStep step) => _view?.Plan is { Plan: { } plan } view
        ? StepAmounts.Of(step.Kind, step.Number, plan, view.Night.Menu, view.Items, Measures)
        : [];

    private string? LeadOf(LiveStep step) => step.Kind == StepKind.Sauce && _view?.Plan.Plan?.SauceToMake is { Pots: > 1 } ? LivePages.EachPot : null;

    private IReadOnlyList<string> WarningsOf(LiveStep step)
    {
        if (PieOf(step) is not { } pie || _labels is not { } labels)
        {
            return [];
        }

        var needs = _view!.Plan.Night.Guests.SelectMany(guest => guest.Eaters).ToDictionary(eater => eater.Id, eater => eater.Needs);
        var words = new PieWarningText(id => _view.Plan.Names.GetValueOrDefault(id, Words.Somebody), _view.Plan.Items, Measures);
        return [.. new PieWarnings(_view.Plan.Plan!.Split, needs, labels, _view.Plan.Night.Menu.SecondDough).Of(pie).Select(words.Say)];
    }

    private string Time(Instant at) => LiveText.At(at, _view?.Now ?? at, View!.Facts.Zone);

    private static string Iso(Instant at) => NodaTime.Text.InstantPattern.ExtendedIso.Format(at);

    public async ValueTask DisposeAsync()
    {
        Dispose();
        try
        {
            await (_module?.DisposeAsync() ?? ValueTask.CompletedTask);
        }
        catch (JSDisconnectedException)
        {
            // The browser is gone, and the module with it.
        }
    }
}
