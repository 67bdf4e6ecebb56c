namespace GameNight.Planning.Guests;

/// <summary>
/// The nine major allergens of the United States: eight of the Food Allergen Labeling and Consumer Protection Act of 2004
/// (FALCPA), and sesame of the FASTER Act of 2021.
/// </summary>
public enum UsAllergen
{
    Milk,
    Eggs,
    Fish,
    CrustaceanShellfish,
    TreeNuts,
    Peanuts,
    Wheat,
    Soybeans,
    Sesame,
}

/// <summary>How one of the fourteen stands to the nine.</summary>
public enum UsMatch
{
    /// <summary>The same on both lists.</summary>
    Same,

    /// <summary>The nine hold only a part of it: of cereals with gluten wheat alone.</summary>
    OnlyAPart,

    /// <summary>On both lists; a US label names which kind: the nut, the fish, the crustacean.</summary>
    NamedByKind,

    /// <summary>No major allergen there: a US label need not name it as such.</summary>
    NotAmongThem,
}

/// <summary>From the fourteen allergens of the European Union to the nine of the United States and back.</summary>
public static class UsAllergens
{
    public static UsAllergen? Of(Allergen allergen) => allergen switch
    {
        Allergen.GlutenCereals => UsAllergen.Wheat,
        Allergen.Crustaceans => UsAllergen.CrustaceanShellfish,
        Allergen.Eggs => UsAllergen.Eggs,
        Allergen.Fish => UsAllergen.Fish,
        Allergen.Peanuts => UsAllergen.Peanuts,
        Allergen.Soybeans => UsAllergen.Soybeans,
        Allergen.Milk => UsAllergen.Milk,
        Allergen.Nuts => UsAllergen.TreeNuts,
        Allergen.Sesame => UsAllergen.Sesame,
        Allergen.Celery or Allergen.Mustard or Allergen.Sulphites or Allergen.Lupin or Allergen.Molluscs => null,
    };

    public static UsMatch MatchOf(Allergen allergen) => allergen switch
    {
        Allergen.GlutenCereals => UsMatch.OnlyAPart,
        Allergen.Nuts or Allergen.Fish or Allergen.Crustaceans => UsMatch.NamedByKind,
        _ => Of(allergen) is null ? UsMatch.NotAmongThem : UsMatch.Same,
    };
}

/// <summary>
/// The tree nuts of the US list that kitchens meet: FALCPA says "tree nuts (e.g., almonds, pecans, or walnuts)", and the
/// guidance of the Food and Drug Administration of January 2025 names the kinds (from memory).
/// </summary>
public enum TreeNut
{
    Almond,
    Hazelnut,
    Walnut,
    Cashew,
    Pecan,
    BrazilNut,
    Pistachio,
    Macadamia,
    PineNut,
    BlackWalnut,
}

/// <summary>Which tree nuts are nuts on the European list too.</summary>
public static class TreeNuts
{
    /// <summary>The eight of Regulation (EU) 1169/2011, Annex II, point 8.</summary>
    public static bool IsAmongTheFourteen(TreeNut nut) => nut is not (TreeNut.PineNut or TreeNut.BlackWalnut);
}
