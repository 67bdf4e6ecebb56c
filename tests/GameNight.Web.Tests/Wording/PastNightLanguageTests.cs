using Bunit;
using GameNight.Nights.PastNights;
using GameNight.Nights.Records;
using GameNight.Planning.Guests;
using GameNight.Planning.Quantities;
using GameNight.Web.Guests;
using GameNight.Web.Host.GuestList;
using GameNight.Web.Host.PastNights;
using GameNight.Web.Tests.Panels;
using GameNight.Web.Wording;
using Microsoft.AspNetCore.Components;
using NodaTime;

namespace GameNight.Web.Tests.Wording;

/// <summary>Looking back in a language of wide letters: what is noted, and what is not, is said from the resources.</summary>
public sealed class PastNightLanguageTests : InWideLetters
{
    protected override IReadOnlyList<string> Given =>
        ["Rui", "Eva", "Ana", "Board games", "Thursday table", "Europe/Lisbon", "good crust", "too wet", "fewer", "A", "B"];

    private static readonly LookBackFacts Talkative =
        new(Enough.TooMuch, Evening.Lovely, 2.5, [1], "good crust", Namelessly: false);

    [Theory]
    [InlineData(null, null)]
    [InlineData(4, null)]
    [InlineData(4, 0.0)]
    [InlineData(4, 5.0)]
    [InlineData(6, 6.0)]
    [InlineData(4, 14.0)]
    public void Slices_are_said_from_the_resources(int? baked, double? left)
    {
        var slices = PastNights.Slices(baked, left);

        AssertTranslated(PastNightText.Course(slices));
        AssertTranslated(PastNightText.Eaten(slices, people: 6));
        AssertTranslated(PastNightText.Came(6));
        AssertTranslated(PastNightText.Came(0));
        AssertShown<SlicesPanel>(with => with.Add(p => p.Slices, slices).Add(p => p.People, 6));
        AssertShown<SlicesPanel>(with => with.Add(p => p.Slices, slices with { PlannedPies = null, Wanted = null }).Add(p => p.People, 6));
        AssertShown<PastChart>(with => with.Add(p => p.Nights, [PastNights.Line(new LocalDate(2026, 12, 12), slices)]));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(3)]
    public void Opinions_are_said_from_the_resources(int voices) => AssertShown<OpinionsPanel>(with => with.Add(p => p.Night, PastNights.Night(
        named: [.. Enumerable.Repeat(new NamedLookBack("Rui", Talkative), voices)],
        nameless: voices > 0 ? ["too wet"] : []) with
    { OwnLink = voices > 0 ? "token" : null }));

    [Fact]
    public void What_a_host_writes_down_is_asked_for_and_shown_from_the_resources()
    {
        var log = new BakeLogFacts(
            [new CameFacts(PastNights.Rui.Value, 3), new CameFacts(PastNights.Eva.Value, 1)], new PieCount(3), 2,
            [new PieOutcome(1, 1.5, "too wet", Won: true)], "fewer");
        var (open, written) = (PastNights.Night(), PastNights.Night(log));
        var (form, theirs) = (BakeLogForm.Of(open), BakeLogForm.Of(written));

        AssertShown<BakeLogFields>(with => with
            .Add(p => p.Form, form).Add(p => p.Pies, open.Pies).Add(p => p.Slices, open.Slices).Add(p => p.Problems, new Dictionary<string, string>()));
        AssertShown<WrittenPanel>(with => with.Add(p => p.Night, written));
        Assert.All(form.DifferencesTo(theirs), AssertTranslated);
        Assert.All(Enum.GetValues<LogFault>(), fault => AssertTranslated(LogProblemText.Say(new LogProblem(LogField.Left, null, fault, 1.5, 8))));
    }

    [Theory]
    [InlineData(true, false)]
    [InlineData(false, false)]
    [InlineData(false, true)]
    public void A_guests_look_back_is_said_from_the_resources(bool isOpen, bool isCancelled)
    {
        var averages = new Averages(0.4, -0.9, []);
        var view = new LookBackView(
            NightId.New(), "Thursday table", "Rui", "Board games", new LocalDateTime(2026, 12, 12, 19, 30), "Europe/Lisbon",
            Instant.FromUtc(2026, 12, 12, 19, 30), isOpen, isCancelled, PastNights.Pies(2), Talkative, 1, averages, []);

        AssertShown<LookBackPage>(with => with
            .Add(p => p.View, view).Add(p => p.Form, LookBackForm.Of(view)).Add(p => p.Token, "token"));
    }

    [Fact]
    public void Must_nots_are_said_from_the_resources() => AssertTranslated(NeedsText.Say(
        [new DietaryNeeds([Diet.Vegan], [Allergen.Nuts], [Allergen.Milk]), new DietaryNeeds([], [Allergen.Fish], [])]));

    private void AssertShown<TPart>(Action<ComponentParameterCollectionBuilder<TPart>> with)
        where TPart : IComponent
    {
        var part = Render(with);
        var text = string.Concat(part.Nodes.Select(node => node.TextContent))
            + string.Concat(part.FindAll("[aria-label]").Select(element => element.GetAttribute("aria-label")));

        // A drawn pie stands beside its words and is read to nobody.
        AssertTranslated(part.FindAll("[aria-hidden] > svg.pie").Aggregate(text, (left, pie) => left.Replace(pie.TextContent, "", StringComparison.Ordinal)));
    }
}
