using GameNight.Planning;
using GameNight.Planning.Dough;
using GameNight.Planning.Quantities;
using GameNight.TestKit.Nights;
using NodaTime;

namespace GameNight.Web.Tests.Panels;

/// <summary>Doughs with every part that a formula may have.</summary>
internal static class WholeDoughs
{
    public static DoughFormula Formula { get; } = new(
        new Share(0.64), new Share(0.025), new Share(0.02), new Share(0.01), true, YeastForm.Instant, new Share(0.1), new Share(0.02),
        Extras: [new ExtraIngredient("Milk", new Share(0.05), new Share(0.88)), new ExtraIngredient("Egg", new Share(0.03), new Share(0.75))],
        Flours: [new FlourPart("Bread", new Share(0.7), new Share(0.6), new Share(0.13)), new FlourPart("Rye", new Share(0.3), new Share(0.7), new Share(0.1))],
        Preferment: new Preferment("Sponge", new Share(0.25), new Share(0.6), Duration.FromHours(12), new Share(0.5)),
        Soaker: new Soaker("Seeds", new Share(0.05), new Share(1.5)));

    public static PieShape Shape { get; } = new(
        new Centimetres(32.5), 0.4, new Centimetres(2), new Centimetres(0.5), new Centimetres(0), 8, new Centimetres(1));

    public static NightPlan PlanOf(
        DoughFormula formula, KitchenScale? scale = null, Func<KitchenSnapshot, KitchenSnapshot>? kitchen = null, int guests = 8) =>
        Plans.Of(NightBuilder.ANight().WithGuests(guests).But(night => night with
        {
            Formula = formula,
            Kitchen = (kitchen?.Invoke(night.Kitchen) ?? night.Kitchen) with { Scale = scale },
        }).Build());
}
