using AngleSharp.Html.Parser;
using GameNight.Nights.ForGuests;
using GameNight.Nights.ForHosts;
using GameNight.Nights.Messages;
using GameNight.Nights.Records;
using GameNight.Planning;
using GameNight.Planning.Appetite;
using GameNight.Planning.Guests;
using GameNight.Planning.Safety;
using GameNight.Web.Guests;
using GameNight.Web.Wording;
using GameNight.WideLetters;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Web;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using NodaTime;

namespace GameNight.Web.Tests.Wording;

/// <summary>Everything that is said comes from the resources: in a language of wide letters no plain one is left.</summary>
public sealed class PseudoLanguageTests : InWideLetters
{
    protected override IReadOnlyList<string> Given =>
        ["Rui", "Board night", "Thursday table", "Inês", "Europe/Lisbon", "Rua do Forno 3", "olives", "Mushrooms", "no nuts at all", "Tomma", "Marek", "Europe/Berlin", "guest-1"];

    private static readonly ReplacedAnswer ReplacedBefore = new(
        new AnswerFacts(Presence.NotComing, true, Hunger.Less, [], new Dictionary<string, Liking>(), ComesAtMinute: 1230),
        Instant.FromUtc(2026, 12, 8, 16, 0));

    private static readonly MovedSince AMove = new(
        new LocalDateTime(2026, 12, 3, 19, 0), "Europe/Berlin", new LocalDateTime(2026, 12, 10, 19, 0), "Europe/Lisbon", false);

    public static TheoryData<Type> Reasons => CompletenessTests.Reasons;

    public static TheoryData<Type> Conflicts => CompletenessTests.Conflicts;

    [Theory]
    [MemberData(nameof(Reasons))]
    public void Reasons_are_said_from_the_resources(Type reason) => Assert.All(
        Samples.Of(reason), sample => Assert.All(
            [Measures.Metric, Measures.UsCustomary], measures => AssertTranslated(ReasonText.Say((Reason)sample, measures))));

    [Theory]
    [MemberData(nameof(Conflicts))]
    public void Conflicts_are_said_from_the_resources(Type conflict) => Assert.All(
        Samples.Of(conflict), sample => AssertTranslated(new ConflictText("Europe/Lisbon", _ => "Rui", Measures.Metric).Say((Conflict)sample)));

    [Fact]
    public void Cautions_are_said_from_the_resources() => Assert.All(
        Enum.GetValues<CautionKind>(),
        kind => AssertTranslated(CautionText.Say(new Caution(kind, "Inês", [Allergen.Nuts, Allergen.Milk]), Measures.UsCustomary)));

    [Fact]
    public void Problems_are_said_from_the_resources()
    {
        Assert.All(Enum.GetValues<SnapshotFault>(), fault =>
            AssertTranslated(ProblemText.SayHere(new SnapshotProblem("kitchen.roomCelsius", fault, 99, 5, 40), Measures.Metric)));
        Assert.All(Enum.GetValues<DraftFault>(), fault => AssertTranslated(ProblemText.Say(new DraftProblem("title", fault, 0, 80))));
    }

    [Theory]
    [InlineData(true, true)]
    [InlineData(false, false)]
    [InlineData(true, false, true)]
    [InlineData(true, false, false, true)]
    public async Task The_answer_page_takes_every_text_from_the_resources(
        bool hasAnswered, bool isAfterCommitment, bool isCancelled = false, bool hasMoved = false)
    {
        var invitation = AnInvitation(hasAnswered, isAfterCommitment) with
        {
            IsCancelled = isCancelled,
            AddressIsWithheld = !hasAnswered,
            TakesMail = hasAnswered,
            Replaced = hasAnswered ? ReplacedBefore : null,
            Moved = hasMoved ? AMove : null,
        };

        AssertTranslated(await ShownAsync<InvitationPage>(new()
        {
            [nameof(InvitationPage.Invitation)] = invitation,
            [nameof(InvitationPage.Form)] = AnswerForm.Of(invitation),
            [nameof(InvitationPage.Token)] = "token",
            [nameof(InvitationPage.LookBack)] = hasAnswered ? "token" : null,
            [nameof(InvitationPage.Zone)] = hasAnswered ? "Europe/Berlin" : "",
        }, carriesMail: !isAfterCommitment));
    }

