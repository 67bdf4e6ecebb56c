using System.Data;
using System.IO.Pipelines;
using System.Text.Json;
using GameNight.Nights.Erasure;
using GameNight.Nights.ForGuests;
using GameNight.Nights.Membership;
using GameNight.Nights.Plans;
using GameNight.Nights.Records;
using GameNight.Nights.Storage;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Logging;
using NodaTime;

namespace GameNight.Nights.Moving;

/// <summary>What came of an export.</summary>
public abstract record ExportResult
{
    private ExportResult()
    {
    }

    /// <summary>The document is complete.</summary>
    public sealed record Written : ExportResult;

    /// <summary>The host's last export, or that of others, is still being written. Nothing of this one was.</summary>
    public sealed record Busy : ExportResult;
}

/// <summary>
/// Writes a group as one document, night by night, as it stood at one moment. It closes only when all of it is there: what
/// was cut off on the way cannot be mistaken for a shorter group.
/// </summary>
public sealed partial class GroupExport
{
    private const int MostAtOnce = 3;

    /// <summary>A reader that hardly reads must not hold a transaction open.</summary>
    private static readonly TimeSpan Deadline = TimeSpan.FromMinutes(2);

    private readonly GroupSessions _sessions;
    private readonly GuestNotes _notes;
    private readonly IClock _clock;
    private readonly ILogger<GroupExport> _log;
    private readonly OnePerHost _turns = new(MostAtOnce);

    internal GroupExport(GroupSessions sessions, GuestNotes notes, IClock clock, ILogger<GroupExport> log)
    {
        _sessions = sessions;
        _notes = notes;
        _clock = clock;
        _log = log;
    }

    /// <param name="open">Called with the group's name once the database has answered, for where to write.</param>
    /// <exception cref="OperationCanceledException">It took too long, or nobody waits for it any more.</exception>
    public async Task<ExportResult> WriteAsync(
        GroupAccess access, Func<string, Stream> open, CancellationToken cancellation)
    {
        access.Demand(HostRole.Owner);
        using var turn = _turns.TryTake(access.HostId!.Value);
        if (turn is null)
        {
            return new ExportResult.Busy();
        }

        using var deadline = CancellationTokenSource.CreateLinkedTokenSource(cancellation);
        deadline.CancelAfter(Deadline);
        await using var session = await _sessions.OpenAsync(access, deadline.Token, IsolationLevel.RepeatableRead);
        var group = await session.Db.Groups.AsNoTracking().SingleAsync(deadline.Token);
        var pipe = PipeWriter.Create(open(group.Name), new StreamPipeWriterOptions(leaveOpen: true));
        try
        {
            await WriteAsync(pipe, session, access, group, deadline.Token);
            await pipe.CompleteAsync();
        }
        catch (Exception fault)
        {
            // What is not sent yet is thrown away.
            await pipe.CompleteAsync(fault);
            throw;
        }

        SayExported(_log, access.GroupId, access.HostId.Value);
        return new ExportResult.Written();
    }

    private async Task WriteAsync(
        PipeWriter pipe, GroupSession session, GroupAccess access, Group group, CancellationToken cancellation)
    {
        var (db, now) = (session.Db, _clock.GetCurrentInstant());
        await using var json = new Utf8JsonWriter(pipe, GroupJson.Writing);
        json.WriteStartObject();
        Write(json, nameof(GroupDocument.Schema), GroupDocument.SchemaName);
        Write(json, nameof(GroupDocument.Version), GroupDocument.CurrentVersion);
        Write(json, nameof(GroupDocument.ExportedAt), now);
        Write(json, nameof(GroupDocument.Group), new GroupPart(group.Name, group.Zone, group.Rhythm));

        var guests = await db.Guests.AsNoTracking().OrderBy(guest => guest.Id).ToListAsync(cancellation);
        Write(json, nameof(GroupDocument.OwnEater), guests.FirstOrDefault(guest => guest.HostId == access.HostId)?.Id);
        var kitchen = await db.Kitchens.AsNoTracking().SingleAsync(cancellation);
        Write(json, nameof(GroupDocument.Kitchen), kitchen.Facts);
        var doughs = await db.Recipes.AsNoTracking().OrderBy(recipe => recipe.Id).ToListAsync(cancellation);
        Write(json, nameof(GroupDocument.Doughs), doughs.Select(row => new DoughPart(row.Id, row.Name, row.Formula, row.Shape)));
        var menu = await db.MenuItems.AsNoTracking().OrderBy(item => item.Id).ToListAsync(cancellation);
        Write(json, nameof(GroupDocument.Menu), menu.Select(row => new MenuPart(
            row.Id, row.Name, row.Role, row.GramsPerCm2, row.Composition, row.Order, row.IsOffered, row.WaterShare, row.Stock)));
        var wishes = await db.RememberedWishes.AsNoTracking().ToDictionaryAsync(row => row.GuestId, cancellation);
        Write(json, nameof(GroupDocument.Guests), guests.Select(row => new GuestPart(
            row.Id, row.Name, row.Portion, row.IsStanding, row.ShowsName, row.FormerSince,
            wishes.GetValueOrDefault(row.Id) is { } kept ? new WishesPart(kept.Facts, kept.ConsentedVersion, kept.ConsentedAt) : null,
            row.Contact, row.Household, row.IsOneOff ? true : null)));

        json.WriteStartArray(GroupDocument.Member(nameof(GroupDocument.Nights)));
        var rows = await NightRows.LoadAsync(db, cancellation);
        foreach (var night in await db.Nights.AsNoTracking().OrderBy(night => night.Id).ToListAsync(cancellation))
        {
            JsonSerializer.Serialize(json, await PartAsync(session, night, rows, access, now, cancellation), GroupJson.Options);
            json.Flush();
            await pipe.FlushAsync(cancellation);
        }

        json.WriteEndArray();
        if (await DateParts.LoadAsync(db, cancellation) is { } dates)
        {
            Write(json, nameof(GroupDocument.Dates), dates);
        }

        json.WriteEndObject();
        json.Flush();
        await pipe.FlushAsync(cancellation);
    }

