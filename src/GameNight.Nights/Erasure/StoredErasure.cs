using System.Text.Json;
using GameNight.Nights.Plans;
using GameNight.Nights.Records;
using GameNight.Nights.Storage;
using GameNight.Planning;
using GameNight.Planning.Contract;
using Microsoft.EntityFrameworkCore;

namespace GameNight.Nights.Erasure;

/// <summary>Erases within documents that are stored. What cannot be read cannot be cleaned, so it goes.</summary>
internal static class StoredErasure
{
    public static async Task ApplyAsync(
        GameNightDb db, SavedPlan saved, Func<NightPlan, NightPlan> erase, CancellationToken cancellation)
    {
        var row = db.Plans.Where(plan => plan.NightId == saved.NightId);
        if (PlanBook.Read(saved) is not { } plan)
        {
            await row.ExecuteDeleteAsync(cancellation);
            return;
        }

        var document = Write(erase(plan));
        await row.ExecuteUpdateAsync(set => set.SetProperty(plan => plan.Document, document), cancellation);
    }

    public static async Task ApplyAsync(
        GameNightDb db, CommittedDough dough, Func<NightSnapshot, NightSnapshot> eraseSnapshot,
        Func<NightPlan, NightPlan> erasePlan, CancellationToken cancellation)
    {
        var row = db.CommittedDoughs.Where(other => other.NightId == dough.NightId);
        if (CommittedReading.Of(dough) is not { } read)
        {
            await row.ExecuteDeleteAsync(cancellation);
            return;
        }

        var (snapshot, plan) = (Write(eraseSnapshot(read.Snapshot)), Write(erasePlan(read.Plan)));
        await row.ExecuteUpdateAsync(
            set => set.SetProperty(other => other.Snapshot, snapshot).SetProperty(other => other.Plan, plan), cancellation);
    }

    private static string Write<T>(T document) => JsonSerializer.Serialize(document, PlanJson.Options);
}
