using GameNight.Planning.Quantities;
using NodaTime;

namespace GameNight.Planning.Dough;

/// <summary>What the water's temperature depends on.</summary>
/// <param name="FrictionKelvin">Friction factor in kelvins of the temperature sum, not the rise of the dough.</param>
/// <param name="Tap">The coldest water from the tap.</param>
/// <param name="Hydration">All water per flour, more than 0.</param>
/// <param name="FrictionIsLearned">False while the factor is a handbook's and not this kitchen's.</param>
/// <param name="Ice">As it goes in, at 0 °C or below.</param>
/// <param name="Activation">Null unless the yeast is woken in water of its own.</param>
public sealed record WaterRequest(
    Celsius Dough,
    Celsius Flour,
    Celsius Room,
    double FrictionKelvin,
    Celsius Tap,
    Share Hydration,
    bool FrictionIsLearned = false,
    Celsius Ice = default,
    FermentedAhead? Preferment = null,
    YeastWaking? Activation = null);

/// <summary>A preferment as it comes into the bowl.</summary>
/// <param name="OfFlour">Share of all flour that is in it.</param>
/// <param name="Water">Its water per all flour.</param>
public sealed record FermentedAhead(Celsius Temperature, Share OfFlour, Share Water);

/// <summary>How dry yeast is woken.</summary>
/// <param name="OfWater">Share of the water it takes, 0 to 0.5.</param>
/// <param name="Foam">Time in which live yeast foams.</param>
public sealed record YeastWaking(Celsius Water, Share OfWater, Duration Foam);
