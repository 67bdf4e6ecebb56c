using System.Globalization;
using GameNight.Nights.ForGuests;
using GameNight.Nights.Records;
using GameNight.Planning.Dates;
using GameNight.Planning.Guests;
using Microsoft.Extensions.Primitives;
using NodaTime;
using NodaTime.Text;

namespace GameNight.Web.Guests;

/// <summary>
/// What the answer page shows and sends, as values of its fields. Parsing never fails: what cannot be understood is left out,
/// and everything typed is shown again when the answer is not kept.
/// </summary>
public sealed record AnswerForm(
    Presence? Presence,
    bool Remotely,
    Hunger Hunger,
    IReadOnlyList<PortionClass?> Companions,
    IReadOnlyDictionary<string, Liking> Likes,
    IReadOnlyList<DietaryNeeds> Needs,
    string Note,
    bool Consents,
    int Revision,
    Guid Key,
    bool Remembers,
    bool ShowsName,
    int? ComesAtMinute = null,
    int? LeavesAtMinute = null,
    bool AloneIfNeeded = false,
    IReadOnlyList<GuestId>? SameFor = null)
{
    private const string Avoid = "a";
    private const string MustNotTouch = "t";

    private static readonly LocalTimePattern Times = LocalTimePattern.CreateWithInvariantCulture("HH:mm");

    /// <summary>The form of a guest's current answer, or one that begins with what they asked to be remembered.</summary>
    public static AnswerForm Of(InvitationView invitation) => new(
        invitation.Answer?.Presence ?? (invitation.SaidOfDate == DateAnswer.Works ? Nights.Records.Presence.Coming : null),
        invitation.Answer?.Remotely ?? false,
        invitation.Answer?.Hunger ?? invitation.Remembered?.Hunger ?? Hunger.AsUsual,
        [.. Enumerable.Range(0, Slots(invitation))
            .Select(slot => slot < (invitation.Answer?.Companions.Count ?? 0)
                ? invitation.Answer!.Companions[slot].Portion
                : (PortionClass?)null)],
        invitation.Answer?.Likes ?? invitation.Remembered?.Likes ?? new Dictionary<string, Liking>(),
        Padded(BringsMustNots(invitation) ? [invitation.Remembered!.Needs] : invitation.Needs, Slots(invitation) + 1),
        invitation.Note ?? "",
        invitation.HasConsented || BringsMustNots(invitation),
        invitation.Revision,
        Guid.CreateVersion7(),
        invitation.Remembered is not null,
        invitation.ShowsName,
        invitation.Answer?.ComesAtMinute,
        invitation.Answer?.LeavesAtMinute,
        invitation.Answer?.AloneIfNeeded == true);

    public static AnswerForm Parse(IFormCollection form, InvitationView invitation)
    {
        // The host may have lowered the number since the form was shown: nobody who was typed is dropped unseen.
        var companions = Enumerable.Range(1, NightFacts.MostCompanionsAllowed)
            .Select(slot => Word<PortionClass>(form[$"companion{slot}"])).ToList();
        var slots = Math.Max(Slots(invitation), companions.FindLastIndex(portion => portion is not null) + 1);
        return new AnswerForm(
            Word<Presence>(form["presence"]),
            form.ContainsKey("remotely"),
            Word<Hunger>(form["hunger"]) ?? Hunger.AsUsual,
            companions[..slots],
            form.ContainsKey("anything") ? new Dictionary<string, Liking>() : invitation.Toppings
                .Select(topping => (topping.Id, Liking: Word<Liking>(form[$"like-{topping.Id}"])))
                .Where(row => row.Liking is not (null or Liking.Fine))
                .ToDictionary(row => row.Id, row => row.Liking!.Value),
            [.. Enumerable.Range(0, slots + 1).Select(slot => NeedsOf(form, slot))],
            form["note"].ToString(),
            form.ContainsKey("consent"),
            int.TryParse(form["revision"], NumberStyles.None, CultureInfo.InvariantCulture, out var revision) ? revision : 0,
            Guid.TryParse(form["key"], out var key) ? key : Guid.CreateVersion7(),
            form.ContainsKey("remember"),
            form.ContainsKey("showsName"),
            MinuteOf(form["comes"]),
            MinuteOf(form["leaves"]),
            form.ContainsKey("alone"),
            [.. invitation.Household.Where(fellow => form.ContainsKey(SameField(fellow.Id))).Select(fellow => fellow.Id)]);
    }

    /// <returns>Null when the guest has not said whether they come.</returns>
    public GuestAnswer? ToAnswer()
    {
        if (Presence is not { } presence)
        {
            return null;
        }

        // Needs follow their companions: an empty slot before a filled one takes its needs along.
        var slots = Companions.Select((portion, index) => (Portion: portion, Needs: Needs[index + 1]))
            .Where(slot => slot.Portion is not null).ToList();
        return new GuestAnswer(
            new AnswerFacts(presence, Remotely, Hunger, [.. slots.Select(slot => new Companion(slot.Portion!.Value))], Likes,
                ComesAtMinute, LeavesAtMinute, AloneIfNeeded ? true : null),
            [Needs[0], .. slots.Select(slot => slot.Needs)],
            Note,
            Consents,
            Revision,
            Key,
            Remembers,
            ShowsName,
            SameFor is { Count: > 0 } ? SameFor : null);
    }

    /// <summary>Name of the field for a diet of an eater; 0 is the guest, then the companions.</summary>
    public static string DietField(int slot, Diet diet) => $"diet{slot}-{diet}";

    /// <summary>Name of the field that an answer holds for somebody else of the household too.</summary>
    public static string SameField(GuestId fellow) => $"same-{fellow}";

    /// <summary>A time as it stands in a field.</summary>
    public static string TimeValue(int minuteOfDay) => Times.Format(TimeOf(minuteOfDay));

    public static LocalTime TimeOf(int minuteOfDay) => LocalTime.FromMinutesSinceMidnight(minuteOfDay);

    public static string AllergenField(int slot, Allergen allergen) => $"must{slot}-{allergen}";

    /// <summary>The first answer begins with the must-nots that the guest agreed to have kept for next time.</summary>
    private static bool BringsMustNots(InvitationView invitation) =>
        invitation is { Answer: null, Remembered.Needs.IsNone: false };

    /// <summary>As many companions as are allowed, or as came in an answer before fewer were.</summary>
    private static int Slots(InvitationView invitation) =>
        Math.Max(invitation.MostCompanions, invitation.Answer?.Companions.Count ?? 0);

    private static int? MinuteOf(StringValues text) =>
        Times.Parse(text.ToString()).TryGetValue(default, out var time) ? (time.Hour * 60) + time.Minute : null;

    private static DietaryNeeds NeedsOf(IFormCollection form, int slot) => new(
        [.. Enum.GetValues<Diet>().Where(diet => form.ContainsKey(DietField(slot, diet)))],
        [.. Enum.GetValues<Allergen>().Where(allergen => form[AllergenField(slot, allergen)] == Avoid)],
        [.. Enum.GetValues<Allergen>().Where(allergen => form[AllergenField(slot, allergen)] == MustNotTouch)]);

    private static List<DietaryNeeds> Padded(IReadOnlyList<DietaryNeeds> needs, int slots) =>
        [.. Enumerable.Range(0, slots).Select(slot => slot < needs.Count ? needs[slot] : DietaryNeeds.None)];

    private static T? Word<T>(StringValues text)
        where T : struct, Enum =>
        Enum.TryParse<T>(text, ignoreCase: false, out var value) && Enum.IsDefined(value) && !char.IsAsciiDigit(text.ToString()[0])
            ? value
            : null;
}
