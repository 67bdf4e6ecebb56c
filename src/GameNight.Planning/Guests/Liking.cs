namespace GameNight.Planning.Guests;

/// <summary>How an eater likes one topping. Never is a wish; a diet or an allergy is a must-not and lives in DietaryNeeds.</summary>
public enum Liking
{
    Never,
    RatherNot,
    Fine,
    Like,
    Favourite,
}
