using Bunit;
using GameNight.Nights.ForHosts;
using GameNight.Nights.Records;
using GameNight.Planning;
using GameNight.Planning.Guests;
using GameNight.Planning.Quantities;
using GameNight.Planning.Timeline;
using GameNight.Planning.Toppings;
using GameNight.TestKit;
using GameNight.TestKit.Nights;
using GameNight.Web.Host.Plan;
using GameNight.Web.Host.Print;
using GameNight.Web.Host.Timeline;
using GameNight.Web.Tests.Panels;
using GameNight.Web.Tests.Print;
using GameNight.Web.Wording;
using GameNight.WideLetters;
using Microsoft.AspNetCore.Components;
using NodaTime;

namespace GameNight.Web.Tests.Wording;

/// <summary>Plan, timeline and paper take every text from the resources, in either measure.</summary>
public sealed class PlanInPseudoLanguageTests : InWideLetters
{
    protected override IReadOnlyList<string> Given =>
    [
        .. Plans.Names.Values, .. Plans.Items.Values, .. Plans.Items.Values.Select(name => name.ToLowerInvariant()),
        .. Plans.Usual.Split.Combinations.Concat(Paper.Split.Combinations).Select(combination => combination.Letter), Paper.Head.NightTitle, "Hana",
    ];

    [Theory]
    [InlineData(MeasureSystem.Metric)]
    [InlineData(MeasureSystem.UsCustomary)]
    public void The_plan(MeasureSystem system)
    {
        Read(system);
        foreach (var isFixed in new[] { false, true })
        {
            AssertTranslated(Render<FiguresPanel>(with => with
                .Add(p => p.Plan, Plans.Usual).Add(p => p.Zone, Plans.Zone).Add(p => p.IsDoughFixed, isFixed)));
        }

        AssertTranslated(Render<FiguresPanel>(with => with.Add(p => p.Plan, ByHand).Add(p => p.Zone, Plans.Zone)));
        AssertTranslated(Render<DoughPanel>(with => with.Add(p => p.Plan, Plans.Usual)));
        AssertTranslated(Render<DoughPanel>(with => with.Add(p => p.Plan, Plans.Empty)));
        AssertTranslated(Render<AmountsPanel>(with => with.Add(p => p.Amounts, Plans.Usual.Amounts).Add(p => p.Items, Plans.Items)));
        AssertTranslated(Render<CarePanel>(with => with.Add(p => p.Cautions, Plans.Usual.Cautions).Add(p => p.Split, Plans.Usual.Split)));
        AssertTranslated(Render<CarePanel>(with => with.Add(p => p.Cautions, []).Add(p => p.Split, Plans.Empty.Split)));
    }

    [Fact]
    public void The_pies()
    {
        foreach (var split in new[] { Plans.Usual.Split, Paper.Split, Plans.Empty.Split })
        {
            AssertTranslated(Render<PiesPanel>(with => with
                .Add(p => p.Split, split).Add(p => p.Items, Plans.Items).Add(p => p.Names, Plans.Names).Add(p => p.Bases, new HashSet<string>())));
        }
    }

    [Theory]
    [InlineData(null, true)]
    [InlineData("", false)]
    [InlineData("Hana", true)]
    public void The_commitment(string? by, bool canBeTakenBack)
    {
        var made = new CommitmentView(
            NightBuilder.Now, by, Plans.Usual.Timeline.DoughCommitment!.Value, canBeTakenBack, 5, Plans.Usual.Dough.Total, NightBuilder.Now, Duration.FromHours(48));
        foreach (var (plan, commitment) in new[] { (Plans.Usual, made), (Plans.Usual, null), (Plans.Empty, (CommitmentView?)null) })
        {
            AssertTranslated(Render<CommitmentPanel>(with => with
                .Add(p => p.Plan, plan).Add(p => p.Zone, Plans.Zone).Add(p => p.Commitment, commitment)));
        }
    }

    [Fact]
    public void Late_changes()
    {
        var words = new LateChangeText(_ => "Rui");
        var (night, asked) = (NightBuilder.ANight().WithGuests(6).Build(), new DietaryNeeds([Diet.Vegan], [Allergen.Nuts], [Allergen.Milk]));
        var later = night with { Guests = [.. night.Guests.Skip(1)], Begun = BegunDough.Of(night, Plans.Of(night)) };
        var changes = LateChanges.Between(new PlannedNight(night, Plans.Of(night)), new PlannedNight(later, Plans.Of(later)));

        AssertTranslated(words.Say(new NewMustNot("rui", asked)));
        Assert.All(Samples.Of(typeof(GuestCount)).Cast<GuestCount>(), count => Assert.All(
            Enum.GetValues<LateChangeKind>(), kind => AssertTranslated(words.Say(new LateChange("rui", kind, count, count, [])))));
        AssertTranslated(Render<LateChangesPanel>(with => with.Add(p => p.Changes, changes).Add(p => p.Words, words)));
        AssertTranslated(LateChangeText.SayCold(changes with { ColdNow = changes.ColdThen + Duration.FromHours(3) })!);
    }

