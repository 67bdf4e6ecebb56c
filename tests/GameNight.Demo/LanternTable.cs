using GameNight.Nights.Records;
using GameNight.Planning;
using GameNight.Planning.Appetite;
using GameNight.Planning.Cheese;
using GameNight.Planning.Guests;
using GameNight.Planning.Heat;
using GameNight.Planning.Quantities;
using NodaTime;

namespace GameNight.Demo;

/// <summary>Somebody of the demo's group. All of it is invented.</summary>
/// <param name="Likes">Menu item name to liking.</param>
/// <param name="Needs">Must-nots, or none.</param>
internal sealed record Person(
    string Name, PortionClass Portion, Hunger Hunger, IReadOnlyDictionary<string, Liking> Likes, DietaryNeeds Needs, string Note);

/// <summary>What somebody answered for one night.</summary>
/// <param name="ComesAt">Hour of the day, for who comes late.</param>
internal sealed record Said(string Name, Presence Presence, int Adults = 0, int Children = 0, bool Late = false, int? ComesAt = null);

/// <summary>What somebody said afterwards.</summary>
internal sealed record SaidAfter(string Name, Enough Enough, Evening Evening, double Slices, string Words = "", bool Namelessly = false);

/// <summary>A night of the demo.</summary>
/// <param name="WeeksAgo">Before the night that is to come; 0 is that one.</param>
/// <param name="SlicesLeft">What nobody ate; counted for past nights.</param>
internal sealed record DemoNight(
    int WeeksAgo, string Title, string Bring, IReadOnlyList<Said> Answers, int PiesFewer, double SlicesLeft, string ToChange,
    IReadOnlyList<SaidAfter> After, int? Seats = null, Played? Played = null);

/// <summary>A group of our own invention: tiles, cards and boards by lantern light, every second Saturday.</summary>
internal static class LanternTable
{
    public const string GroupName = "The Lantern Table";
    public const string HostName = "Ottilie";
    public const string CoHostName = "Bram";
    public const string Zone = "Europe/Vienna";
    public const string Address = "Kerbelgasse 4, second floor, ring at Lantern";
    public const string Email = "ottilie@example.org";
    public const string Password = "lanterns over the table";

    /// <summary>Who of them lives under one roof.</summary>
    public static (string Name, IReadOnlyList<string> Members) Household { get; } = ("Kerbel", ["Maren", "Odalys"]);

    public static LocalTime ServeAt { get; } = new(19, 0);
    public static LocalTime EndsAt { get; } = new(23, 30);

    /// <summary>The kitchen Ottilie bakes in.</summary>
    /// <param name="items">Ids of the menu by name.</param>
    public static KitchenFacts Furnish(KitchenFacts facts, ReferenceTables tables, IReadOnlyDictionary<string, string> items) => facts with
    {
        Kitchen = facts.Kitchen with
        {
            Fridge = new Celsius(5),
            Place = BakingPlace.Assumed with
            {
                IronAbove = new BakingSurface(SurfaceKind.CastIron, 8, new Centimetres(38), new Centimetres(38)),
                Lead = SoakLead.Model,
            },
        },
        Sauce = new HouseSauce(items["Tomato sauce"], tables.Sauces.Formula(tables.Sauces.Formulas[0])),
        CheeseBlend = new HouseCheese(
            items["Cheese blend"],
            new CheeseBlend(new Share(0.8), new Share(0.1), new Share(0.1), new Share(0.1), HardIsVegetarian: true)),
    };

    public static IReadOnlyList<Person> Guests { get; } =
    [
        Of("Sunniva", Likes(("Mushrooms", Liking.Favourite), ("Spinach", Liking.Like)), Diets(Diet.Vegetarian)),
        Of("Kofi", Likes(("Spicy sausage", Liking.Favourite), ("Anchovies", Liking.Never)), hunger: Hunger.More),
        Of("Maren", Likes(("Olives", Liking.Favourite), ("Peppers", Liking.Like)), new([], [Allergen.Milk], []), note: "A little butter is fine, melted cheese is not."),
        Of("Tadeo", Likes(("Cooked ham", Liking.Like), ("Red onion", Liking.RatherNot))),
        Of("Yara", Likes(("Peppers", Liking.Favourite)), new([], [], [Allergen.Fish]), note: "Anchovies must not touch my slices; I carry my medicine."),
        Of("Ishaan", Likes(("Spinach", Liking.Favourite), ("Mushrooms", Liking.Like)), Diets(Diet.NoPork)),
        Of("Wren", Likes(("Olives", Liking.Like)), portion: PortionClass.Teen),
        Of("Odalys", Likes(("Anchovies", Liking.Favourite), ("Olives", Liking.Like))),
        Of("Pell", Likes(("Red onion", Liking.Favourite), ("Cooked ham", Liking.Like)), hunger: Hunger.Less),
    ];

