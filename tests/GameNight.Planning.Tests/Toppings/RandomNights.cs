using System.Globalization;
using GameNight.Planning.Guests;
using GameNight.Planning.Toppings;

namespace GameNight.Planning.Tests.Toppings;

/// <summary>Nights of a given size from a seed, for what must hold at sizes where random shrinking would take hours.</summary>
internal static class RandomNights
{
    public static SplitRequest Large(int eaters, int pies, int seed = 1)
    {
        var random = new Random(seed);
        DietaryNeeds[] needs = [ASplit.Vegan, ASplit.Vegetarian, ASplit.NoMilk, ASplit.NoNutsNear];
        var guests = Enumerable.Range(0, eaters)
            .Select(index => new SplitEater(
                "e" + index.ToString("D3", CultureInfo.InvariantCulture),
                random.Next(2, 5),
                random.Next(10) < 3 ? needs[random.Next(needs.Length)] : DietaryNeeds.None,
                AMenu.Toppings.ToDictionary(topping => topping.Id, _ => (Liking)random.Next(5))))
            .ToArray();
        return ASplit.Request(AMenu.With(14), guests, pies, slicesPerPie: 8, groupExtra: 1);
    }
}
