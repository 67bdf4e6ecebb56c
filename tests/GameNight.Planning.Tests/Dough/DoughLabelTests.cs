using GameNight.Planning.Dough;
using GameNight.Planning.Guests;
using GameNight.Planning.Quantities;
using GameNight.Planning.Safety;
using GameNight.Planning.Toppings;
using GameNight.TestKit;
using static GameNight.TestKit.Nights.NightBuilder;

namespace GameNight.Planning.Tests.Dough;

/// <summary>What the host puts into the dough is known only from labels, and unknown is not the same as not contained.</summary>
public class DoughLabelTests
{
    private static readonly NightPlanner Planner = new(SharedFolder.Tables);
    private static readonly Composition Milk = new([Allergen.Milk], [Allergen.Sesame], [], [Diet.Vegetarian, Diet.NoPork, Diet.NoAlcohol]);

    [Theory]
    [InlineData(Allergen.Milk)]
    [InlineData(Allergen.Fish)]
    public void A_part_whose_label_nobody_read_keeps_the_dough_from_whoever_avoids_anything(Allergen avoided) =>
        Assert.False(IsFed(Formula(label: null), new DietaryNeeds([], [avoided], [])));

    [Fact]
    public void A_part_whose_label_nobody_read_keeps_no_diet() =>
        Assert.False(IsFed(Formula(label: null), new DietaryNeeds([Diet.Vegetarian], [], [])));

    [Theory]
    [InlineData(Allergen.Milk, false)]
    [InlineData(Allergen.Sesame, false)]
    [InlineData(Allergen.Fish, true)]
    public void A_label_that_was_read_keeps_it_only_from_whom_it_concerns(Allergen avoided, bool isFed)
    {
        Assert.Equal(isFed, IsFed(Formula(Milk), new DietaryNeeds([], [avoided], [])));
        Assert.True(IsFed(Formula(Milk), new DietaryNeeds([Diet.Vegetarian], [], [])));
        Assert.False(IsFed(Formula(Milk), new DietaryNeeds([Diet.Vegan], [], [])));
    }

    [Fact]
    public void A_label_left_unread_is_told_and_one_that_was_read_is_not()
    {
        var (unread, read) = (Plan(Formula(label: null), DietaryNeeds.None), Plan(Formula(Milk), DietaryNeeds.None));

        Assert.Contains(unread.Conflicts, conflict => conflict is PartsWithoutLabel);
        Assert.Contains(unread.Cautions, caution => caution.Kind == CautionKind.DoughPartsWithoutLabel);
        Assert.DoesNotContain(read.Conflicts, conflict => conflict is PartsWithoutLabel);
        Assert.DoesNotContain(read.Cautions, caution => caution.Kind == CautionKind.DoughPartsWithoutLabel);
    }

    [Fact]
    public void A_begun_dough_can_have_its_label_read_and_is_not_whitewashed_by_the_next_bag()
    {
        var night = ANight().WithGuests(4).But(one => one with { Formula = Formula(label: null) }).Build();
        var unread = night with { Begun = BegunDough.Of(night, Planner.Plan(night, Now, Effort.Quick)) };
        var milky = night with { Formula = Formula(Milk) };
        var read = milky with { Begun = BegunDough.Of(milky, Planner.Plan(milky, Now, Effort.Quick)) };
        Composition nothing = new([], [], [], Enum.GetValues<Diet>());

        Assert.Equal(Enum.GetValues<Allergen>(), LabelOf(unread, Formula(label: null)).Unknown.Concat(LabelOf(unread, Formula(label: null)).Contains).Order());
        Assert.Contains(Allergen.Milk, LabelOf(unread, Formula(Milk)).Contains);
        Assert.Contains(Allergen.Milk, LabelOf(read, Formula(nothing)).Contains);
        Assert.Contains(Allergen.Milk, LabelOf(read, Formulas.Plain).Contains);
        Assert.Contains(Allergen.Milk, LabelOf(read, Formula(label: null)).Contains);

        static Composition LabelOf(NightSnapshot begun, DoughFormula now) => NightSauceAndCheese.DoughLabelOf(begun with { Formula = now });
    }

    [Fact]
    public void A_dough_without_parts_of_ones_own_is_as_it_was() =>
        Assert.True(IsFed(Formulas.Plain, new DietaryNeeds([], [Allergen.Milk], [])));

    private static DoughFormula Formula(Composition? label) => Formulas.Plain with
    {
        Extras = [new ExtraIngredient("milk", new Share(0.1), new Share(0.88))],
        PartsLabel = label,
    };

    private static bool IsFed(DoughFormula formula, DietaryNeeds needs) =>
        !Plan(formula, needs).Conflicts.Any(conflict => conflict is NothingPermitted { Because: NothingPermittedBecause.Dough });

    private static NightPlan Plan(DoughFormula formula, DietaryNeeds needs)
    {
        var night = ANight().WithGuests(4).But(one => one with { Formula = formula }).Build();
        var first = night.Guests[0];
        return Planner.Plan(
            night with { Guests = [first with { Eaters = [first.Eaters[0] with { Needs = needs }] }, .. night.Guests.Skip(1)] }, Now, Effort.Quick);
    }
}
