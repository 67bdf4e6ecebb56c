namespace GameNight.Planning.Fermentation;

/// <summary>
/// How this kitchen's dough gasses against the model: one factor where the dough is colder than the border, one where it is
/// warmer. 1 is as the model says.
/// </summary>
public sealed record FermentationCalibration(double Cold, double Warm)
{
    public const double Least = 0.2;
    public const double Most = 5;

    /// <summary>Above it the model's laws agree, below they part.</summary>
    public const double BorderCelsius = 10;

    public static FermentationCalibration None { get; } = new(1, 1);

    public double At(double celsius) => celsius < BorderCelsius ? Cold : Warm;
}
