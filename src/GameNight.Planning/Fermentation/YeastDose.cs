using GameNight.Planning.Dough;
using GameNight.Planning.Quantities;
using NodaTime;

namespace GameNight.Planning.Fermentation;

/// <summary>The hours and temperatures the dose was solved for.</summary>
public sealed record DoseForHours(
    Duration AtRoom, Duration InFridge, Duration Tempering, Celsius Room, Celsius Fridge) : Reason;

/// <summary>No fridge temperature was given; homes are about this cold, and the band is wider for it.</summary>
public sealed record FridgeAssumed(Celsius Assumed) : Reason;

/// <summary>Less air pressure, larger bubbles: the dose is multiplied by this.</summary>
public sealed record DoseForAltitude(double Metres, double Factor) : Reason;

/// <summary>The cold dose is the weakest number of the plan: the eye decides, and the band says how far off it may be.</summary>
public sealed record ColdDoseIsUncertain(double BandFactor) : Reason;

/// <summary>No sensible amount of yeast makes this dough ready in its hours; the nearest is given.</summary>
public sealed record NoSensibleDose(Share NearestFresh, Share LeastFresh, Share MostFresh) : Conflict;

/// <summary>How much yeast to weigh in, in the form it is bought in, with an honest band.</summary>
/// <param name="ShareOfFlour">Yeast as a share of flour.</param>
/// <param name="Total">For all batches together.</param>
public sealed record YeastDose(
    YeastForm Form, Explained<Share> ShareOfFlour, Estimate<Grams> Total, IReadOnlyList<Conflict> Conflicts);
