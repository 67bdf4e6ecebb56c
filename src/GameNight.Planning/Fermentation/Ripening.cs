using GameNight.Planning.Quantities;
using NodaTime;

namespace GameNight.Planning.Fermentation;

/// <summary>The dough at one moment of its course.</summary>
/// <param name="Dough">Mean temperature of the dough.</param>
/// <param name="GasMillilitresPer100GramsFlour">CO2 made so far, at 25 °C and 1 atm.</param>
/// <param name="DissolvedMillilitresPer100GramsFlour">As much of it as the dough's water holds.</param>
/// <param name="Volume">1 is as it was balled.</param>
public sealed record DoughState(
    Instant At,
    Celsius Dough,
    double GasMillilitresPer100GramsFlour,
    double DissolvedMillilitresPer100GramsFlour,
    double Volume,
    DoughLook Look);

/// <summary>
/// When this dough can be baked, tempering included. Null bounds lie beyond what is looked at.
/// </summary>
/// <param name="Until">By gas, or by the hours in the cold when those end first.</param>
/// <param name="EndsByHours">It is the hours in the cold that end it, not its gas.</param>
/// <param name="BestNotBefore">With the band of the model: the best moment if this dough is as quick as it may be.</param>
/// <param name="BestNotAfter">The same for a slow one.</param>
public sealed record ReadyWindow(
    Instant? From, Instant? Best, Instant? Until, Instant? BestNotBefore, Instant? BestNotAfter, bool EndsByHours);

/// <summary>The course of one dough with a fixed amount of yeast: what it does when, and how sure that is.</summary>
/// <param name="GasOfWanted">Gas at the end of the planned journey over what is wanted: 1 is as wanted.</param>
/// <param name="BandFactor">The gas may be so many times more or less.</param>
/// <param name="Learned">How the kitchen gasses after what was seen of this dough; null when nobody looked.</param>
public sealed record Ripening(
    ReadyWindow Window,
    IReadOnlyList<DoughState> Course,
    double GasOfWanted,
    double BandFactor,
    IReadOnlyList<Reason> Because,
    FermentationCalibration? Learned = null);

/// <summary>Fewer hours in the cold than the trade holds worth the wait: little more taste than a short rise would give.</summary>
public sealed record ColdIsShort(Duration InFridge, Duration Shortest) : Reason;

/// <summary>More hours in the cold than the trade advises: the dough slackens and tears.</summary>
public sealed record ColdIsLong(Duration InFridge, Duration Longest) : Reason;

/// <summary>In the cold so much of the gas stays dissolved that little or no rise is seen until the dough warms.</summary>
public sealed record RiseHiddenInTheCold(Share Dissolved) : Reason;

/// <summary>Sugar above this share of flour slows the yeast.</summary>
public sealed record SugarSlowsYeast(Share Sugar, Share Limit) : Reason;

/// <summary>Alcohol in the dough's water when it is shaped, beside what yeast endures; most of it bakes out.</summary>
public sealed record AlcoholInDough(double PercentByVolume, double MostPercentByVolume) : Reason;

/// <summary>What was measured and seen has moved the course.</summary>
public sealed record CourseFollowsReadings(int Readings, double GasFactor) : Reason;
