namespace GameNight.Planning.Guests;

/// <summary>A diet that an eater keeps, as a hard rule.</summary>
public enum Diet
{
    Vegetarian,
    Vegan,
    NoPork,
    NoAlcohol,
}
