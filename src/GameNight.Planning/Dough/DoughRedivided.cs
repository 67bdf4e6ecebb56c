namespace GameNight.Planning.Dough;

/// <summary>The dough was begun for so many balls and is divided into others.</summary>
public sealed record DoughRedivided(int Before, int After) : Reason;
