using CsCheck;
using GameNight.Planning.Foods;
using GameNight.Planning.Guests;
using GameNight.Planning.Quantities;
using GameNight.Planning.Sauce;
using GameNight.TestKit;
using NodaTime;

namespace GameNight.Planning.Tests.Sauce;

public class SaucePlanTests
{
    /// <summary>Room for rounding in double arithmetic on tens of kilograms.</summary>
    private const double RoundOff = 1e-7;

    private static readonly SauceTable Table = SharedFolder.Tables.Sauces;
    private static readonly FoodTable Foods = SharedFolder.Tables.Foods;

    private static readonly Gen<SauceFormula> Formulas =
        from shares in Gen.Double[0, 1].Array[Table.Parts.Count]
        from tin in Gen.Enum<TomatoTin>()
        from tomato in Gen.Double[100, 5000]
        from salt in Gen.Double[0, 0.025]
        from minutes in Gen.Double[0, 240]
        from diameter in Gen.Double[12, 50]
        from holds in Gen.Double[500, 12_000]
        from evaporation in Gen.Double[0, 0.05]
        from label in Gen.Double[0, 0.02].Nullable()
        select new SauceFormula(
            tin,
            new Grams(tomato),
            [.. Table.Parts.Select((part, index) => new FoodPart(part.Food, new Grams(shares[index] * part.MostPerTomato * tomato)))],
            new Share(salt),
            Duration.FromMinutes(minutes),
            new SaucePot(new Centimetres(diameter), new Grams(holds), evaporation),
            SauceKeeps.ForDays,
            label is { } share ? new Share(share) : null);

    private static readonly Grams[][] TinsOfShops =
    [
        [new(400)], [new(400), new(800)], [new(400), new(800), new(2500)], [new(690), new(250)],
    ];

    private static readonly Gen<Grams[]> Tins = Gen.Int[0, TinsOfShops.Length - 1].Select(shop => TinsOfShops[shop]);

    [Fact]
    public void What_goes_in_is_what_is_finished_and_what_evaporates() =>
        Gen.Select(Formulas, Gen.Double[50, 8000], Tins).Sample((formula, needed, tins) =>
        {
            var plan = For(formula, needed, tins);

            Assert.Equal(
                plan.Weigh.Sum(part => part.Grams.Value) + plan.Salt.Value,
                plan.Finished.Value + plan.Evaporated.Value,
                RoundOff);
            Assert.InRange(plan.Water.Value, 0, 1);
        }, iter: 300);

    [Fact]
    public void Whole_tins_always_cover_the_need_and_one_tin_less_would_not_where_there_is_one_size() =>
        Gen.Select(Formulas, Gen.Double[50, 8000], Tins).Sample((formula, needed, tins) =>
        {
            var plan = For(formula, needed, tins);

            Assert.True(plan.Finished.Value >= needed);
            Assert.Equal(plan.Weigh[0].Grams.Value, plan.Tins.Sum(tin => tin.Size.Value * tin.Count), RoundOff);
            Assert.Equal(plan.Finished.Value - needed, plan.Surplus.Mass.Value, RoundOff);
            Assert.All(plan.Tins, tin => Assert.Contains(tin.Size, tins));
            if (tins.Length == 1 && plan.Tins[0].Count > 1)
            {
                var less = new SimmeredSauce(formula, tins[0] * (plan.Tins[0].Count - 1.0), Table, Foods);
                Assert.True(less.Finished.Value < needed);
            }
        }, iter: 300);

    [Fact]
    public void The_salt_of_the_finished_sauce_is_what_was_asked_for_unless_the_tins_bring_more() =>
        Gen.Select(Formulas, Gen.Double[50, 8000]).Sample((formula, needed) =>
        {
            var plan = For(formula, needed);
            var salty = plan.Because.OfType<SaltInTheTins>().Single();
            var share = (salty.AlreadyIn + plan.Salt) / plan.Finished;

            Assert.Equal(formula.TinSalt is not null, salty.FromLabel);
            if (plan.Salt.Value > 0)
            {
                Assert.Equal(formula.Salt.Value, share, RoundOff);
            }
            else
            {
                Assert.True(share >= formula.Salt.Value - RoundOff);
                Assert.Equal(formula.Salt.Value > 0, plan.Conflicts.OfType<SaltierThanAsked>().Any());
            }
        }, iter: 300);

