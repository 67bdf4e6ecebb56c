using GameNight.Planning.Timeline;

namespace GameNight.Web.Wording;

/// <summary>What tells that a step is done, besides the clock. Common practice, no source.</summary>
public static class CueText
{
    public static string Say(StepKind step) => step switch
    {
        StepKind.Shop => "everything on the shopping sheet is in the house",
        StepKind.Mix => "no dry flour is left in the bowl",
        StepKind.Knead => "smooth, and it springs back when pressed",
        StepKind.BulkRest => "soft and visibly grown",
        StepKind.Ball => "tight skin, seam closed underneath",
        StepKind.ColdFerment => "grown, with bubbles under the skin",
        StepKind.Temper => "soft to the touch, not cold in the middle",
        StepKind.Sauce => "it stays on the spoon and does not run",
        StepKind.GrateCheese => "grated, drained, back in the fridge",
        StepKind.PrepareToppings => "cut and dry, a bowl for each, own pies first",
        StepKind.Preheat => "the oven says that it is hot",
        StepKind.Soak => "the baking surface has had its whole time",
        StepKind.Shape => "even, with a rim, and it slides on the peel",
        StepKind.Top => "even up to the rim, not heaped",
        StepKind.Bake => "rim browned, underside spotted",
        StepKind.Rack => "the steam has stopped",
        StepKind.Serve => "cut, and on the table",
    };
}
