using GameNight.Planning.Dough;
using GameNight.Planning.Fermentation;
using GameNight.Planning.Heat;
using GameNight.Planning.Quantities;
using GameNight.Planning.Timeline;
using NodaTime;

namespace GameNight.Planning;

/// <summary>The kitchen the night is baked in.</summary>
/// <param name="Fridge">Measured, or null when the host has not measured it.</param>
/// <param name="Tap">The coldest water the tap gives.</param>
/// <param name="AltitudeMetres">-400 to 5000.</param>
/// <param name="BatchCapacity">Dough that bowl or mixer can take at once.</param>
/// <param name="PiesPerBake">Pies that bake at the same time, 1 to 6.</param>
/// <param name="Hands">The host and helpers, 1 to 8.</param>
/// <param name="Preheat">Oven on until its air is at the set-point.</param>
/// <param name="Soak">Longer, until stone, steel or iron is ready.</param>
/// <param name="Recovery">Until the surface has its heat back after a pie.</param>
/// <param name="Calibration">How dough gasses here against the model, learned from doughs that were looked at.</param>
/// <param name="Flour">What is known of the flour's moisture; null moves no water.</param>
/// <param name="Scale">What the scales can tell apart; null when the host has not said.</param>
/// <param name="FrictionKelvin">Learned friction factor in kelvins of the temperature sum, -10 to 45; null for a handbook's.</param>
/// <param name="Place">What pies are baked on; null when the host has not said.</param>
/// <param name="Pace">How long work takes here, where past nights told; each step once. Null for the table's minutes throughout.</param>
/// <param name="FridgeBalls">So many balls find a place in the fridge at once, 1 to 200; null when the host has not said.</param>
/// <param name="Bowls">Dough of a batch is in one from mixing to balling, 1 to 20; null for enough.</param>
/// <param name="HobRings">Rings of the hob that work, 1 to 12; null for enough.</param>
public sealed record KitchenSnapshot(
    Celsius Room,
    Celsius? Fridge,
    Celsius Tap,
    Celsius Oven,
    double AltitudeMetres,
    Grams BatchCapacity,
    KneadingWay Kneading,
    int PiesPerBake,
    int Hands,
    Duration Preheat,
    Duration Soak,
    Duration Bake,
    Duration Recovery,
    FermentationCalibration? Calibration = null,
    KitchenFlour? Flour = null,
    KitchenScale? Scale = null,
    double? FrictionKelvin = null,
    BakingPlace? Place = null,
    IReadOnlyList<StepPace>? Pace = null,
    int? FridgeBalls = null,
    int? Bowls = null,
    int? HobRings = null)
{
    public const int MostBowls = 20;
    public const int MostHobRings = 12;

    /// <summary>One of a step, as it was learned here or as the table has it.</summary>
    public Duration LengthOf(StepName step, StepTable table) =>
        Duration.FromMinutes(Pace?.FirstOrDefault(pace => pace.Step == step)?.Minutes ?? table.MinutesOf(step));
}
