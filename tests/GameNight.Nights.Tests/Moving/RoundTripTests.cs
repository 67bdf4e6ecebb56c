using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using GameNight.Nights.Erasure;
using GameNight.Nights.ForGuests;
using GameNight.Nights.Membership;
using GameNight.Nights.Moving;
using GameNight.Nights.Records;
using GameNight.Nights.Tests.Storage;
using GameNight.Planning.Guests;
using GameNight.TestKit.Nights;
using GameNight.TestKit.Postgres;

namespace GameNight.Nights.Tests.Moving;

public sealed class RoundTripTests(ClassDatabase database) : MovingTest(database)
{
    [Fact]
    public async Task Exported_imported_and_exported_again_is_the_same_document()
    {
        var lived = await LiveAsync();
        var first = await ExportAsync(lived.Group.Access);
        var newcomer = await App.SignUpAsync("Newcomer");

        var imported = Assert.IsType<ImportResult.Imported>(await ImportAsync(newcomer, first));
        App.Clock.AdvanceMinutes(5);
        var second = await ExportAsync(await EnterAsync(newcomer, imported.Group));

        Assert.Equal(Lasting(first), Lasting(second));
        Assert.NotEqual((string?)JsonNode.Parse(first)!["exportedAt"], (string?)JsonNode.Parse(second)!["exportedAt"]);
        Assert.Contains(Marker, Encoding.UTF8.GetString(second), StringComparison.Ordinal);
        Assert.Equal(
            ["plan", "committedDough", "bakeLog"],
            JsonNode.Parse(second)!["nights"]![0]!.AsObject().Where(part => part.Value is JsonObject).Select(part => part.Key).Except(["facts", "overrides"]));
    }