    private static void Write<T>(Utf8JsonWriter json, string member, T value)
    {
        json.WritePropertyName(GroupDocument.Member(member));
        JsonSerializer.Serialize(json, value, GroupJson.Options);
    }

    private async Task<NightPart> PartAsync(
        GroupSession session, Night night, NightRows rows, GroupAccess access, Instant now, CancellationToken cancellation)
    {
        var isPastKeeping = Retention.IsOver(night, now);
        var plan = await session.Db.Plans.AsNoTracking().SingleOrDefaultAsync(row => row.NightId == night.Id, cancellation);
        var dough = await session.Db.CommittedDoughs.AsNoTracking()
            .SingleOrDefaultAsync(row => row.NightId == night.Id, cancellation);
        var log = rows.Logs.GetValueOrDefault(night.Id);
        return new NightPart(
            night.Id,
            night.Facts,
            night.Overrides,
            night.CancelledAt,
            night.Moves,
            [.. rows.Invitations[night.Id].OrderBy(row => row.GuestId.Value).Select(row => Part(row, rows, access, isPastKeeping))],
            Part(plan, isPastKeeping),
            Part(dough, isPastKeeping),
            log is null ? null : new BakeLogPart(log.Facts, log.SavedAt),
            night.Readings.Count > 0 ? night.Readings : null,
            rows.Taps[night.Id].Select(tap => new TapPart(tap.Id, tap.Mark, tap.TakenBackAt)).ToList() is { Count: > 0 } taps ? taps : null);
    }

    private InvitedPart Part(Invitation row, NightRows rows, GroupAccess access, bool isPastKeeping)
    {
        var key = (row.NightId, row.GuestId);
        var (answer, back) = (rows.Answers.GetValueOrDefault(key), rows.LookBacks.GetValueOrDefault(key));
        var kept = isPastKeeping ? null : rows.Notes.GetValueOrDefault(key);
        return new InvitedPart(
            row.GuestId,
            row.DisownedAt,
            AnswerPart.Of(answer),
            kept is null ? null : new DietaryPart(
                kept.Needs, access.SeesNotes ? _notes.Read(kept.ProtectedNote).Note : null, kept.ConsentedVersion, kept.ConsentedAt, kept.Ruling),
            back is null ? null : new LookBackPart(back.Facts, back.SavedAt),
            row.Served);
    }

    /// <returns>Null for a plan that this version cannot read: it would be made anew as well.</returns>
    private static PlanPart? Part(SavedPlan? saved, bool isPastKeeping) =>
        saved is not null && PlanBook.Read(saved) is { } plan
            ? new PlanPart(
                saved.Envelope, saved.Fingerprint, saved.MadeAt, saved.AnswerBy, saved.DoughCommitment,
                isPastKeeping ? PlanErasure.WithoutPeople(plan) : plan)
            : null;

    private static CommittedPart? Part(CommittedDough? dough, bool isPastKeeping)
    {
        if (dough is null || CommittedReading.Of(dough) is not { Snapshot: var snapshot, Plan: var plan })
        {
            return null;
        }

        return new CommittedPart(
            dough.At,
            dough.By is not null,
            dough.Envelope,
            isPastKeeping ? PlanErasure.WithoutNeeds(snapshot) : snapshot,
            isPastKeeping ? PlanErasure.WithoutPeople(plan) : plan);
    }

    [LoggerMessage(LogLevel.Information, "Group {Group} was exported by host {Host}.")]
    private static partial void SayExported(ILogger log, GroupId group, HostId host);
}
