using GameNight.Nights.ForHosts;
using GameNight.Nights.Membership;
using GameNight.Nights.Records;
using GameNight.Planning;
using GameNight.Planning.Quantities;
using GameNight.Planning.Toppings;
using GameNight.Web.Drawings;
using GameNight.Web.Host.Print;
using GameNight.Web.Wording;
using GameNight.Web.Wording.Texts;
using Microsoft.AspNetCore.Components;

namespace GameNight.Web.Host.Pies;

/// <summary>What goes on which pie: settled by hand where the host wants it, made around that everywhere else.</summary>
public sealed partial class PiesPage
{
    /// <summary>After the first pie; by then the last one is out of the oven. Common practice, no source.</summary>
    private static readonly NodaTime.Duration StillEating = NodaTime.Duration.FromHours(6);

    private PlanView? _view;
    private IReadOnlyList<PantryItem> _menu = [];
    private Dictionary<string, Combination> _combinations = [];
    private IReadOnlySet<string> _bases = new HashSet<string>();
    private ConflictText _conflicts = new("UTC", id => id, Measures.Metric);
    private string? _problem;
    private PieChange? _change;
    private string _changedPart = "";
    private Pin? _lifted;
    private PantryItem? _spareItem;
    private string? _spare;
    private IReadOnlyList<OtherPies.Way> _ways = [];
    private bool _isWorkingOut;

    [CascadingParameter] private Measures Measures { get; set; } = Measures.Metric;

    private SplitByHand? ByHandNow => _view?.Night.ByHand.Split;

    private bool MayChange => View is { CancelledAt: null } view && view.ServeAt > Clock.GetCurrentInstant() - StillEating;

    private string Parts => (ByHandNow?.Parts ?? SplitRequest.UsualParts).ToString(System.Globalization.CultureInfo.InvariantCulture);

    private SplitAim Aim => ByHandNow?.Aim ?? SplitAim.WorstOff;

    /// <summary>As the split on the screen was made.</summary>
    private int PartsPerPie => SplitRequest.PartsOf(_view!.Night.Shape.SlicesPerPie, ByHandNow?.Parts ?? SplitRequest.UsualParts);

    private int SlicesPerPart => _view!.Night.Shape.SlicesPerPie / PartsPerPie;

    private string SettledSentence => ByHandNow?.Pins is { Count: > 0 } pins
        ? Phrase.Count(PiesByHand.ResourceManager, nameof(PiesByHand.SettledOther), pins.Count)
        : PiesByHand.NothingSettled;

    protected override async Task<bool> LoadAsync(GroupAccess access)
    {
        if (!await base.LoadAsync(access))
        {
            return false;
        }

        var before = _view;
        _view = await Plans.PlanAsync(access, NightId, Closed);
        if (before?.MadeAt != _view?.MadeAt)
        {
            // What was worked out was beside another plan.
            _ways = [];
        }

        var menu = await Kitchens.MenuAsync(access, Closed);
        _menu = [.. menu.Where(item => item.IsOffered)];
        _bases = WhiteBases.Of(menu);
        _spareItem = menu.FirstOrDefault(item => !item.IsOffered && item.Role == MenuRole.Topping);
        _spare = _spareItem?.Name;
        _conflicts = new ConflictText(View!.Facts.Zone, NameOf, Measures, _view?.Items, new OwnStepNames(View.Overrides.Own));
        _combinations = _view?.Plan?.Split.Combinations.ToDictionary(combination => combination.Letter) ?? [];
        return _view is not null;
    }

    private string? WeightOf(string eater) =>
        _view!.Night.Guests.FirstOrDefault(guest => guest.Eaters[0].Id == eater) is { } guest ? SplitText.Weight(FairOverTime.WeightPercent(guest.Past)) : null;

    private string NameOf(string id) => _view?.Names.GetValueOrDefault(id) ?? Words.Somebody;

    private string Say(Combination combination) => new PieNames(_view!.Plan!.Split, _view.Items, _view.Named).Within(combination);

    private void OpenChooser((Pin OnIt, string Part) chosen)
    {
        (_change, _changedPart) = (new PieChange(chosen.OnIt), chosen.Part.ToLowerInvariant());
        _problem = null;
    }

    private void CloseChooser() => _change = null;

    private void Lift(Pin pin) => _lifted = pin;