    public static IReadOnlyList<DemoNight> Nights { get; } =
    [
        new(6, "Tiles by lantern light", "Something to drink",
            [
                new("Sunniva", Presence.Coming), new("Kofi", Presence.Coming), new("Maren", Presence.NotComing),
                new("Tadeo", Presence.Coming, Adults: 1), new("Ishaan", Presence.Coming), new("Odalys", Presence.Undecided),
                new("Pell", Presence.Coming),
            ],
            PiesFewer: 0, SlicesLeft: 19, "One pie too many. Take the stone out of the drawer before the oven is hot.",
            [
                new("Sunniva", Enough.TooMuch, Evening.Lovely, 3), new("Kofi", Enough.Right, Evening.Lovely, 5),
                new("Ishaan", Enough.TooMuch, Evening.Fine, 3, "More spinach, please."),
            ]),
        new(4, "Card night", "A snack for between",
            [
                new("Sunniva", Presence.Coming), new("Kofi", Presence.NotComing), new("Maren", Presence.Coming),
                new("Tadeo", Presence.Coming), new("Yara", Presence.Coming), new("Ishaan", Presence.Coming, Late: true),
                new("Wren", Presence.Coming), new("Odalys", Presence.Coming, Children: 1),
            ],
            PiesFewer: 1, SlicesLeft: 4, "The last pie stuck to the peel: more semolina.",
            [
                new("Maren", Enough.Right, Evening.Lovely, 3, "The one without cheese was the best yet."),
                new("Yara", Enough.Right, Evening.Lovely, 3), new("Odalys", Enough.TooLittle, Evening.Fine, 4),
                new("Wren", Enough.Right, Evening.Lovely, 4, "Start the long game earlier.", Namelessly: true),
            ]),
        new(2, "The long board", "Something sweet",
            [
                new("Sunniva", Presence.Coming), new("Kofi", Presence.Coming), new("Maren", Presence.Coming),
                new("Tadeo", Presence.Undecided), new("Yara", Presence.NotComing), new("Ishaan", Presence.Coming),
                new("Odalys", Presence.Coming), new("Pell", Presence.Coming, Adults: 1),
            ],
            PiesFewer: 0, SlicesLeft: 14, "",
            [
                new("Sunniva", Enough.Right, Evening.Lovely, 3), new("Kofi", Enough.Right, Evening.Fine, 5),
                new("Maren", Enough.Right, Evening.Lovely, 2), new("Pell", Enough.TooMuch, Evening.Fine, 2),
            ]),
        new(0, "Auction evening", "A wish for the next game",
            [
                new("Sunniva", Presence.Coming), new("Kofi", Presence.Coming, Adults: 1), new("Maren", Presence.Coming),
                new("Tadeo", Presence.Undecided), new("Yara", Presence.Coming, ComesAt: 21), new("Odalys", Presence.Coming),
                new("Pell", Presence.NotComing), new("Ishaan", Presence.Coming),
            ],
            PiesFewer: 0, SlicesLeft: 0, "", [], Seats: 8, Played: new Played("Auction by lantern light", new PlayersWanted(4, 8))),
    ];

    private static Person Of(
        string name, IReadOnlyDictionary<string, Liking> likes, DietaryNeeds? needs = null,
        Hunger hunger = Hunger.AsUsual, PortionClass portion = PortionClass.Adult, string note = "") =>
        new(name, portion, hunger, likes, needs ?? DietaryNeeds.None, note);

    private static Dictionary<string, Liking> Likes(params (string Item, Liking Liking)[] likes) =>
        likes.ToDictionary(like => like.Item, like => like.Liking);

    private static DietaryNeeds Diets(params Diet[] diets) => new(diets, [], []);
}
