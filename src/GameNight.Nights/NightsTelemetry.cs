using System.Diagnostics;
using System.Diagnostics.Metrics;
using GameNight.Nights.Messages;
using GameNight.Nights.Records;
using NodaTime;

namespace GameNight.Nights;

/// <summary>
/// What whoever runs the app can count and time. Numbers, ids and outcomes only: never a name, a text or a link. It costs
/// nothing while nobody listens.
/// </summary>
public static class NightsTelemetry
{
    /// <summary>Of the source of activities and of the meter.</summary>
    public const string Name = "GameNight";

    private static readonly ActivitySource Activities = new(Name);
    private static readonly Meter Meter = new(Name);

    private static readonly Counter<long> Answers = Meter.CreateCounter<long>(
        "gamenight.answers", "{answer}", "Answers of guests that were kept.");

    private static readonly Counter<long> NotesErased = Meter.CreateCounter<long>(
        "gamenight.notes.erased", "{note}", "Must-nots and notes erased because their time was over.");

    private static readonly Histogram<double> PlanDuration = Meter.CreateHistogram<double>(
        "gamenight.plan.duration", "s", "From taking a night from the queue to its improved plan.");

    private static readonly Histogram<int> PlanSlices = Meter.CreateHistogram<int>(
        "gamenight.plan.slices", "{slice}", "Solver effort of the plans that were made.");

    private static readonly Gauge<int> Waiting = Meter.CreateGauge<int>(
        "gamenight.replan.waiting", "{night}", "Nights that wait for a plan.");

    private static readonly Counter<long> Messages = Meter.CreateCounter<long>(
        "gamenight.messages", "{message}", "Messages that were handed to the mail server, by what came of it.");

    private static readonly Gauge<double> WaitingForMail = Meter.CreateGauge<double>(
        "gamenight.outbox.age", "s", "How long the oldest errand that is due has waited.");

    /// <summary>False spares the question how many there are.</summary>
    internal static bool CountsWaiting => Waiting.Enabled;

    internal static void Answered(Presence presence, bool isLate) => Answers.Add(
        1, new("presence", presence.ToString()), new("late", isLate));

    internal static void Erased(int notes) => NotesErased.Add(notes);

    internal static void WaitForPlan(int nights) => Waiting.Record(nights);

    internal static void Carried(string kind, CarryResult result) => Messages.Add(
        1, new("kind", kind), new("outcome", result.GetType().Name));

    internal static void OutboxAge(Duration age) => WaitingForMail.Record(age.TotalSeconds);

    internal static PlanRun BeginPlan(NightId night) => new(Activities.StartActivity("plan"), night);

    /// <summary>One night on its way through the planner; failed, unless it says otherwise before it ends.</summary>
    internal sealed class PlanRun : IDisposable
    {
        private readonly long _began = Stopwatch.GetTimestamp();
        private readonly Activity? _activity;
        private string _outcome = "failed";

        internal PlanRun(Activity? activity, NightId night)
        {
            _activity = activity;
            _activity?.SetTag("gamenight.night", night.Value);
        }

        public void Made(int slices)
        {
            _outcome = "made";
            _activity?.SetTag("gamenight.slices", slices);
            PlanSlices.Record(slices);
        }

        /// <summary>The night changed meanwhile and is planned again.</summary>
        public void Superseded() => _outcome = "superseded";

        /// <summary>There was nothing to plan any more.</summary>
        public void Settled() => _outcome = "settled";

        public void Dispose()
        {
            PlanDuration.Record(Stopwatch.GetElapsedTime(_began).TotalSeconds, new KeyValuePair<string, object?>("outcome", _outcome));
            _activity?.SetTag("gamenight.outcome", _outcome);
            _activity?.SetStatus(_outcome == "failed" ? ActivityStatusCode.Error : ActivityStatusCode.Unset);
            _activity?.Dispose();
        }
    }
}