    [Fact]
    public async Task It_stays_the_same_after_the_notes_are_over_and_a_guest_has_left()
    {
        var lived = await LiveAsync();
        App.Clock.AdvanceDays(30);
        await App.Get<GuestRemoval>().RemoveAsync(lived.Group.Access, lived.Rui, Cancellation);
        var first = await ExportAsync(lived.Group.Access);

        var imported = Assert.IsType<ImportResult.Imported>(await ImportAsync(lived.Group.Host, first));
        var second = await ExportAsync(await EnterAsync(lived.Group.Host, imported.Group));

        Assert.Equal(Lasting(first), Lasting(second));
        Assert.DoesNotContain("Rui", Encoding.UTF8.GetString(second), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Links_are_made_anew_and_answers_go_on_through_them()
    {
        var lived = await LiveAsync();
        var document = await ExportAsync(lived.Group.Access);

        var imported = Assert.IsType<ImportResult.Imported>(await ImportAsync(lived.Group.Host, document));

        var group = new FoundedGroup(lived.Group.Host, imported.Group, await EnterAsync(lived.Group.Host, imported.Group));
        var link = await App.LinkAsync(group, lived.Night, lived.Rui);
        Assert.NotEqual(lived.RuiLink, link);
        Assert.IsType<AnswerResult.RecordedAsLateChange>(await App.AnswerAsync(link, Answers.NotComing(revision: 1)));
        Assert.Equal(Presence.Coming, (await App.LookAsync(lived.RuiLink))!.Answer!.Presence);
        var text = Encoding.UTF8.GetString(document);
        Assert.DoesNotContain(lived.RuiLink.Text, text, StringComparison.Ordinal);
        Assert.DoesNotContain("generation", text, StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public async Task Accounts_stay_behind_and_the_importer_is_the_only_host()
    {
        var lived = await LiveAsync();
        var second = await App.SignUpAsync("Second host");
        await InSessionAsync(lived.Group.Access, session =>
        {
            session.Db.Memberships.Add(new GroupMembership(lived.Group.Id, second, HostRole.Cook, seesNotes: false));
            session.Db.Guests.Add(new Guest(lived.Group.Id, GuestId.New(), "Second host", PortionClass.Adult, second));
            return Task.CompletedTask;
        });
        var newcomer = await App.SignUpAsync("Newcomer");

        var imported = Assert.IsType<ImportResult.Imported>(await ImportAsync(newcomer, await ExportAsync(lived.Group.Access)));

        var access = await EnterAsync(newcomer, imported.Group);
        Assert.Equal((HostRole.Owner, true), (access.Role, access.SeesNotes));
        Assert.Equal(["Hana"], (await App.GuestList.GuestsAsync(access, Cancellation)).Where(guest => guest.IsHost).Select(guest => guest.Name));
        Assert.Null(await App.Groups.EnterAsync(lived.Group.Host, imported.Group, Cancellation));
    }

    [Fact]
    public async Task Notes_go_out_only_to_owners_who_may_read_them_and_come_in_encrypted()
    {
        var lived = await LiveAsync();
        var blind = new GroupAccess(lived.Group.Id, lived.Group.Host, HostRole.Owner, seesNotes: false);

        var without = Encoding.UTF8.GetString(await ExportAsync(blind));
        await ImportAsync(lived.Group.Host, await ExportAsync(lived.Group.Access));

        Assert.DoesNotContain(Dietary(without), note => note["note"] is not null);
        Assert.Contains("lupin", without, StringComparison.Ordinal);
        Assert.Equal(2, (await Rows.ReadAsync(Database.AdminConnectionString, $"select 1 from dietary_notes where night_id = '{lived.Night.Value}'")).Count);
        Assert.DoesNotContain(
            await Rows.ReadAsync(Database.AdminConnectionString, "select row_to_json(n)::text from dietary_notes n"),
            row => row.Contains(Marker, StringComparison.Ordinal));
    }

    [Fact]
    public async Task Past_their_time_must_nots_and_notes_neither_go_out_nor_come_in()
    {
        var lived = await LiveAsync();
        var fresh = await ExportAsync(lived.Group.Access);
        App.Clock.AdvanceDays(30);

        var late = Encoding.UTF8.GetString(await ExportAsync(lived.Group.Access));
        var imported = Assert.IsType<ImportResult.Imported>(await ImportAsync(lived.Group.Host, fresh));

        Assert.Empty(Dietary(late));
        Assert.DoesNotContain("lupin", late, StringComparison.Ordinal);
        Assert.DoesNotContain(
            (await Rows.EverythingAsync(Database)).Where(row => row.Contains(imported.Group.Value.ToString(), StringComparison.Ordinal)),
            row => row.Contains("lupin", StringComparison.Ordinal) || row.StartsWith("dietary_notes", StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_coming_night_is_planned_anew_and_a_past_one_is_left_as_it_was()
    {
        var lived = await LiveAsync();
        var coming = await ImportAsync(lived.Group.Host, await ExportAsync(lived.Group.Access));
        App.Clock.AdvanceDays(10);
        var past = await ImportAsync(lived.Group.Host, await ExportAsync(lived.Group.Access));

        var asked = await Rows.ReadAsync(Database.AdminConnectionString, "select group_id from replan_queue");

        Assert.Contains(Assert.IsType<ImportResult.Imported>(coming).Group.Value.ToString(), asked);
        Assert.DoesNotContain(Assert.IsType<ImportResult.Imported>(past).Group.Value.ToString(), asked);
    }

    [Fact]
    public async Task An_export_needs_the_right_of_an_owner()
    {
        var lived = await LiveAsync();
        var organiser = new GroupAccess(lived.Group.Id, lived.Group.Host, HostRole.Organiser, seesNotes: true);

        await Assert.ThrowsAsync<RightMissingException>(() => ExportAsync(organiser));
    }

    [Fact]
    public async Task Hosts_take_turns_and_a_failed_export_gives_its_turn_back()
    {
        var lived = await LiveAsync();
        var export = App.Get<GroupExport>();
        using var full = new FullDisk(2000);

        ExportResult? meanwhile = null;
        await Assert.ThrowsAsync<IOException>(() => export.WriteAsync(
            lived.Group.Access,
            _ =>
            {
                meanwhile = export.WriteAsync(lived.Group.Access, _ => new MemoryStream(), Cancellation).GetAwaiter().GetResult();
                return full;
            },
            Cancellation));

        Assert.IsType<ExportResult.Busy>(meanwhile);
        Assert.NotEmpty(await ExportAsync(lived.Group.Access));
    }

    [Fact]
    public async Task What_was_cut_off_on_the_way_is_no_shorter_group()
    {
        var lived = await LiveAsync();
        var whole = await ExportAsync(lived.Group.Access);
        foreach (var room in new[] { 0, 1, whole.Length / 2, whole.Length - 1 })
        {
            using var full = new FullDisk(room);
            await Assert.ThrowsAsync<IOException>(() => App.Get<GroupExport>().WriteAsync(lived.Group.Access, _ => full, Cancellation));

            Assert.ThrowsAny<JsonException>(() => JsonDocument.Parse(full.Written));
            Assert.IsNotType<ImportResult.Imported>(await ImportAsync(lived.Group.Host, full.Written));
        }
    }

    private static IEnumerable<JsonNode> Dietary(string document) => JsonNode.Parse(document)!["nights"]!.AsArray()
        .SelectMany(night => night!["invited"]!.AsArray()).Select(row => row!["dietary"]).OfType<JsonNode>();

    private async Task<GroupAccess> EnterAsync(HostId host, GroupId group) =>
        (await App.Groups.EnterAsync(host, group, Cancellation))!;

    /// <summary>Takes so many bytes and then no more.</summary>
    private sealed class FullDisk(int room) : MemoryStream
    {
        public byte[] Written => ToArray();

        public override ValueTask WriteAsync(ReadOnlyMemory<byte> buffer, CancellationToken cancellationToken = default)
        {
            Write(buffer.Span);
            return ValueTask.CompletedTask;
        }

        public override void Write(ReadOnlySpan<byte> buffer)
        {
            var fits = (int)Math.Min(buffer.Length, room - Length);
            base.Write(buffer[..fits]);
            if (fits < buffer.Length)
            {
                throw new IOException("No space left on device.");
            }
        }
    }
}