    [Fact]
    public void The_longer_it_simmers_the_less_water_is_left_and_never_less_than_in_paste() =>
        Gen.Select(Formulas, Gen.Double[100, 6000], Gen.Double[0, 240]).Sample((formula, tomato, minutes) =>
        {
            var (shorter, longer) = (Math.Min(minutes, formula.Simmer.TotalMinutes), Math.Max(minutes, formula.Simmer.TotalMinutes));
            var (less, more) = (After(shorter), After(longer));

            Assert.True(more.Evaporated >= less.Evaporated);
            Assert.True(more.Finished.Value <= less.Finished.Value + RoundOff);
            Assert.True(more.WaterShare.Value <= less.WaterShare.Value + RoundOff);

            // Salt comes on top of what simmered down; and what goes in as thick as paste does not simmer at all.
            var raw = Foods.Sum(more.Parts);
            var thickest = Math.Min(Table.Thickest.WaterShare, raw.Water / raw.Mass);
            Assert.True(more.WaterShare.Value * more.Finished.Value >= thickest * (more.Finished.Value - more.Salt.Value) - RoundOff);

            SimmeredSauce After(double simmer) =>
                new(formula with { Simmer = Duration.FromMinutes(simmer) }, new Grams(tomato), Table, Foods);
        }, iter: 500);

    [Fact]
    public void Less_alcohol_is_left_the_longer_it_simmers_and_never_more_than_went_in() =>
        Gen.Select(Gen.Double[0, 400], Gen.Double[0, 400]).Sample((one, other) =>
        {
            var (sooner, later) = (Retained(Math.Min(one, other)), Retained(Math.Max(one, other)));
            Assert.True(later <= sooner);
            Assert.InRange(sooner, 0.05, 0.85);
        });

    [Fact]
    public void Between_the_rows_of_the_alcohol_table_lies_a_straight_line()
    {
        Assert.Equal(0.375, Retained(22.5), RoundOff);
        Assert.Equal(0.625, Retained(7.5), RoundOff);
        Assert.Equal(0.05, Retained(600), RoundOff);
        Assert.Throws<ArgumentOutOfRangeException>(() => Table.Retention.After(Duration.FromMinutes(-1)));
    }

    [Fact]
    public void Sauce_for_five_pies_comes_out_of_one_tin()
    {
        // By hand: 400 g of tomato, 2.4 g of garlic, 6 g of oil and 0.4 g of oregano are 408.8 g; a pot of 24 cm
        // (452.39 cm2) loses 6.786 g a minute, 67.86 g in ten. 400 g of tomato bring 1.28 g of salt, garlic, oil and
        // oregano less than a hundredth of a gram.
        var plan = For(Formula("bright-tin"), 308);

        Assert.Equal((400, 1), (plan.Tins.Single().Size.Value, plan.Tins.Single().Count));
        Assert.Equal(67.86, plan.Evaporated.Value, 0.01);
        Assert.Equal(((0.01 * 340.94) - 1.2817) / 0.99, plan.Salt.Value, 0.002);
        Assert.Equal(340.94 + plan.Salt.Value, plan.Finished.Value, 0.01);
        Assert.Equal(0.8, plan.Weigh.Single(part => part.Food == Food.Garlic).Pieces!.Value, 0.001);
        Assert.Equal(0.4, plan.Weigh.Single(part => part.Food == Food.DriedOregano).Teaspoons!.Value, 0.001);
        Assert.Equal(Duration.FromMinutes(15 + 5 + 10), plan.Time);
    }

    [Fact]
    public void Wine_leaves_a_third_of_its_alcohol_after_half_an_hour()
    {
        var plan = For(Formula("deep-pot"), 1000);
        var left = Assert.Single(plan.Because.OfType<AlcoholLeft>());
        var wine = plan.Weigh.Single(part => part.Food == Food.RedWine).Grams.Value;

        Assert.Equal(0.35 - (0.1 * 5 / 30), left.Retained.Value, RoundOff);
        Assert.Equal(wine * 0.106 * left.Retained.Value * 60 / plan.Finished.Value, plan.AlcoholPerPie.Value, RoundOff);
        Assert.Equal(0, For(Formula("bright-tin"), 1000).AlcoholPerPie.Value);
    }

