namespace GameNight.Planning.Guests;

/// <summary>The fourteen allergens of Regulation (EU) 1169/2011, Annex II.</summary>
public enum Allergen
{
    GlutenCereals,
    Crustaceans,
    Eggs,
    Fish,
    Peanuts,
    Soybeans,
    Milk,
    Nuts,
    Celery,
    Mustard,
    Sesame,
    Sulphites,
    Lupin,
    Molluscs,
}
