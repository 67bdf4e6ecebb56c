using GameNight.Nights.Dates;
using GameNight.Nights.Membership;
using GameNight.Nights.Plans;
using GameNight.Nights.Records;
using GameNight.Planning.Dates;
using GameNight.Web.Host.GuestList;
using GameNight.Web.Startup;
using GameNight.Web.Wording;
using GameNight.Web.Wording.Texts;
using Microsoft.AspNetCore.Components;
using MudBlazor;
using NodaTime;

namespace GameNight.Web.Host.Dates;

/// <summary>The evenings of a question, best first; reads itself anew with every answer.</summary>
public partial class QuestionPage
{
    private readonly NightId _night = NightId.New();
    private DateView? _view;
    private string? _choosing;
    private string? _said;
    private bool _isAsking;
    private IDisposable? _listening;

    [Parameter] public Guid Choice { get; set; }

    [CascadingParameter] private Measures Measures { get; set; } = Measures.Metric;

    [Inject] private DateDesk Desk { get; init; } = null!;

    [Inject] private DateChoosing Choosing { get; init; } = null!;

    [Inject] private NightChanges Changes { get; init; } = null!;

    [Inject] private IDialogService Dialogs { get; init; } = null!;

    [Inject] private NavigationManager Navigation { get; init; } = null!;

    [Inject] private GameNightOptions Options { get; init; } = null!;

    private IReadOnlyDictionary<string, string> Names => _view!.Asked.ToDictionary(row => row.Id.ToString(), row => row.Name);

    private string Standing
    {
        get
        {
            var (answered, asked) = (_view!.Asked.Count(row => row.AnsweredAt is not null), _view.Asked.Count);
            var until = QuantityText.Moment(_view.OpenUntil, _view.Facts.Zone);
            return _view.IsPastDeadline
                ? Phrase.Fill(DatePages.DeadlineOver, until, answered, asked)
                : Phrase.Fill(DatePages.AnsweredOf, answered, asked, until);
        }
    }

    /// <summary>Where the two criteria disagree both are said, and why a third one might be fairer.</summary>
    private IEnumerable<string> Winners
    {
        get
        {
            var forecast = _view!.Forecast;
            if (forecast.BestAttended is not { } most || forecast.SurestQuorum is not { } surest || forecast.Fairest is not { } fairest)
            {
                yield return DatePages.NoneCanBe;
                yield break;
            }

            if (_view.Asked.All(row => row.AnsweredAt is null))
            {
                yield return DatePages.NobodyAnswered;
                yield break;
            }

            if (most == surest && most == fairest)
            {
                yield return Phrase.Fill(DatePages.BestInAll, Called(most));
                yield break;
            }

            yield return Phrase.Fill(DatePages.MostPeople, Called(most), QuantityText.Number(Of(most).Expected.Expected));
            yield return Phrase.Fill(DatePages.SurestTable, _view.Facts.Quorum, Called(surest), QuantityText.Chance(Of(surest).Quorum));
            if (fairest != most)
            {
                yield return Phrase.Fill(DatePages.Fairest, Called(fairest));
            }
        }
    }

    protected override void OnInitialized() =>
        _listening = Changes.Listen(new DateChoiceId(Choice), () => _ = InvokeAsync(ReloadAsync));

    protected override async Task<bool> LoadAsync(GroupAccess access)
    {
        _view = await Desk.QuestionAsync(access, new DateChoiceId(Choice), Closed);
        return _view is not null;
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

    private DateOutlook Of(string id) => _view!.Forecast.Evenings.Single(evening => evening.Option.Id == id);

    private LocalDateTime AtOf(DateOutlook evening) =>
        _view!.Facts.Options.Single(option => DateChoiceFacts.IdOf(option) == evening.Option.Id);

    private string Called(string id) => QuantityText.DayAndTime(AtOf(Of(id)));

    private Task ChooseAsync(LocalDateTime evening) => WorkAsync(async access =>
    {
        var result = await Choosing.ChooseAsync(access, _view!.Id, evening, _night, Closed);
        _said = result switch
        {
            ChoosingResult.ChosenOtherwise other => Phrase.Fill(DatePages.ChosenOtherwise, QuantityText.DayAndTime(other.Evening)),
            ChoosingResult.NotAnOption => DatePages.NotAnOption,
            ChoosingResult.HasPassed => DatePages.EveningPassed,
            ChoosingResult.NoDough => DatePages.NoDough,
            _ => null,
        };
        _choosing = null;
        await LoadAsync(access);
    });

    private Task WithdrawAsync() => WorkAsync(async access =>
    {
        await Desk.WithdrawAsync(access, _view!.Id, Closed);
        _isAsking = false;
        await LoadAsync(access);
    });

    private Task SendLinksAsync() => WorkAsync(async access =>
    {
        await Desk.SendLinksAsync(access, _view!.Id, Closed);
        await LoadAsync(access);
    });

    private async Task ShowLinkAsync(AskedLine guest)
    {
        var address = new Uri(Options.PublicAddress.Length > 0 ? Options.PublicAddress : Navigation.BaseUri);
        var parameters = new DialogParameters<LinkDialog>
        {
            { dialog => dialog.GuestName, guest.Name },
            { dialog => dialog.Link, new Uri(address, $"{SecretPaths.Dates}/{guest.LinkToken}").ToString() },
        };
        var shown = await Dialogs.ShowAsync<LinkDialog>(
            Phrase.Fill(DatePages.LinkOf, guest.Name), parameters, new DialogOptions { CloseOnEscapeKey = true });
        if (await shown.Result is { Canceled: false })
        {
            await WorkAsync(async access =>
            {
                await Desk.RenewLinkAsync(access, _view!.Id, guest.Id, Closed);
                await LoadAsync(access);
            });
            await ShowLinkAsync(_view!.Asked.Single(row => row.Id == guest.Id));
        }
    }
}
