using GameNight.Nights.ForGuests;
using GameNight.Nights.Records;
using GameNight.Planning.Guests;

namespace GameNight.TestKit.Nights;

/// <summary>Answers as a guest sends them: each from a form of its own, so with a key of its own.</summary>
public static class Answers
{
    public static GuestAnswer Coming(int revision = 0, int companions = 0) => Saying(Presence.Coming, revision, companions);

    public static GuestAnswer NotComing(int revision = 0) => Saying(Presence.NotComing, revision, companions: 0);

    public static DietaryNeeds Avoiding(params IReadOnlyList<Allergen> allergens) => new([], allergens, []);

    /// <summary>The same answer with must-nots and a note, and the consent to keep them.</summary>
    public static GuestAnswer WithNote(this GuestAnswer answer, string note, params IReadOnlyList<DietaryNeeds> needs) =>
        answer with { Note = note, Needs = needs, Consents = true };

    private static GuestAnswer Saying(Presence presence, int revision, int companions) => new(
        new AnswerFacts(
            presence,
            Remotely: false,
            Hunger.AsUsual,
            [.. Enumerable.Repeat(new Companion(PortionClass.Adult), companions)],
            new Dictionary<string, Liking>()),
        [], "", Consents: false, revision, Guid.NewGuid());
}
