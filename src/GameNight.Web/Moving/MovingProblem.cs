namespace GameNight.Web.Moving;

/// <summary>A part of the page about leaving and moving.</summary>
public enum MovingPart
{
    Document,
    End,
}

/// <summary>What stood in the way, and of what.</summary>
public sealed record MovingProblem(MovingPart Part, string Says);
