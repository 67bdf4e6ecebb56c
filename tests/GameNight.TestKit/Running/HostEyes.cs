using System.Text.Json;
using System.Text.Json.Serialization;
using GameNight.Nights.Dates;
using GameNight.Nights.ForHosts;
using GameNight.Nights.Links;
using GameNight.Nights.Membership;
using GameNight.Nights.Records;
using GameNight.Planning.Contract;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;

namespace GameNight.TestKit.Running;

/// <summary>All that hosts of one right or another are handed of a night, as text to search in.</summary>
public static class HostEyes
{
    private static readonly JsonSerializerOptions Options = Readable();

    /// <summary>A host who joined with that right.</summary>
    public static async Task<string> SeenByAsync(
        IServiceProvider services, GroupAccess owner, NightId night, HostRole right, bool seesNotes, CancellationToken cancellation)
    {
        if (right == HostRole.Owner)
        {
            // A second owner would change what the first one may do.
            return await ReadAsync(services, owner, night, cancellation);
        }

        var (circle, id, host) = (services.GetRequiredService<HostCircle>(), HostInvitationId.New(), new HostId(Guid.NewGuid()));
        await circle.InviteAsync(owner, id, "Another host", right, seesNotes, cancellation);
        var open = (await circle.InvitationsAsync(owner, cancellation)).Single(invitation => invitation.Id == id);
        var group = await services.GetRequiredService<JoiningDesk>()
            .JoinAsync(LinkToken.TryParse(open.LinkToken), host, "Another host", cancellation);
        var access = await services.GetRequiredService<GroupDesk>().EnterAsync(host, group!.Value, cancellation);
        return await ReadAsync(services, access!, night, cancellation);
    }

    /// <summary>A host of a group of their own.</summary>
    public static async Task<string> SeenByStrangerAsync(IServiceProvider services, NightId night, CancellationToken cancellation)
    {
        var (groups, host) = (services.GetRequiredService<GroupDesk>(), new HostId(Guid.NewGuid()));
        var group = await groups.FoundAsync(host, "Stranger", "Elsewhere", "Europe/Lisbon", cancellation);
        return await ReadAsync(services, (await groups.EnterAsync(host, group, cancellation))!, night, cancellation);
    }

    private static async Task<string> ReadAsync(
        IServiceProvider services, GroupAccess access, NightId night, CancellationToken cancellation)
    {
        var seen = await services.GetRequiredService<HostDesk>().NightAsync(access, night, cancellation);
        var planned = await services.GetRequiredService<PlanDesk>().PlanAsync(access, night, cancellation);
        var desk = services.GetRequiredService<DateDesk>();
        var asked = new List<IReadOnlyList<AskedLine>>();
        var titles = new List<string>();
        foreach (var question in await desk.OpenAsync(access, cancellation))
        {
            titles.Add(question.Title);
            asked.Add((await desk.QuestionAsync(access, question.Id, cancellation))!.Asked);
        }

        var people = await services.GetRequiredService<GuestListDesk>().GuestsAsync(access, cancellation);
        return JsonSerializer.Serialize(new { seen, people, planned?.Names, planned?.Items, titles, asked }, Options);
    }

    private static JsonSerializerOptions Readable()
    {
        var options = PlanJson.Configure(new JsonSerializerOptions());
        options.Converters.Add(new AsText());
        return options;
    }

    /// <summary>Local times are no matter here; as they are they would be written by their every property.</summary>
    private sealed class AsText : JsonConverter<LocalDateTime>
    {
        public override LocalDateTime Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
            throw new NotSupportedException();

        public override void Write(Utf8JsonWriter writer, LocalDateTime value, JsonSerializerOptions options) =>
            writer.WriteStringValue($"{value:o}");
    }
}
