namespace GameNight.Planning.Guests;

/// <summary>How hungry an eater says they will be tonight.</summary>
public enum Hunger
{
    Less,
    AsUsual,
    More,
}
