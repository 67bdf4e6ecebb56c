using CsCheck;
using GameNight.Planning.Dough;
using GameNight.Planning.Quantities;
using GameNight.Web.Host;
using GameNight.Web.Wording;
using UnitsNet.Units;
using Quantity = UnitsNet.UnitConverter;

namespace GameNight.Web.Tests.Wording;

public class MeasuresTests
{
    private static readonly Measures Us = Measures.UsCustomary;

    public static TheoryData<string, Enum, Enum> Oracle => new()
    {
        { nameof(Unit.Fahrenheit), TemperatureUnit.DegreeCelsius, TemperatureUnit.DegreeFahrenheit },
        { nameof(Unit.Inches), LengthUnit.Centimeter, LengthUnit.Inch },
        { nameof(Unit.Feet), LengthUnit.Meter, LengthUnit.Foot },
        { nameof(Unit.Ounces), MassUnit.Gram, MassUnit.Ounce },
        { nameof(Unit.Pounds), MassUnit.Gram, MassUnit.Pound },
        { nameof(Unit.SquareInches), AreaUnit.SquareCentimeter, AreaUnit.SquareInch },
    };

    [Theory]
    [MemberData(nameof(Oracle))]
    public void Conversions_agree_with_a_library_of_units(string unit, Enum kept, Enum shown)
    {
        var ours = (Unit)typeof(Unit).GetProperty(unit)!.GetValue(null)!;

        Gen.Double[-40, 60_000].Sample(value =>
        {
            var theirs = Quantity.Convert(value, kept, shown);
            return Close(ours.From(value), theirs) && Close(ours.ToKept(theirs), value);
        });

        static bool Close(double left, double right) => Math.Abs(left - right) <= 1e-9 * Math.Max(1, Math.Abs(right));
    }

    [Theory]
    [InlineData(24, "24 °C", "75 °F")]
    [InlineData(-1, "-1 °C", "30 °F")]
    [InlineData(250, "250 °C", "482 °F")]
    public void Temperatures_are_said_in_the_readers_degrees(double celsius, string metric, string us)
    {
        Assert.Equal(metric, Measures.Metric.Say(new Celsius(celsius)));
        Assert.Equal(us, Us.Say(new Celsius(celsius)));
    }

    [Fact]
    public void A_difference_of_temperatures_has_no_zero_to_add() => Assert.Equal("9 °F", Us.SayDifference(5));

    [Theory]
    [InlineData(0.8, "0.80 g", "0.03 oz")]
    [InlineData(60, "60 g", "2.1 oz")]
    [InlineData(452.9, "453 g", "1 lb 0 oz")]
    [InlineData(1620, "1\u202f620 g", "3 lb 9.1 oz")]
    public void Masses_are_said_as_a_kitchen_scale_shows_them(double grams, string metric, string us)
    {
        Assert.Equal(metric, Measures.Metric.Say(new Grams(grams)));
        Assert.Equal(us, Us.Say(new Grams(grams)));
    }

    [Fact]
    public void Dough_keeps_its_grams_beside_ounces()
    {
        Assert.Equal("250 g (8.8 oz)", Us.SayDough(new Grams(250)));
        Assert.Equal("250 g", Measures.Metric.SayDough(new Grams(250)));
    }

    [Theory]
    [InlineData(HouseholdFood.InstantYeast, 0.05, null)]
    [InlineData(HouseholdFood.InstantYeast, 0.86, "¼ teaspoon")]
    [InlineData(HouseholdFood.InstantYeast, 7, "2¼ teaspoons")]
    [InlineData(HouseholdFood.ActiveDryYeast, 7, "1¾ teaspoons")]
    [InlineData(HouseholdFood.TableSalt, 6, "1 teaspoon")]
    [InlineData(HouseholdFood.InstantYeast, 0.6, null)]
    [InlineData(HouseholdFood.TableSalt, 45, "2½ tablespoons")]
    [InlineData(HouseholdFood.BreadFlour, 1000, "7¼ cups")]
    [InlineData(HouseholdFood.AllPurposeFlour, 1000, "8 cups")]
    [InlineData(HouseholdFood.AllPurposeFlour, 20, null)]
    [InlineData(HouseholdFood.Honey, 339, "1 cup")]
    public void Spoons_and_cups_follow_the_food_and_what_lies_in_a_drawer(HouseholdFood food, double grams, string? said) =>
        Assert.Equal(said, Household.Measure(new Grams(grams), food));

    [Fact]
    public void Flour_is_said_in_cups_of_either_kind_and_fresh_yeast_is_only_weighed()
    {
        Assert.Equal("7¼ cups of bread flour or 8 cups of all-purpose flour", HouseholdText.OfFlour(new Grams(1000)));
        Assert.Equal("21 fl oz", HouseholdText.OfWater(new Grams(620)));
        Assert.Null(HouseholdText.OfWater(new Grams(251)));
        Assert.Null(HouseholdText.OfYeast(YeastForm.Fresh, new Grams(10)));
    }

    [Fact]
    public void What_was_shown_and_not_touched_is_kept_unrounded() => Gen.Double[5, 40].Sample(celsius =>
    {
        var numbers = new TypedNumbers();
        return numbers.Read("room", Unit.Fahrenheit.Typed(celsius), 5, 40, Unit.Fahrenheit, celsius) == celsius && numbers.Problems.Count == 0;
    });

    [Theory]
    [InlineData("70", 21.1111)]
    [InlineData("70.5", 21.3889)]
    [InlineData("70,5", 21.3889)]
    [InlineData("41", 5)]
    [InlineData("104", 40)]
    public void What_is_typed_in_the_hosts_unit_is_kept_in_ours(string typed, double celsius)
    {
        var numbers = new TypedNumbers();

        Assert.Equal(celsius, numbers.Read("room", typed, 5, 40, Unit.Fahrenheit, 21), 4);
        Assert.Empty(numbers.Problems);
    }

    [Theory]
    [InlineData("40.9")]
    [InlineData("104.1")]
    [InlineData("warm")]
    public void A_number_out_of_range_is_answered_in_the_hosts_unit(string typed)
    {
        var numbers = new TypedNumbers();
        numbers.Read("room", typed, 5, 40, Unit.Fahrenheit, 21);

        Assert.Equal("Type a number from 41 to 104.", numbers.Problems["room"]);
    }

    [Fact]
    public void Every_limit_that_is_named_may_be_typed() => Gen.Select(Gen.Double[0.1, 100], Gen.Double[200, 5000]).Sample((low, high) =>
    {
        foreach (var unit in new[] { Unit.Ounces, Unit.Inches, Unit.OuncesPerSquareInch, Unit.Feet, Unit.Fahrenheit })
        {
            foreach (var named in new[] { unit.LowestTyped(low), unit.HighestTyped(high) })
            {
                var numbers = new TypedNumbers();
                var kept = numbers.Read("field", TypedNumbers.Text(named), low, high, unit);
                Assert.Empty(numbers.Problems);
                Assert.InRange(kept, low, high);
            }
        }
    });
}
