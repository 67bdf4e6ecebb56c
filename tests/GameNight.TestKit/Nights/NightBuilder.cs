using GameNight.Planning;
using GameNight.Planning.Dough;
using GameNight.Planning.Guests;
using GameNight.Planning.Quantities;
using GameNight.Planning.Timeline;
using GameNight.Planning.Toppings;
using NodaTime;

namespace GameNight.TestKit.Nights;

/// <summary>A night in the trade's words: start from <see cref="ANight"/> and say what is different about it.</summary>
public sealed class NightBuilder
{
    /// <summary>Wednesday 2026-12-09, 18:00 UTC.</summary>
    public static readonly Instant Now = Instant.FromUtc(2026, 12, 9, 18, 0);

    private readonly List<GuestSnapshot> _guests = [];
    private NightSnapshot _night;

    private NightBuilder(NightSnapshot night)
    {
        _night = night;
    }

    /// <summary>Saturday 2026-12-12, 18:30 UTC, in a plain kitchen, with the starting menu and our house dough; nobody yet.</summary>
    public static NightBuilder ANight()
    {
        var tables = SharedFolder.Tables;
        var style = tables.Dough.Styles.Single(row => row.Id == "house-cold");
        return new NightBuilder(new NightSnapshot(
            Instant.FromUtc(2026, 12, 12, 18, 30),
            [],
            new KitchenSnapshot(
                Room: new Celsius(21),
                Fridge: new Celsius(5),
                Tap: new Celsius(14),
                Oven: new Celsius(250),
                AltitudeMetres: 0,
                BatchCapacity: new Grams(1500),
                KneadingWay.ByHand,
                PiesPerBake: 1,
                Hands: 1,
                Preheat: Duration.FromMinutes(25),
                Soak: Duration.FromMinutes(60),
                Bake: Duration.FromMinutes(7),
                Recovery: Duration.FromMinutes(12)),
            new DoughFormula(
                new Share(style.Water), new Share(style.Salt), new Share(style.Oil), new Share(style.Sugar), false,
                YeastForm.Instant, new Share(0.125), new Share(0.02)),
            new PieShape(
                new Centimetres(style.DiameterCentimetres), style.ThicknessGramsPerCm2, new Centimetres(style.RimCentimetres),
                new Centimetres(0.5), new Centimetres(0), style.SlicesPerPie),
            new Menu(
                [.. tables.Menu.Items.Select(item => new MenuItem(
                    Id(item.Name), item.Role, item.GramsPerCm2, item.Composition, item.WaterShare is { } water ? new Share(water) : null))],
                MostToppings: 3,
                tables.Menu.Dough),
            Sleep(),
            new ColdFerment(Duration.FromHours(40), Duration.FromHours(48), Duration.FromHours(72)),
            new Share(0.1),
            ByHand.Nothing));
    }

    /// <summary>Id of a menu item in these nights: its name in lower case with dashes.</summary>
    public static string Id(string name) => name.ToLowerInvariant().Replace(' ', '-');

    public static Eater AnEater(
        string id,
        PortionClass portion = PortionClass.Adult,
        Hunger hunger = Hunger.AsUsual,
        DietaryNeeds? needs = null,
        IReadOnlyDictionary<string, Liking>? likes = null,
        bool eatsHere = true) =>
        new(id, portion, hunger, eatsHere, needs ?? DietaryNeeds.None, likes ?? new Dictionary<string, Liking>());

    public NightBuilder With(AnswerState answer, params IReadOnlyList<Eater> eaters)
    {
        _guests.Add(new GuestSnapshot(eaters[0].Id, answer, eaters));
        return this;
    }

    /// <summary>So many adults who all said that they come.</summary>
    public NightBuilder WithGuests(int guests, AnswerState answer = AnswerState.Coming)
    {
        var first = _guests.Count;
        for (var index = 0; index < guests; index++)
        {
            With(answer, AnEater($"guest-{first + index}"));
        }

        return this;
    }

    public NightBuilder But(Func<NightSnapshot, NightSnapshot> change)
    {
        _night = change(_night);
        return this;
    }

    public NightSnapshot Build() => _night with { Guests = [.. _guests] };

    /// <summary>Nobody is asked to work between 22:00 and 06:00 UTC.</summary>
    private static List<HostAway> Sleep() =>
    [
        .. Enumerable.Range(3, 11).Select(day => new HostAway(
            Instant.FromUtc(2026, 12, day, 22, 0), Instant.FromUtc(2026, 12, day + 1, 6, 0))),
    ];
}
