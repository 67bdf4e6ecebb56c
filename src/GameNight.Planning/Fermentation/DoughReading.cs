using GameNight.Planning.Quantities;
using NodaTime;

namespace GameNight.Planning.Fermentation;

/// <summary>What somebody measured or saw at a moment: at least one of the three.</summary>
/// <param name="Dough">In the middle of the dough.</param>
/// <param name="Fridge">In a glass of water that stands beside the dough.</param>
public sealed record DoughReading(Instant At, Celsius? Dough, Celsius? Fridge, DoughLook? Look);
