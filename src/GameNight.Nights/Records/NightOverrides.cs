using GameNight.Planning;
using GameNight.Planning.Quantities;
using NodaTime;

namespace GameNight.Nights.Records;

/// <summary>The numbers of a night that a host may set by hand; the time of mixing is set apart.</summary>
public enum Overridable
{
    Pies,
    BallGrams,
    YeastPercentOfFlour,
    SaucePerPieGrams,
    CheesePerPieGrams,
}

/// <summary>What the host set by hand for a night. It sticks until it is taken back.</summary>
public sealed record NightOverrides(
    PieCount? Pies, Grams? Ball, Share? Yeast, Grams? SaucePerPie, Grams? CheesePerPie, Instant? MixAt)
{
    public static NightOverrides None { get; } = new(null, null, null, null, null, null);

    public ByHand ToByHand() => new(Pies, Ball, Yeast, SaucePerPie, CheesePerPie, MixAt);

    public NightOverrides Without(Overridable what) => what switch
    {
        Overridable.Pies => this with { Pies = null },
        Overridable.BallGrams => this with { Ball = null },
        Overridable.YeastPercentOfFlour => this with { Yeast = null },
        Overridable.SaucePerPieGrams => this with { SaucePerPie = null },
        Overridable.CheesePerPieGrams => this with { CheesePerPie = null },
    };

    /// <exception cref="ArgumentOutOfRangeException">The number is not one of its quantity.</exception>
    public NightOverrides With(Overridable what, double value) => what switch
    {
        Overridable.Pies => this with { Pies = new PieCount((int)Math.Round(value)) },
        Overridable.BallGrams => this with { Ball = new Grams(value) },
        Overridable.YeastPercentOfFlour => this with { Yeast = new Share(value / 100) },
        Overridable.SaucePerPieGrams => this with { SaucePerPie = new Grams(value) },
        Overridable.CheesePerPieGrams => this with { CheesePerPie = new Grams(value) },
    };
}