    [Fact]
    public void Wine_keeps_no_diet_and_names_sulphites_until_its_label_says_more()
    {
        var wine = Formula("deep-pot").Composition(Foods);
        var vegan = (Formula("deep-pot") with { WineIsVegan = true }).Composition(Foods);
        var without = Formula("bright-tin").Composition(Foods);

        Assert.Equal([Allergen.Sulphites], wine.Contains);
        Assert.Empty(wine.Suits);
        Assert.Equal([Diet.Vegetarian, Diet.Vegan, Diet.NoPork], vegan.Suits);
        Assert.Equal(4, without.Suits.Count);
        Assert.Empty(without.Contains);
    }

    [Fact]
    public void A_little_sauce_in_a_wide_pot_is_a_conflict_with_the_longest_simmer()
    {
        var formula = Formula("deep-pot") with { Simmer = Duration.FromMinutes(240) };

        var plan = For(formula, 80, [new Grams(400)]);

        var conflict = Assert.Single(plan.Conflicts.OfType<SimmersTooThick>());
        Assert.Equal(plan.Simmer.Expected, conflict.Longest);
        Assert.True(conflict.Longest < conflict.Asked);
    }

    [Fact]
    public void More_than_all_pots_hold_is_a_conflict_and_still_planned()
    {
        var formula = Formula("bright-tin") with { Pot = Formula("bright-tin").Pot with { Holds = new Grams(500) } };

        var plan = For(formula, 9000);

        Assert.Equal(Table.Pot.MostPots, plan.Pots);
        Assert.True(Assert.Single(plan.Conflicts.OfType<PotTooSmall>()).PerPot > formula.Pot.Holds);
    }

    [Fact]
    public void What_is_left_over_has_its_dates()
    {
        var ready = Instant.FromUtc(2026, 12, 12, 16, 0);

        var surplus = For(Formula("deep-pot"), 500).MadeAt(ready).Surplus;

        Assert.Equal(ready + Duration.FromDays(4), surplus.FridgeUntil);
        Assert.Equal(ready + Duration.FromDays(90), surplus.FreezerUntil);
    }

    [Fact]
    public void A_sauce_that_is_none_is_refused_with_the_range_and_its_reason()
    {
        var formula = Formula("bright-tin");
        (SauceFormula Formula, Grams[] Tins, string Says)[] wrong =
        [
            (formula with { Tomato = default }, [new Grams(400)], "a sauce without tomato is none"),
            (formula, [], "a sauce without tomato is none"),
            (formula with { Parts = [new FoodPart(Food.Garlic, new Grams(3000))] }, [new Grams(400)], "garlic paste"),
            (formula with { Simmer = Duration.FromHours(50) }, [new Grams(400)], "four hours"),
            (formula with { Simmer = Duration.FromMinutes(-5) }, [new Grams(400)], "lies between 0 and 240"),
            (formula, [new Grams(4)], "smallest tin"),
            (formula with { Parts = [.. formula.Parts, .. formula.Parts] }, [new Grams(400)], "named once"),
        ];
        foreach (var (one, tins, says) in wrong)
        {
            var problem = Assert.Throws<ArgumentOutOfRangeException>(() => For(one, 500, tins));
            Assert.Contains(says, problem.Message, StringComparison.Ordinal);
        }

        Assert.Throws<ArgumentOutOfRangeException>(() => For(formula, 0));
    }

    private static double Retained(double minutes) => Table.Retention.After(Duration.FromMinutes(minutes)).Value;

    private static SauceFormula Formula(string id) => Table.Formula(Table.Formulas.Single(row => row.Id == id));

    private static SaucePlan For(SauceFormula formula, double needed, Grams[]? tins = null) =>
        SaucePlan.For(formula, new Grams(needed), new Grams(60), tins ?? Table.TinSizes, Table, Foods);
}
