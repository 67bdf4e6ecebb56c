using GameNight.Planning.Reference;

namespace GameNight.Planning.Heat;

/// <summary>The parts of a food whose thermal properties are published. The order is that of <see cref="FoodComposition"/>.</summary>
public enum FoodComponent
{
    Water,
    Protein,
    Fat,
    Carbohydrate,
    Fibre,
    Ash,
}

/// <summary>What a pie is baked on.</summary>
public enum SurfaceKind
{
    Cordierite,
    FireBrick,
    CarbonSteel,
    CastIron,
    Aluminium,
}

/// <summary>Where dough rests, as far as the air around it matters.</summary>
public enum DoughPlace
{
    /// <summary>Uncovered in a fridge without a fan.</summary>
    StillFridge,

    /// <summary>Uncovered in a fridge that blows.</summary>
    FanFridge,

    /// <summary>In a box with a lid, wherever it stands.</summary>
    LiddedBox,

    /// <summary>Uncovered in the room.</summary>
    Counter,
}

/// <summary>How the oven moves its air.</summary>
public enum OvenAir
{
    Static,
    Fan,
}

/// <summary>What carries the baking surface in the oven.</summary>
public enum SurfaceSupport
{
    WireRack,
    SolidTray,
}

/// <summary>Pure component: powers of the temperature in °C, from the constant upwards.</summary>
public sealed record ComponentRow(
    FoodComponent Component,
    IReadOnlyList<double> ConductivityWPerMK,
    IReadOnlyList<double> DensityKgPerM3,
    IReadOnlyList<double> HeatCapacityJPerKgK,
    string Source)
{
    public ThermalProperties At(double celsius) => new(
        Sum(ConductivityWPerMK, celsius), Sum(DensityKgPerM3, celsius), Sum(HeatCapacityJPerKgK, celsius));

    private static double Sum(IReadOnlyList<double> powers, double celsius) =>
        powers.Reverse().Aggregate(0.0, (sum, coefficient) => sum * celsius + coefficient);
}

/// <summary>What an ingredient of the dough consists of, as fractions of its mass.</summary>
public sealed record IngredientRow(
    double Water, double Protein, double Fat, double Carbohydrate, double Fibre, double Ash, string Source)
{
    public FoodComposition Composition { get; } = new(Water, Protein, Fat, Carbohydrate, Fibre, Ash);
}

/// <summary>A material to bake on. Its heat capacity grows in a straight line from 20 to 300 °C and on.</summary>
/// <param name="Emissivity">Share of the radiation of a black body, 0 to 1.</param>
/// <param name="ThicknessMillimetres">What can be bought and heated.</param>
/// <param name="OvenCelsius">Set-points it stands and the model is meant for.</param>
public sealed record SurfaceRow(
    SurfaceKind Kind,
    double ConductivityWPerMK,
    double DensityKgPerM3,
    double HeatCapacityAt20JPerKgK,
    double HeatCapacityAt300JPerKgK,
    double Emissivity,
    ValidRange ThicknessMillimetres,
    ValidRange OvenCelsius,
    string Source)
{
    public ThermalProperties At20 => new(ConductivityWPerMK, DensityKgPerM3, HeatCapacityAt20JPerKgK);

    /// <summary>Growth of the heat capacity with temperature.</summary>
    public double HeatCapacityJPerKgK2 => (HeatCapacityAt300JPerKgK - HeatCapacityAt20JPerKgK) / (300 - 20);
}

/// <summary>Convection and radiation together, on dough.</summary>
public sealed record DoughPlaceRow(DoughPlace Place, double WPerM2K, double Low, double High, string Source);

/// <summary>Convection alone; radiation in an oven is reckoned with its fourth power.</summary>
public sealed record OvenAirRow(OvenAir Air, double WPerM2K, double Low, double High, string Source);

/// <param name="OpenShare">Share of the lower face that sees hot air and walls.</param>
public sealed record SupportRow(SurfaceSupport Support, double OpenShare, string Source);

