using NodaTime;

namespace GameNight.Planning.Dates;

/// <summary>Why an evening cannot be the one. The family is closed; sentences lie with the screens.</summary>
public abstract record DateObstacle
{
    private protected DateObstacle()
    {
    }

    /// <summary>It is over.</summary>
    public sealed record HasPassed : DateObstacle;

    /// <summary>On this day there is no night.</summary>
    public sealed record DayOff(LocalDate Day) : DateObstacle;

    /// <summary>The host is elsewhere during the evening.</summary>
    public sealed record EveningTaken(Instant From, Instant Until) : DateObstacle;

    /// <summary>The dough would have had to be mixed by then.</summary>
    public sealed record DoughTooLate(Instant MixBy, Duration ShortestCold) : DateObstacle;

    /// <summary>Between these moments the host's hands are never free for the dough.</summary>
    public sealed record NoHandsForDough(Instant From, Instant Until) : DateObstacle;

    /// <summary>People without whom there is no night say no.</summary>
    public sealed record MustHaveSaysNo(IReadOnlyList<string> Guests) : DateObstacle;
}
