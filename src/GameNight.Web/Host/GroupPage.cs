using GameNight.Nights;
using GameNight.Nights.Membership;
using GameNight.Nights.Records;
using GameNight.Web.SignIn;
using GameNight.Web.Wording.Texts;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Authorization;

namespace GameNight.Web.Host;

/// <summary>
/// A page inside a group. Every piece of work enters the group anew, so a host who lost their membership loses the page; when
/// the database is away the page says so, keeps what was typed, and tries again by itself.
/// </summary>
public abstract class GroupPage : ComponentBase, IDisposable
{
    private static readonly TimeSpan LongestPause = TimeSpan.FromSeconds(15);

    private readonly CancellationTokenSource _closed = new();
    private readonly SemaphoreSlim _turn = new(1);

    protected GroupPage()
    {
        Closed = _closed.Token;
    }

    [Parameter] public Guid Group { get; set; }

    [CascadingParameter] private Task<AuthenticationState> Authentication { get; set; } = null!;

    [Inject] private GroupDesk Groups { get; init; } = null!;

    [Inject] private HostAccounts Accounts { get; init; } = null!;

    [Inject] private NavigationManager Navigation { get; init; } = null!;

    /// <summary>The group, once entered.</summary>
    protected GroupLine? Here { get; private set; }

    /// <summary>The page cannot be shown: not there, or not for this host. No difference is told.</summary>
    protected bool IsNotThere { get; private set; }

    /// <summary>What stands in the way right now, or null.</summary>
    protected string? Trouble { get; private set; }

    /// <summary>Something the host asked for is under way. A refresh does not count: it must not swallow a click.</summary>
    protected bool IsBusy { get; private set; }

    protected GroupId GroupId => new(Group);

    /// <summary>What the host may do here, once entered.</summary>
    protected HostRole? Right { get; private set; }

    /// <summary>Whether to offer what needs that right; the desks ask again themselves.</summary>
    protected bool May(HostRole right) => Right >= right;

    /// <summary>Cancelled when the page is left.</summary>
    protected CancellationToken Closed { get; }

    protected override async Task OnParametersSetAsync()
    {
        IsNotThere = false;
        await TakeTurnAsync(async access =>
        {
            var host = access.HostId!.Value;
            Here = (await Groups.GroupsOfAsync(host, Closed)).Single(group => group.Id == GroupId);
            IsNotThere = !await LoadAsync(access);
        });
    }

    /// <summary>Reads what the page shows.</summary>
    /// <returns>False when it is not there.</returns>
    protected abstract Task<bool> LoadAsync(GroupAccess access);

    /// <summary>Does what the host asked for, again and again while the database is away, until it is done or the page is closed.</summary>
    protected async Task WorkAsync(Func<GroupAccess, Task> work)
    {
        // A second click while the first is under way is the same click.
        if (IsBusy)
        {
            return;
        }

        IsBusy = true;
        try
        {
            await TakeTurnAsync(work);
        }
        finally
        {
            IsBusy = false;
        }
    }

    /// <summary>Reads the page anew without anybody having asked.</summary>
    protected Task RefreshAsync() => TakeTurnAsync(LoadAsync);

    private async Task TakeTurnAsync(Func<GroupAccess, Task> work)
    {
        var hasTurn = false;
        try
        {
            await _turn.WaitAsync(Closed);
            hasTurn = true;
            for (var pause = TimeSpan.FromSeconds(1); !Closed.IsCancellationRequested; pause = Min(pause * 2, LongestPause))
            {
                try
                {
                    await EnterAndAsync(work);
                    Trouble = null;
                    return;
                }
                catch (RightMissingException)
                {
                    Trouble = GroupFrames.RightMissing;
                    return;
                }
                catch (NightsUnavailableException)
                {
                    Trouble = GroupFrames.DatabaseAway;
                    StateHasChanged();
                    await Task.Delay(pause, Closed);
                }
            }
        }
        catch (OperationCanceledException) when (Closed.IsCancellationRequested)
        {
            // The page is gone, and with it the need.
        }
        finally
        {
            if (hasTurn)
            {
                _turn.Release();
            }
        }
    }

    private async Task EnterAndAsync(Func<GroupAccess, Task> work)
    {
        var person = (await Authentication).User;
        var host = person.HostIdOf();
        if (host is { } one && !await Accounts.IsStillSignedInAsync(one, person.SignInStamp(), Closed))
        {
            // Signed out everywhere, or removed, while the page was open: it ends now, not when the next check is due.
            IsNotThere = true;
            Navigation.NavigateTo("/sign-in", forceLoad: true);
            return;
        }

        var access = host is { } known ? await Groups.EnterAsync(known, GroupId, Closed) : null;
        if (access is null)
        {
            IsNotThere = true;
            return;
        }

        Right = access.Role;
        await work(access);
    }

    public void Dispose()
    {
        Dispose(true);
        GC.SuppressFinalize(this);
    }

    protected virtual void Dispose(bool disposing)
    {
        if (disposing)
        {
            _closed.Cancel();
            _closed.Dispose();
        }
    }

    private static TimeSpan Min(TimeSpan left, TimeSpan right) => left < right ? left : right;
}
