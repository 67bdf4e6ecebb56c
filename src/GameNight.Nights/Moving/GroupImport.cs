using GameNight.Nights.ForGuests;
using GameNight.Nights.Links;
using GameNight.Nights.Membership;
using GameNight.Nights.Plans;
using GameNight.Nights.Records;
using GameNight.Nights.Storage;
using GameNight.Planning;
using Microsoft.Extensions.Logging;
using NodaTime;

namespace GameNight.Nights.Moving;

/// <summary>What came of an import. Either all of the document is kept, or nothing.</summary>
public abstract record ImportResult
{
    private ImportResult()
    {
    }

    public sealed record Imported(GroupId Group) : ImportResult;

    /// <summary>The page that asked has made a group before. Nothing was added to it.</summary>
    public sealed record AlreadyThere(GroupId Group) : ImportResult;

    /// <summary>Not a document of a group.</summary>
    public sealed record NotOurs : ImportResult;

    public sealed record FromTheFuture(int Version, int Newest) : ImportResult;

    public sealed record Refused(IReadOnlyList<DocumentProblem> Problems) : ImportResult;
}

/// <summary>
/// Founds a group from a document: its importer is its only owner, guests keep their ids, links are made anew, notes are
/// encrypted anew and only while they may be kept, and plans of nights to come are made anew.
/// </summary>
public sealed partial class GroupImport
{
    private const int MostAtOnce = 2;

    private readonly GroupSessions _sessions;
    private readonly LinkDirectory _links;
    private readonly ReplanRequests _replans;
    private readonly GuestNotes _notes;
    private readonly DocumentCheck _check;
    private readonly IClock _clock;
    private readonly ILogger<GroupImport> _log;
    private readonly OnePerHost _turns = new(MostAtOnce);

    internal GroupImport(
        GroupSessions sessions, LinkDirectory links, ReplanRequests replans, GuestNotes notes, ReferenceTables tables,
        IClock clock, ILogger<GroupImport> log)
    {
        _sessions = sessions;
        _links = links;
        _replans = replans;
        _notes = notes;
        _check = new DocumentCheck(tables);
        _clock = clock;
        _log = log;
    }

    /// <summary>Largest document in bytes.</summary>
    public static int Largest => GroupDocument.Largest;

    /// <summary>Asked for before a document is taken in: they are large.</summary>
    /// <returns>To be disposed when the import is done; null when the host has to wait.</returns>
    public IDisposable? TryTakeTurn(HostId host) => _turns.TryTake(host);

    /// <param name="id">Made by the page, so that a document sent twice founds one group.</param>
    public async Task<ImportResult> FoundAsync(
        HostId host, GroupId id, ReadOnlyMemory<byte> bytes, CancellationToken cancellation)
    {
        var reading = DocumentReading.Of(bytes.Span);
        if (reading is not DocumentReading.Read { Document: var document })
        {
            return reading switch
            {
                DocumentReading.FromTheFuture future => new ImportResult.FromTheFuture(future.Version, GroupDocument.CurrentVersion),
                DocumentReading.Refused refused => new ImportResult.Refused([refused.Problem]),
                _ => new ImportResult.NotOurs(),
            };
        }

        var now = _clock.GetCurrentInstant();
        if (_check.Problems(document, now) is { Count: > 0 } problems)
        {
            return new ImportResult.Refused(problems);
        }

        if (await IsMineAsync(host, id, cancellation))
        {
            return new ImportResult.AlreadyThere(id);
        }

        await using var session = await _sessions.OpenAsync(
            new GroupAccess(id, host, HostRole.Owner, seesNotes: true), cancellation);
        new DocumentRecords(session, host, _links, _notes, _replans, now).AddAll(document);
        if (!await session.CommitNewAsync(cancellation))
        {
            // The same page was quicker, or the id is somebody else's and came from no page of ours: then it is not told.
            return await IsMineAsync(host, id, cancellation)
                ? new ImportResult.AlreadyThere(id)
                : new ImportResult.NotOurs();
        }

        _replans.Wake();
        SayFounded(_log, id, host);
        return new ImportResult.Imported(id);
    }

    private async Task<bool> IsMineAsync(HostId host, GroupId id, CancellationToken cancellation) =>
        (await _sessions.MembershipsOfAsync(host, cancellation)).Any(membership => membership.GroupId == id);

    [LoggerMessage(LogLevel.Information, "Group {Group} was founded from a document by host {Host}.")]
    private static partial void SayFounded(ILogger log, GroupId group, HostId host);
}
