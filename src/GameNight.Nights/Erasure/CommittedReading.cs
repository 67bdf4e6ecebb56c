using System.Text.Json;
using GameNight.Nights.Records;
using GameNight.Planning;
using GameNight.Planning.Contract;

namespace GameNight.Nights.Erasure;

/// <summary>Reads the two documents of a dough commitment.</summary>
internal static class CommittedReading
{
    /// <returns>Null when this version cannot read them.</returns>
    public static (NightSnapshot Snapshot, NightPlan Plan)? Of(CommittedDough dough)
    {
        if (dough.Envelope != SavedPlan.CurrentEnvelope)
        {
            return null;
        }

        try
        {
            return (
                JsonSerializer.Deserialize<NightSnapshot>(dough.Snapshot, PlanJson.Options)!,
                JsonSerializer.Deserialize<NightPlan>(dough.Plan, PlanJson.Options)!);
        }
        catch (Exception fault) when (fault is JsonException or NotSupportedException or ArgumentException)
        {
            return null;
        }
    }
}
