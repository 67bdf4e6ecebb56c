using GameNight.Nights.ForHosts;
using GameNight.Nights.Records;
using GameNight.Planning.Timeline;
using GameNight.Web.Wording.Texts;

namespace GameNight.Web.Wording;

/// <summary>Who the hands of a night belong to, in words.</summary>
/// <param name="helpers">In the order of their numbers; null when nobody is named.</param>
public sealed class People(IReadOnlyList<HelperOfNight>? helpers, IReadOnlyDictionary<GuestId, string> guests)
{
    public static People Unnamed { get; } = new(null, new Dictionary<GuestId, string>());

    public static People Of(NightView night) => new(night.Overrides.Helpers, night.Guests.ToDictionary(guest => guest.Id, guest => guest.Name));

    /// <param name="person">0 for the host, else the number of a helper.</param>
    public string Name(int person) => person == 0 ? TimelinePages.TheHost
        : helpers?.ElementAtOrDefault(person - 1) is { } helper
            ? helper.Name ?? (helper.Guest is { } guest ? guests.GetValueOrDefault(guest) : null) ?? Phrase.Fill(TimelinePages.HelperNumber, person)
            : Phrase.Fill(TimelinePages.HelperNumber, person);

    /// <summary>Whose hands a step takes, or that it goes by itself.</summary>
    public string Who(TimelineStep step) => step.Kind == StepKind.PutAway ? TimelinePages.AtTheLatest
        : !step.NeedsHands ? TimelinePages.ByItself
        : step.By is { } helper ? Name(helper)
        : TimelinePages.YourHands;

    /// <summary>Who has something to do, the host first.</summary>
    public static IReadOnlyList<int> Working(IReadOnlyList<TimelineStep> steps) =>
        [.. steps.Where(step => step.NeedsHands).Select(step => step.By ?? 0).Distinct().Order()];

    /// <summary>The steps of one person; all for null. What goes by itself and only has to be begun is the host's.</summary>
    public static IReadOnlyList<TimelineStep> StepsOf(IReadOnlyList<TimelineStep> steps, int? person) => person is not { } one ? steps
        : [.. steps.Where(step => step.NeedsHands ? (step.By ?? 0) == one : one == 0 && step.Kind is (StepKind.Temper or StepKind.Preheat or StepKind.Own or StepKind.PutAway))];
}
