namespace GameNight.Planning.Foods;

/// <summary>A food that a model knows by its figures. Each has a row in shared/reference/foods.json.</summary>
public enum Food
{
    CannedTomatoes,
    CrushedTomatoes,
    TomatoPaste,
    Onion,
    Garlic,
    OliveOil,
    Sugar,
    Salt,
    DriedOregano,
    DriedBasil,
    RedWine,
    WineVinegar,
    LowMoistureMozzarella,
    FreshMozzarella,
    Parmesan,
    BreadFlour,
}
