using GameNight.Planning;
using GameNight.Planning.Dough;
using GameNight.Planning.Quantities;
using NodaTime;

namespace GameNight.Nights.Records;

/// <summary>Everything about the kitchen that a host may set. Ranges are those of the planner's snapshot check.</summary>
/// <param name="Sauce">The sauce that is made here; null when nobody wrote it down.</param>
/// <param name="CheeseBlend">The cheese that is blended here; null when nobody wrote it down.</param>
/// <param name="Menu">How toppings go together here; null for the usual.</param>
/// <param name="LeavesPastOut">Past nights say nothing in the forecast here; null for the usual, that they count.</param>
public sealed record KitchenFacts(
    KitchenSnapshot Kitchen, HostHours Hours, HouseSauce? Sauce = null, HouseCheese? CheeseBlend = null,
    bool? LeavesPastOut = null, HouseMenu? Menu = null)
{
    /// <summary>A domestic oven with one surface, a bowl for 1.5 kg of dough and an unmeasured fridge (from memory).</summary>
    public static KitchenFacts Starting { get; } = new(
        new KitchenSnapshot(
            Room: new Celsius(21),
            Fridge: null,
            Tap: new Celsius(14),
            Oven: new Celsius(250),
            AltitudeMetres: 0,
            BatchCapacity: new Grams(1500),
            Kneading: KneadingWay.ByHand,
            PiesPerBake: 1,
            Hands: 1,
            Preheat: Duration.FromMinutes(25),
            Soak: Duration.FromMinutes(60),
            Bake: Duration.FromMinutes(7),
            Recovery: Duration.FromMinutes(12)),
        HostHours.Usual);
}

/// <summary>The group's kitchen.</summary>
public sealed class KitchenSetup
{
    public KitchenSetup(GroupId groupId, KitchenFacts facts)
    {
        GroupId = groupId;
        Facts = facts;
    }

    public GroupId GroupId { get; private set; }
    public KitchenFacts Facts { get; private set; }
    public uint Version { get; private set; }

    public void Set(KitchenFacts facts) => Facts = facts;
}
