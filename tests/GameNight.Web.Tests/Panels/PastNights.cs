using GameNight.Nights.PastNights;
using GameNight.Nights.Records;
using GameNight.Planning.Quantities;
using GameNight.Planning.Toppings;
using NodaTime;

namespace GameNight.Web.Tests.Panels;

/// <summary>Nights that are over, to show.</summary>
internal static class PastNights
{
    public static LookBackFacts Silence { get; } = new(null, null, null, [], "", Namelessly: false);

    /// <summary>So many pies, each with something of its own on it.</summary>
    public static NightPies Pies(int kinds) => new(
        [.. Enumerable.Range(1, kinds).Select(number => new PieKind(number, [number], new PieOrder(number, [new Sector(Letter(number), 8)], [])))],
        Enumerable.Range(1, kinds).ToDictionary(Letter, number => new Combination(Letter(number), "base", "cheese", [])),
        []);

    /// <summary>Four pies of eight slices planned; people expected to eat 20 to 33.</summary>
    public static SlicesAccount Slices(int? baked = null, double? left = null) => new(
        8, new PieCount(4), new Estimate<double>(26, 20, 33), baked is { } pies ? new PieCount(pies) : null, left);

    public static PastNightLine Line(LocalDate date, SlicesAccount slices) => new(
        NightId.New(), "Board games", date.At(new LocalTime(19, 30)), 6, IsWritten: true, slices, Opinions.Of([], Pies(2)), [], Pies(2));

    /// <summary>Rui came alone, Eva was expected with one more, Ana was not.</summary>
    public static PastNightView Night(
        BakeLogFacts? log = null, IReadOnlyList<NamedLookBack>? named = null, IReadOnlyList<string>? nameless = null, int kinds = 2) => new(
        NightId.New(), "Board games", new LocalDateTime(2026, 12, 12, 19, 30), Plans.Zone, Instant.FromUtc(2026, 12, 12, 19, 30),
        IsServed: true, IsCancelled: false, Pies(kinds), Slices(),
        [
            new CameRow(Rui, "Rui", 1, Heads(log, Rui)), new CameRow(Eva, "Eva", 2, Heads(log, Eva)), new CameRow(Ana, "Ana", 0, Heads(log, Ana)),
        ],
        log, [], log is null ? null : 1u,
        Opinions.Of([.. (named ?? []).Select(row => row.Facts), .. (nameless ?? []).Select(words => Silence with { Words = words, Namelessly = true })], Pies(kinds)),
        named ?? [], nameless ?? [], OwnLink: null);

    public static GuestId Rui { get; } = GuestId.New();

    public static GuestId Eva { get; } = GuestId.New();

    public static GuestId Ana { get; } = GuestId.New();

    private static string Letter(int number) => $"{(char)('A' + number - 1)}";

    private static int? Heads(BakeLogFacts? log, GuestId guest) =>
        log is null ? null : log.Came.FirstOrDefault(row => row.GuestId == guest.Value)?.Heads ?? 0;
}