    [Theory]
    [InlineData("Plain words", "Plain words")]
    [InlineData("⟦Ｓａｉｄ⟧ ｇｌｕｅｄ", " ｇｌｕｅｄ")]
    [InlineData("⟦Ｓａｉｄ ⟦Rui⟧ by hand⟧", "⟦Ｓａｉｄ ⟦#⟧ by hand⟧")]
    [InlineData("⟦Ｓａｉｄ ⟦12⟧⟧, Rui", "")]
    public void What_is_not_from_the_resources_is_found(string shown, string foreign) =>
        Assert.Equal(foreign, PseudoLanguage.Foreign(shown, ["Rui"]));

    /// <summary>What a page shows or reads out.</summary>
    private static async Task<string> ShownAsync<TPage>(Dictionary<string, object?> parameters, bool carriesMail = false)
        where TPage : IComponent
    {
        await using var services = new ServiceCollection().AddLogging()
            .AddSingleton<IMessageCarrier>(new Carries(carriesMail)).BuildServiceProvider();
        await using var renderer = new HtmlRenderer(services, services.GetRequiredService<ILoggerFactory>());
        var html = await renderer.Dispatcher.InvokeAsync(async () =>
            (await renderer.RenderComponentAsync<TPage>(ParameterView.FromDictionary(parameters))).ToHtmlString());
        var document = await new HtmlParser().ParseDocumentAsync(html, TestContext.Current.CancellationToken);
        var attributes = document.All.SelectMany(element => new[] { "aria-label", "title", "alt", "placeholder", "data-text" }
            .Select(element.GetAttribute).OfType<string>());
        return document.DocumentElement.TextContent + string.Concat(attributes);
    }

    private static InvitationView AnInvitation(bool hasAnswered, bool isAfterCommitment) => new(
        NightId.New(),
        GuestId.New(),
        "Thursday table",
        hasAnswered ? "Inês" : "",
        "Rui",
        "Board night",
        new LocalDateTime(2026, 12, 10, 19, 0),
        hasAnswered ? new LocalDateTime(2026, 12, 10, 23, 30) : null,
        "Europe/Lisbon",
        Instant.FromUtc(2026, 12, 10, 19, 0),
        hasAnswered ? "Rua do Forno 3" : null,
        hasAnswered ? "olives" : "",
        3,
        Instant.FromUtc(2026, 12, 8, 17, 0),
        isAfterCommitment,
        [new LikeableTopping("m", "Mushrooms")],
        hasAnswered
            ? new AnswerFacts(Presence.Coming, false, Hunger.More, [new Companion(PortionClass.Child)], new Dictionary<string, Liking> { ["m"] = Liking.Like })
            : null,
        hasAnswered ? 2 : 0,
        null,
        hasAnswered ? [new DietaryNeeds([Diet.Vegan], [Allergen.Nuts], [Allergen.Milk])] : [],
        hasAnswered ? "no nuts at all" : null,
        hasAnswered,
        hasAnswered,
        false,
        null,
        new CalendarNight(
            GroupId.New(), NightId.New(), GuestId.New(), "Thursday table", "Board night", new LocalDateTime(2026, 12, 10, 19, 0), null,
            "Europe/Lisbon", null, false, null, 0),
        hasAnswered ? new WhoComes(3, ["Tomma", "Marek"]) : new WhoComes(1, []),
        hasAnswered,
        hasAnswered ? new WishFacts(Hunger.More, new Dictionary<string, Liking>(), DietaryNeeds.None) : null,
        !isAfterCommitment,
        new TableView(8, 0, hasAnswered ? 2 : null, HasSeat: false),
        new Played("Board night", new PlayersWanted(2, 4)),
        hasAnswered ? SaidBy.Host : null,
        [new HouseholdFellow(GuestId.New(), "Tomma")],
        null);

    private sealed record Carries(bool CanCarry) : IMessageCarrier
    {
        public Task<CarryResult> CarryAsync(Letter letter, CancellationToken cancellation) => throw new NotSupportedException();

        public Task<CarryResult> CarryAsync(QuestionLetter letter, CancellationToken cancellation) => throw new NotSupportedException();

        public Task<CarryResult> CarryAsync(WorkLetter letter, CancellationToken cancellation) => throw new NotSupportedException();
    }
}