    private async Task DropAsync(Pin onto)
    {
        var lifted = _lifted;
        _lifted = null;
        if (lifted is not null && lifted != onto)
        {
            await DivideAsync(split => PieEdit.Swapped(split, lifted, onto, PartsPerPie));
        }
    }

    private Task KeepAsync(Pin pin) => DivideAsync(split => split.Settling(pin.Pie, PieEdit.Changed(split, pin, pin, PartsPerPie)));

    private Task LetGoAsync(Pin pin) => DivideAsync(split => split.Settling(pin.Pie, PieEdit.LetGo(split, pin)));

    private async Task SettleAsync(Pin after)
    {
        var before = _change!.Before;
        await DivideAsync(split => split.Settling(after.Pie, PieEdit.Changed(split, before, after, PartsPerPie)));
        _change = null;
    }

    private async Task SetPartsAsync(string parts)
    {
        var (slices, from) = (_view!.Night.Shape.SlicesPerPie, PartsPerPie);
        var wanted = int.Parse(parts, System.Globalization.CultureInfo.InvariantCulture);
        var settled = ByHandNow?.Pins?.Count ?? 0;
        await DivideAsync(split => PieEdit.Parted(split, from, SplitRequest.PartsOf(slices, wanted)) with { Parts = wanted == SplitRequest.UsualParts ? null : wanted });
        var lost = settled - (ByHandNow?.Pins?.Count ?? 0);
        _problem ??= lost > 0 ? Phrase.Count(PiesByHand.ResourceManager, nameof(PiesByHand.LetGoForPartsOther), lost) : null;
    }

    private Task SetAimAsync(SplitAim aim) => DivideAsync(split => split with { Aim = aim == SplitAim.WorstOff ? null : aim, Slices = null });

    private Task TakeAsync((SplitAim Aim, int Slices) better) => DivideAsync(split => split with
    {
        Aim = better.Aim == SplitAim.WorstOff ? null : better.Aim,
        Slices = better.Slices > Effort.Usual.Slices ? better.Slices : null,
    });

    private Task DivideAsync(Func<SplitByHand, SplitByHand> change) => WorkAsync(async access =>
    {
        _problem = await Desk.OverruleAsync(access, NightId, overrides => overrides.Dividing(change), Closed) switch
        {
            SaveResult.Refused { Problems: [var first, ..] } => ProblemText.SayHere(first, Measures),
            SaveResult.ChangedMeanwhile => PiesByHand.ChangedMeanwhile,
            _ => null,
        };
        await LoadAsync(access);
    });

    /// <summary>Planned, not estimated, and kept nowhere; off the circuit, which goes on answering.</summary>
    private async Task WorkOutAsync()
    {
        if (_isWorkingOut || _view?.Plan is not { } plan)
        {
            return;
        }

        _isWorkingOut = true;
        StateHasChanged();
        try
        {
            var night = _view.Night;
            var effort = new Effort(Math.Max(plan.SolverSlices, Effort.Usual.Slices));
            var more = new PieCount(Math.Min(PieCount.Highest, plan.Pies.Count.Value.Value + 1));
            var variants = new List<(string Name, NightSnapshot Night)>();
            if (night.Begun is null)
            {
                // A dough that is committed has the balls it has.
                variants.Add((PiesByHand.OnePieMore, night with { ByHand = night.ByHand with { Pies = more } }));
            }

            variants.Add((PiesByHand.FairerWay, night with { ByHand = night.ByHand with { Split = (night.ByHand.Split ?? new SplitByHand()) with { Aim = SplitAim.EveryLevel } } }));
            if (_spareItem is { } spare)
            {
                variants.Add((Phrase.Fill(PiesByHand.WithTopping, spare.Name), night with { Menu = night.Menu with { Items = [.. night.Menu.Items, spare.ForPlanning()] } }));
            }

            _ways = await Task.Run(() => (IReadOnlyList<OtherPies.Way>)[.. variants.Select(variant => new OtherPies.Way(
                variant.Name, SplitText.Difference(plan.Split, Planner.Split(variant.Night, effort, Closed))))], Closed);
        }
        catch (OperationCanceledException) when (Closed.IsCancellationRequested)
        {
            // The page was left.
        }
        finally
        {
            _isWorkingOut = false;
        }
    }
}
