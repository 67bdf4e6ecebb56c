using GameNight.Nights.ForHosts;
using GameNight.Nights.Records;
using GameNight.Planning.Guests;
using GameNight.Web.Wording.Texts;

namespace GameNight.Web.Host.GuestList;

/// <summary>What a host makes of a private note: rules for the guest and their companions, or a reason for none.</summary>
public sealed class NoteForm
{
    private NoteForm(InvitedGuest guest)
    {
        Guest = guest;
        var rules = guest.Ruling?.Rules ?? [];
        Eaters = [.. Enumerable.Range(0, 1 + (guest.Answer?.Companions.Count ?? 0)).Select(eater => new EaterRules(eater < rules.Count ? rules[eater] : DietaryNeeds.None))];
        Because = guest.Ruling?.Because?.ToString() ?? "";
    }

    public InvitedGuest Guest { get; private set; }

    /// <summary>The guest, then the companions.</summary>
    public IReadOnlyList<EaterRules> Eaters { get; }

    /// <summary>Why it is set aside, or empty.</summary>
    public string Because { get; set; }

    public static NoteForm Of(InvitedGuest guest) => new(guest);

    /// <summary>The host has seen what the guest wrote meanwhile; what was typed stays.</summary>
    public void Over(InvitedGuest newer) => Guest = newer;

    public IReadOnlyList<DietaryNeeds> Rules => [.. Eaters.Select(eater => eater.Read())];

    public SetAside? Reason => Enum.TryParse<SetAside>(Because, out var because) ? because : null;

    public static string Say(SetAside because) => because switch
    {
        SetAside.NotAboutFood => NotePages.NotAboutFood,
        SetAside.TickedAlready => NotePages.TickedAlready,
        SetAside.TalkedOver => NotePages.TalkedOver,
    };

    /// <summary>The rules of one eater as fields.</summary>
    public sealed class EaterRules(DietaryNeeds needs)
    {
        public HashSet<Diet> Diets { get; } = [.. needs.Diets];
        public HashSet<string> KeptOff { get; } = [.. needs.KeptOff ?? []];

        /// <summary>"a" keeps an allergen off the slices, "t" off the whole pie.</summary>
        public Dictionary<Allergen, string> Allergens { get; } = Enum.GetValues<Allergen>().ToDictionary(
            allergen => allergen,
            allergen => needs.MustNotTouch.Contains(allergen) ? "t" : needs.Avoids.Contains(allergen) ? "a" : "");

        public bool SaysSomething => !Read().IsNone;

        public DietaryNeeds Read() => new(
            [.. Diets.Order()], Of("a"), Of("t"), KeptOff.Count == 0 ? null : [.. KeptOff.Order(StringComparer.Ordinal)]);

        private IReadOnlyList<Allergen> Of(string rule) =>
            [.. Allergens.Where(row => row.Value == rule).Select(row => row.Key).Order()];
    }
}
