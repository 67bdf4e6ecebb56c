namespace GameNight.Planning.Appetite;

/// <summary>How much of the appetite for pies a course takes.</summary>
public enum AppetiteTaken
{
    ALittle,
    Some,
    ALot,
}

/// <summary>What is served beside the pies.</summary>
/// <param name="Name">1 to 64 characters.</param>
public sealed record Course(string Name, AppetiteTaken Takes);
