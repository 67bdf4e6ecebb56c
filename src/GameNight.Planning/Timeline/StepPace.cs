namespace GameNight.Planning.Timeline;

/// <summary>How long one step takes in this kitchen, instead of what the table says.</summary>
/// <param name="Step">Work for hands whose length stands in the table.</param>
/// <param name="Minutes">For one of it, as in the table; <see cref="Least"/> to <see cref="Most"/>.</param>
public sealed record StepPace(StepName Step, double Minutes)
{
    public const double Least = 0.5;
    public const double Most = 240;

    /// <summary>Steps of which each night's taps can tell how long they took.</summary>
    public static readonly IReadOnlyList<StepName> Known =
    [
        StepName.Mix, StepName.KneadByHand, StepName.KneadMixer, StepName.BallEach, StepName.GrateCheese, StepName.PrepareToppings,
        StepName.SecondMix, StepName.Shape, StepName.Top, StepName.Serve,
    ];
}
