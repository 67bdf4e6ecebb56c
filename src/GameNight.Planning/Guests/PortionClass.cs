namespace GameNight.Planning.Guests;

/// <summary>The prior for how much somebody eats.</summary>
public enum PortionClass
{
    Adult,
    Teen,
    Child,
    Toddler,
}
