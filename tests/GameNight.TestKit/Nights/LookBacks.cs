using GameNight.Nights.PastNights;
using GameNight.Nights.Records;

namespace GameNight.TestKit.Nights;

/// <summary>Look-backs as a guest sends them: each from a form of its own, so with a key of its own.</summary>
public static class LookBacks
{
    public static GuestLookBack Saying(
        Enough? enough = null, string words = "", bool namelessly = false, int revision = 0, double? slices = null,
        params IReadOnlyList<int> best) =>
        new(new LookBackFacts(enough, null, slices, best, words, namelessly), revision, Guid.NewGuid());
}
