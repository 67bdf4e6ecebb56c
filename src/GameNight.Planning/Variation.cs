using GameNight.Planning.Dough;
using GameNight.Planning.Quantities;
using NodaTime;

namespace GameNight.Planning;

/// <summary>One way to do a night otherwise, to be planned beside it. What is null stays as it is.</summary>
/// <param name="MixAt">When mixing begins.</param>
public sealed record Variation(Instant? MixAt = null, Celsius? Fridge = null, Celsius? Room = null, YeastForm? Yeast = null)
{
    /// <summary>The night done so. A dough that is begun keeps its yeast and its mixing: only temperatures can differ.</summary>
    public NightSnapshot Of(NightSnapshot night) => night with
    {
        Kitchen = night.Kitchen with { Fridge = Fridge ?? night.Kitchen.Fridge, Room = Room ?? night.Kitchen.Room },
        Formula = Yeast is { } form && night.Begun is null ? night.Formula with { Yeast = form } : night.Formula,
        ByHand = night.Begun is null
            ? night.ByHand with
            {
                MixAt = MixAt ?? night.ByHand.MixAt,

                // A share typed for one form of yeast says nothing of another.
                Yeast = Yeast is { } other && other != night.Formula.Yeast ? null : night.ByHand.Yeast,
            }
            : night.ByHand,
    };
}