/// <param name="CoreCelsius">A ball whose core is this warm can be shaped.</param>
/// <param name="FridgeKelvin">A ball whose core is this near to its fridge is cold.</param>
/// <param name="Band">A time may be this much shorter or longer, as a fraction.</param>
/// <param name="BelowRoomKelvin">In a cool room it can be shaped when its middle is this close to the room.</param>
public sealed record BallTimesRow(double CoreCelsius, double BelowRoomKelvin, double FridgeKelvin, double Band, string Source);

/// <param name="Watts">Heat a fridge carries off beyond what it keeps cold anyway.</param>
public sealed record FridgeSpareRow(double Watts, string Source);

/// <summary>Heat that one pie takes.</summary>
/// <param name="EvaporatedShareOfDough">Water that leaves, per mass of raw dough.</param>
/// <param name="ThroughSurface">Share of the heat that comes from below.</param>
public sealed record PieRow(
    double EvaporatedShareOfDough,
    double LatentJPerGram,
    double ToppingsJPerGramK,
    double ToppingsRiseKelvin,
    double ThroughSurface,
    double ThroughSurfaceLow,
    double ThroughSurfaceHigh,
    string Source);

/// <param name="WithinKelvin">The surface is ready when it is this near to the set-point.</param>
/// <param name="SpreadFactor">Heat reaches the surface this many times faster or slower, four times out of five, before anything is measured.</param>
/// <param name="ReadingKelvin">An infra-red reading is off by this much (one standard deviation).</param>
/// <param name="RuleOfThumbMinutes">At least this long after the air is hot.</param>
/// <param name="IronViewShare">Share of the surface's upward view that a plate above it fills.</param>
public sealed record ReadyRow(
    double WithinKelvin,
    double SpreadFactor,
    double ReadingKelvin,
    double RuleOfThumbMinutes,
    double IronViewShare,
    string Source);

/// <summary>Thermal properties of foods and baking surfaces, coefficients of air, and the bands of the heat models.</summary>
public sealed record MaterialsTable(
    IReadOnlyList<ComponentRow> Components,
    ValidRange ComponentsCelsius,
    IngredientRow BreadFlour,
    IngredientRow Honey,
    IReadOnlyList<SurfaceRow> Surfaces,
    IReadOnlyList<DoughPlaceRow> DoughPlaces,
    IReadOnlyList<OvenAirRow> OvenAir,
    IReadOnlyList<SupportRow> Supports,
    BallTimesRow BallTimes,
    FridgeSpareRow FridgeSpare,
    PieRow Pie,
    ReadyRow Ready)
{
    internal const string File = "materials.json";

    private readonly IReadOnlyDictionary<FoodComponent, ComponentRow> _components =
        ReferenceText.OneRowEach(File, Components, row => row.Component);

    private readonly IReadOnlyDictionary<SurfaceKind, SurfaceRow> _surfaces =
        ReferenceText.OneRowEach(File, Surfaces, row => row.Kind);

    private readonly IReadOnlyDictionary<DoughPlace, DoughPlaceRow> _doughPlaces =
        ReferenceText.OneRowEach(File, DoughPlaces, row => row.Place);

    private readonly IReadOnlyDictionary<OvenAir, OvenAirRow> _ovenAir =
        ReferenceText.OneRowEach(File, OvenAir, row => row.Air);

    private readonly IReadOnlyDictionary<SurfaceSupport, SupportRow> _supports =
        ReferenceText.OneRowEach(File, Supports, row => row.Support);

    public ComponentRow Of(FoodComponent component) => _components[component];
    public SurfaceRow Of(SurfaceKind kind) => _surfaces[kind];
    public DoughPlaceRow Of(DoughPlace place) => _doughPlaces[place];
    public OvenAirRow Of(OvenAir air) => _ovenAir[air];
    public SupportRow Of(SurfaceSupport support) => _supports[support];
}
