namespace GameNight.Planning.Toppings;

/// <summary>Parts of a pie that the host has settled; the split is made around them.</summary>
/// <param name="Pie">Number of the pie, from 1.</param>
/// <param name="Parts">How many of its parts carry the combination, at least 1.</param>
public sealed record Pin(int Pie, int Parts, string BaseId, string CheeseId, IReadOnlyList<string> ToppingIds);

/// <summary>Why a pin cannot hold.</summary>
public enum PinFault
{
    /// <summary>The night has fewer pies.</summary>
    NoSuchPie,

    /// <summary>The pins of the pie ask for more parts than it has.</summary>
    TooManyParts,

    /// <summary>Not on the menu, too many toppings, or two that never go together.</summary>
    NotOnMenu,

    /// <summary>The pie is an own pie now, and its owners must not have it.</summary>
    MustNotBeThere,
}

/// <summary>What a host settled for a pie cannot hold and was left out; everything else stands.</summary>
public sealed record PinLeftOut(int PieNumber, PinFault Because) : Conflict;

/// <summary>A pin that holds: so many units of a choice on a pie of a set.</summary>
internal sealed record SettledPin(int Pie, int Set, int Units, MenuChoice Choice);

/// <summary>Which pins can hold, by the menu, the pies there are and whose they are.</summary>
internal static class Pins
{
    public static IReadOnlyList<SettledPin> Settle(
        SplitRequest request, MenuLists menu, IReadOnlyList<PieSet> sets, IReadOnlyList<SeatedEater> eaters, List<Conflict> conflicts)
    {
        var settled = new List<SettledPin>();
        foreach (var pin in request.Pins ?? [])
        {
            var set = SetOf(pin.Pie);
            var choice = ChoiceOf(pin);
            PinFault? fault =
                set is null ? PinFault.NoSuchPie
                : choice is null ? PinFault.NotOnMenu
                : pin.Parts < 1 || settled.Where(other => other.Pie == pin.Pie).Sum(other => other.Units) + pin.Parts > request.PartsPerPie ? PinFault.TooManyParts
                : !sets[set.Value].Owners.All(owner => eaters[owner].Palate.Permits(choice)) ? PinFault.MustNotBeThere
                : null;
            if (fault is { } because)
            {
                conflicts.Add(new PinLeftOut(pin.Pie, because));
            }
            else
            {
                settled.Add(new SettledPin(pin.Pie, set!.Value, pin.Parts, choice!));
            }
        }

        return settled;

        int? SetOf(int pie)
        {
            var last = 0;
            for (var set = 0; set < sets.Count; set++)
            {
                last += sets[set].Pies;
                if (pie >= 1 && pie <= last)
                {
                    return set;
                }
            }

            return null;
        }

        MenuChoice? ChoiceOf(Pin pin)
        {
            var place = (Base: Place(menu.Bases, pin.BaseId), Cheese: Place(menu.Cheeses, pin.CheeseId));
            int[] toppings = [.. pin.ToppingIds.Select(id => Place(menu.Toppings, id)).Order()];
            return place.Base < 0 || place.Cheese < 0 || toppings.Any(topping => topping < 0) || toppings.Distinct().Count() < toppings.Length
                || toppings.Length > menu.Menu.MostToppings || menu.NeverTogether(toppings)
                ? null
                : new MenuChoice(place.Base, place.Cheese, toppings);
        }

        static int Place(IReadOnlyList<MenuItem> items, string id) => items.ToList().FindIndex(item => item.Id == id);
    }
}
