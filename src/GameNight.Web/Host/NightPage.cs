using GameNight.Nights.ForHosts;
using GameNight.Nights.Membership;
using GameNight.Nights.Plans;
using GameNight.Nights.Records;
using GameNight.Web.Wording;
using Microsoft.AspNetCore.Components;

namespace GameNight.Web.Host;

/// <summary>A page of one night, which reads itself anew whenever the night, an answer or the plan changes.</summary>
public abstract class NightPage : GroupPage
{
    private IDisposable? _listening;

    [Parameter] public Guid Night { get; set; }

    [Inject] protected HostDesk Desk { get; init; } = null!;

    [Inject] private NightChanges Changes { get; init; } = null!;

    protected NightId NightId => new(Night);

    /// <summary>The night, once read.</summary>
    protected NightView? View { get; private set; }

    protected string? Above => View is null ? null : WordText.List([View.Facts.Title, QuantityText.DayAndTime(View.Facts.ServeAt)]);

    protected override void OnInitialized() =>
        _listening = Changes.Listen(NightId, () => _ = InvokeAsync(ReloadAsync));

    protected override async Task<bool> LoadAsync(GroupAccess access)
    {
        View = await Desk.NightAsync(access, NightId, Closed);
        return View is not null;
    }

    protected override void Dispose(bool disposing)
    {
        if (disposing)
        {
            _listening?.Dispose();
        }

        base.Dispose(disposing);
    }

    private async Task ReloadAsync()
    {
        await RefreshAsync();
        StateHasChanged();
    }
}
