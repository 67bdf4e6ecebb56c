using GameNight.Nights.Records;
using NodaTime;

namespace GameNight.Nights.PastNights;

/// <summary>What a guest sends after a night.</summary>
/// <param name="Revision">The revision the form was made from, 0 for none.</param>
/// <param name="Key">Made with the form: sent twice, it counts once.</param>
public sealed record GuestLookBack(LookBackFacts Facts, int Revision, Guid Key)
{
    /// <summary>More than anybody eats; a typing slip otherwise.</summary>
    public const int MostSlices = 40;
}

/// <summary>An earlier night that the guest was part of, with nothing in it that others keep to themselves.</summary>
/// <param name="People">How many came.</param>
/// <param name="Names">First names of those who allow it, the guest's own left out.</param>
/// <param name="Won">As the host saw it.</param>
public sealed record RememberedNight(
    string Title, LocalDateTime ServeAt, int People, IReadOnlyList<string> Names, NightPies Pies, IReadOnlyList<PieKind> Won,
    Averages Averages, LookBackFacts? Said);

/// <summary>Everything a guest sees through their look-back link.</summary>
/// <param name="Opens">When the night is served: before it there is nothing to say.</param>
/// <param name="Pies">None before.</param>
/// <param name="Revision">0 when nothing was said yet.</param>
/// <param name="Averages">Null for a guest who was not there.</param>
/// <param name="Earlier">Latest first.</param>
public sealed record LookBackView(
    NightId Night,
    string GroupName,
    string GuestName,
    string Title,
    LocalDateTime ServeAt,
    string Zone,
    Instant Opens,
    bool IsOpen,
    bool IsCancelled,
    NightPies Pies,
    LookBackFacts? Said,
    int Revision,
    Averages? Averages,
    IReadOnlyList<RememberedNight> Earlier);

/// <summary>What a look-back link leads to.</summary>
public abstract record LookBackLookup
{
    private LookBackLookup()
    {
    }

    public sealed record Found(LookBackView View) : LookBackLookup;

    public sealed record LinkNotValid(bool IsExpired) : LookBackLookup;
}

/// <summary>What is wrong with a look-back.</summary>
public enum LookBackFault
{
    WordsTooLong,
    SlicesOutOfRange,
}

/// <summary>What came of a look-back.</summary>
public abstract record LookBackResult
{
    private LookBackResult()
    {
    }

    public sealed record Kept : LookBackResult;

    /// <summary>Nothing was filled in, and nothing was there before: nothing is kept.</summary>
    public sealed record NothingSaid : LookBackResult;

    /// <summary>Said from elsewhere since the form was made; nothing of this one is kept yet.</summary>
    public sealed record SaidElsewhere(LookBackView Current) : LookBackResult;

    /// <summary>Not served yet, or called off.</summary>
    public sealed record NotOpen : LookBackResult;

    public sealed record Refused(LookBackFault Fault, int Most) : LookBackResult;

    public sealed record LinkNotValid(bool IsExpired) : LookBackResult;
}