    [Theory]
    [InlineData(MeasureSystem.Metric)]
    [InlineData(MeasureSystem.UsCustomary)]
    public void Begun_dough(MeasureSystem system)
    {
        var facts = new NightFacts(
            "Board night", new LocalDateTime(2026, 12, 12, 18, 30), null, Plans.Zone, "", "", FormulaId.New(), new Share(0.1), 24, 48, 72, 2);
        foreach (var canBeTakenBack in new[] { true, false })
        {
            var dough = new CommitmentView(
                NightBuilder.Now, "Hana", NightBuilder.Now, canBeTakenBack, 5, Plans.Usual.Dough.Total, NightBuilder.Now, Duration.FromHours(48));
            AssertTranslated(BegunDoughText.SayCancelled(dough, facts, Measures.Of(system)));
            Assert.All(
                new[] { -40, 0, 400 },
                hours => AssertTranslated(BegunDoughText.SayMoved(dough, facts, NightBuilder.Now + Duration.FromHours(hours))));
        }
    }

    [Fact]
    public void The_timeline()
    {
        var timeline = Plans.Usual.Timeline;
        var step = new TimelineStep("id", StepKind.Temper, 2, NightBuilder.Now, NightBuilder.Now + Duration.FromMinutes(10), false, Duration.FromHours(1));
        AssertTranslated(Render<StepList>(with => with.Add(p => p.Steps, [.. timeline.Steps, step]).Add(p => p.Zone, Plans.Zone)));
        AssertTranslated(Render<EveningChart>(with => with.Add(p => p.Steps, timeline.Steps).Add(p => p.Zone, Plans.Zone)));
        foreach (var isCommitted in new[] { false, true })
        {
            AssertTranslated(Render<DaysRibbon>(with => with
                .Add(p => p.Timeline, timeline).Add(p => p.ServeAt, timeline.FirstPieAt!.Value).Add(p => p.Now, NightBuilder.Now)
                .Add(p => p.Zone, Plans.Zone).Add(p => p.IsCommitted, isCommitted)));
            AssertTranslated(Render<MixTimeForm>(with => with
                .Add(p => p.IsFixed, isCommitted).Add(p => p.Begins, isCommitted ? NightBuilder.Now : null).Add(p => p.ByHand, NightBuilder.Now)
                .Add(p => p.Zone, Plans.Zone)));
        }
    }

    [Theory]
    [InlineData(MeasureSystem.Metric)]
    [InlineData(MeasureSystem.UsCustomary)]
    public void The_sheets(MeasureSystem system)
    {
        Read(system);
        foreach (var (plan, head) in new[] { (Plans.Usual, Paper.Head), (Plans.OnTwoDoughs, Paper.Head), (Plans.Empty, Paper.Head with { IsBeingRedone = true }) })
        {
            AssertTranslated(Render<PlanSheet>(with => with.Add(p => p.Plan, plan).Add(p => p.Head, head).Add(p => p.Items, Plans.Items)));
            AssertTranslated(Render<ShoppingSheet>(with => with
                .Add(p => p.Plan, plan).Add(p => p.Head, head).Add(p => p.Items, Plans.Items).Add(p => p.Roles, Paper.Roles)));
            AssertTranslated(Render<TimelineSheet>(with => with.Add(p => p.Steps, plan.Timeline.Steps).Add(p => p.Head, head)));
        }

        foreach (var split in new[] { Paper.Split, Plans.OnTwoDoughs.Split, Plans.Empty.Split })
        {
            AssertTranslated(Render<CardsSheet>(with => with
                .Add(p => p.Split, split).Add(p => p.Head, Paper.Head).Add(p => p.Items, Plans.Items).Add(p => p.Labels, Paper.Labels)
                .Add(p => p.People, Plans.Names).Add(p => p.Needs, Paper.Needs)));
            AssertTranslated(Render<TableSheet>(with => with
                .Add(p => p.Split, split).Add(p => p.Head, Paper.Head).Add(p => p.Items, Plans.Items)
                .Add(p => p.Allergens, PieAllergens.Of(split, Paper.Labels, SharedFolder.Tables.Menu.Dough, Plans.Maize.Composition))));
        }
    }

    public static TheoryData<Type> Warnings => CompletenessTests.Warnings;

    [Theory]
    [MemberData(nameof(Warnings))]
    public void Warnings_of_pies(Type warning) => Assert.All(
        Samples.Of(warning).Cast<PieWarning>(),
        sample => Assert.Equal("", PseudoLanguage.Foreign(new PieWarningText(_ => "Rui").Say(sample), ["Rui", "guest-1"])));

    private static NightPlan ByHand => Plans.Of(NightBuilder.ANight().WithGuests(8)
        .But(night => night with { ByHand = Planning.ByHand.Nothing with { Pies = new PieCount(9), Ball = new Grams(240) } }).Build());

    private void Read(MeasureSystem system) =>
        RenderTree.Add<CascadingValue<Measures>>(with => with.Add(cascade => cascade.Value, Measures.Of(system)));
}
