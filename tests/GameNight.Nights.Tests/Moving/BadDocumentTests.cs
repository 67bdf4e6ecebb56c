using System.Text;
using GameNight.Nights.Moving;
using GameNight.Nights.Records;
using GameNight.Nights.Tests.Storage;
using GameNight.TestKit.Postgres;

namespace GameNight.Nights.Tests.Moving;

public sealed class BadDocumentTests(ClassDatabase database) : MovingTest(database)
{
    /// <summary>Each: where the document is spoilt, with what, and where the problem is told.</summary>
    public static TheoryData<string, string, string, DocumentFault> Spoilt => new()
    {
        { "group.name", "\"\"", "$.group.name", DocumentFault.WrongCount },
        { "group.zone", "\"Atlantis/Centre\"", "$.group.zone", DocumentFault.UnknownZone },
        { "group.name", "\"a\\u0000b\"", "$.group.name", DocumentFault.Unreadable },
        { "group.name", "5", "$.group.name", DocumentFault.Unreadable },
        { "group.name", "null", "$.group.name", DocumentFault.Unreadable },
        { "ownEater", "\"0123456789abcdef0123456789abcdef\"", "$.ownEater", DocumentFault.UnknownId },
        { "kitchen.kitchen.roomCelsius", "90", "$.kitchen.kitchen.roomCelsius", DocumentFault.OutOfRange },
        { "kitchen.kitchen.roomCelsius", "\"warm\"", "$.kitchen.kitchen.roomCelsius", DocumentFault.Unreadable },
        { "kitchen.hours.sleepFromMinute", "-5", "$.kitchen.sleep", DocumentFault.OutOfRange },
        { "kitchen.menu.mostToppings", "9", "$.kitchen.menu.mostToppings", DocumentFault.OutOfRange },
        { "kitchen.menu.apart.0.firstId", "\"unheard-of\"", "$.kitchen.menu", DocumentFault.UnknownId },
        { "kitchen.menu.named.0.name", "\" \"", "$.kitchen.menu.named[0].name", DocumentFault.WrongCount },
        { "menu.0.stock", "{\"packGrams\":0}", "$.menu[0].packGrams", DocumentFault.OutOfRange },
        { "nights.0.invited.1.served", "2", "$.nights[0].invited[1].served", DocumentFault.OutOfRange },
        { "doughs.0.formula.water", "3", "$.doughs[0].formula.water", DocumentFault.OutOfRange },
        { "doughs.0.name", "\" \"", "$.doughs[0].name", DocumentFault.WrongCount },
        { "menu.0.gramsPerCm2", "7", "$.menu[0].gramsPerCm2", DocumentFault.OutOfRange },
        { "menu.0.composition.contains", "[\"milk\",\"milk\"]", "$.menu[0].composition.contains", DocumentFault.Repeated },
        { "menu.0.composition.contains", "[\"moonlight\"]", "$.menu[0].composition.contains[0]", DocumentFault.Unreadable },
        { "menu.0.id", "\"not an id\"", "$.menu[0].id", DocumentFault.Unreadable },
        { "guests.0.name", "\"\"", "$.guests[0].name", DocumentFault.WrongCount },
        { "guests.0.formerSince", "\"2026-01-01T00:00:00Z\"", "$.guests[0].name", DocumentFault.WrongCount },
        { "guests.0.unheardOf", "1", "$.guests[0].unheardOf", DocumentFault.Unreadable },
        { "nights.0.facts.title", "\"\"", "$.nights[0].facts.title", DocumentFault.Missing },
        { "nights.0.facts.serveAt", "\"9999-12-31T23:59:59\"", "$.nights[0].facts.serveAt", DocumentFault.OutOfTime },
        { "nights.0.facts.serveAt", "\"-9998-01-01T00:00:00\"", "$.nights[0].facts.serveAt", DocumentFault.OutOfTime },
        { "nights.0.facts.serveAt", "\"tomorrow\"", "$.nights[0].facts.serveAt", DocumentFault.Unreadable },
        { "nights.0.facts.formula", "\"0123456789abcdef0123456789abcdef\"", "$.nights[0].facts.formula", DocumentFault.UnknownId },
        { "nights.0.facts.mostCompanions", "5000", "$.nights[0].facts.mostCompanions", DocumentFault.OutOfRange },
        { "nights.0.overrides.ballGrams", "1", "$.nights[0].overrides.byHand.ballGrams", DocumentFault.OutOfRange },
        { "nights.0.invited.1.guest", "\"0123456789abcdef0123456789abcdef\"", "$.nights[0].invited[1].guest", DocumentFault.UnknownId },
        { "nights.0.invited.1.answer.facts.likes", "{\"<script>\":\"fine\"}", "$.nights[0].invited[1].answer.facts.likes", DocumentFault.UnknownId },
        { "nights.0.invited.1.answer.facts.likes", "{\"a\":\"fine\",\"a\":\"never\"}", "$.nights[0].invited[1].answer.facts.likes.a", DocumentFault.Unreadable },
        { "nights.0.invited.1.answer.answeredAt", "\"0001-01-01T00:00:00Z\"", "$.nights[0].invited[1].answer.answeredAt", DocumentFault.OutOfTime },
        { "nights.0.plan.envelope", "2", "$.nights[0].plan.envelope", DocumentFault.OutOfRange },
        { "nights.0.plan.document.conflicts", "[{\"kind\":\"System.IO.File\"}]", "$.nights[0].plan.document.conflicts[0]", DocumentFault.Unreadable },
        { "nights.0.plan.document.conflicts", "[{\"$type\":\"System.IO.File\"}]", "$.nights[0].plan.document.conflicts[0]", DocumentFault.Unreadable },
        { "nights.0.plan.document.split.combinations", "[]", "$.nights[0].plan.document.split.pies", DocumentFault.UnknownId },
        { "nights.0.committedDough.snapshot.guests", "[{\"id\":\"\",\"answer\":\"coming\",\"eaters\":[]}]", "$.nights[0].committedDough.snapshot.guests[].eaters", DocumentFault.WrongCount },
        { "nights.0.bakeLog.facts.slicesLeft", "-1", "$.nights[0].bakeLog.facts.slicesLeft", DocumentFault.OutOfRange },
        { "nights.0.bakeLog.facts.came.0.heads", "400", "$.nights[0].bakeLog.facts.came[0].heads", DocumentFault.OutOfRange },
    };

    [Theory]
    [MemberData(nameof(Spoilt))]
    public async Task A_bad_value_is_refused_with_its_place_and_nothing_is_kept(
        string where, string value, string told, DocumentFault fault)
    {
        var lived = await LiveAsync();
        var spoilt = Spoil(await ExportAsync(lived.Group.Access), where, value);
        var before = await Rows.EverythingAsync(Database);

        var refused = Assert.IsType<ImportResult.Refused>(await ImportAsync(lived.Group.Host, spoilt));

        Assert.Contains((told, fault), refused.Problems.Select(problem => (problem.Path, problem.Fault)));
        Assert.Equal(before, await Rows.EverythingAsync(Database));
    }

    [Theory]
    [InlineData("")]
    [InlineData("hello")]
    [InlineData("null")]
    [InlineData("[]")]
    [InlineData("{}")]
    [InlineData("{\"schema\":\"something-else\",\"version\":1}")]
    [InlineData("{\"schema\":\"gamenight-group\"}")]
    [InlineData("{\"schema\":\"gamenight-group\",\"version\":0}")]
    [InlineData("{\"schema\":\"gamenight-group\",\"version\":1.5}")]
    [InlineData("{\"schema\":\"gamenight-group\",\"version\":1}")]
    [InlineData("{\"schema\":\"\\ud800\",\"version\":1}")]
    [InlineData("PK\u0003\u0004 a packed folder")]
    public async Task Something_else_than_a_group_is_refused(string text)
    {
        var host = await App.SignUpAsync("Hana");

        Assert.True(
            await ImportAsync(host, Encoding.UTF8.GetBytes(text)) is ImportResult.NotOurs or ImportResult.Refused,
            "It was taken in.");
    }

    [Fact]
    public async Task A_later_version_is_told_so_whatever_else_is_in_it()
    {
        var host = await App.SignUpAsync("Hana");
        var later = Encoding.UTF8.GetBytes("{\"schema\":\"gamenight-group\",\"version\":7,\"nobodyKnows\":[1,2]}");

        Assert.Equal(new ImportResult.FromTheFuture(7, GroupDocument.CurrentVersion), await ImportAsync(host, later));
    }

    [Fact]
    public async Task A_document_cut_off_anywhere_is_refused()
    {
        var lived = await LiveAsync();
        var whole = await ExportAsync(lived.Group.Access);
        for (var length = 1; length < whole.Length; length += whole.Length / 40)
        {
            Assert.IsNotType<ImportResult.Imported>(await ImportAsync(lived.Group.Host, whole[..length]));
        }
    }

    [Fact]
    public async Task Nesting_without_end_is_refused()
    {
        var host = await App.SignUpAsync("Hana");
        var deep = Encoding.UTF8.GetBytes(
            "{\"schema\":\"gamenight-group\",\"version\":1,\"group\":" + new string('[', 100_000) + new string(']', 100_000) + "}");

        Assert.IsType<ImportResult.Refused>(await ImportAsync(host, deep));
    }

    [Fact]
    public async Task More_than_a_group_can_hold_is_refused()
    {
        var lived = await LiveAsync();
        var crowded = But(await ExportAsync(lived.Group.Access), document =>
        {
            var guests = document["guests"]!.AsArray();
            for (var number = 0; number < 400; number++)
            {
                var one = guests[0]!.DeepClone();
                one["id"] = Guid.NewGuid().ToString("N");
                guests.Add(one);
            }
        });

        var refused = Assert.IsType<ImportResult.Refused>(await ImportAsync(lived.Group.Host, crowded));

        Assert.Contains(("$.guests", DocumentFault.WrongCount, 300d), refused.Problems.Select(problem => (problem.Path, problem.Fault, problem.High)));
    }

    [Fact]
    public async Task The_same_person_twice_is_refused()
    {
        var lived = await LiveAsync();
        var doubled = But(
            await ExportAsync(lived.Group.Access),
            document => document["guests"]!.AsArray().Add(document["guests"]![0]!.DeepClone()));

        var refused = Assert.IsType<ImportResult.Refused>(await ImportAsync(lived.Group.Host, doubled));

        Assert.Contains(("$.guests", DocumentFault.Repeated), refused.Problems.Select(problem => (problem.Path, problem.Fault)));
    }

    [Fact]
    public async Task A_byte_order_mark_in_front_does_no_harm()
    {
        var lived = await LiveAsync();

        Assert.IsType<ImportResult.Imported>(await ImportAsync(
            lived.Group.Host, [0xEF, 0xBB, 0xBF, .. await ExportAsync(lived.Group.Access)]));
    }

    [Fact]
    public async Task A_document_sent_twice_founds_one_group()
    {
        var lived = await LiveAsync();
        var (document, id) = (await ExportAsync(lived.Group.Access), GroupId.New());

        Assert.Equal(new ImportResult.Imported(id), await ImportAsync(lived.Group.Host, document, id));
        var before = await Rows.EverythingAsync(Database);

        Assert.Equal(new ImportResult.AlreadyThere(id), await ImportAsync(lived.Group.Host, document, id));
        Assert.Equal(before, await Rows.EverythingAsync(Database));
    }

    [Fact]
    public async Task Of_two_imports_at_once_into_the_same_group_exactly_one_wins()
    {
        var lived = await LiveAsync();
        var (document, id) = (await ExportAsync(lived.Group.Access), GroupId.New());

        var results = await Task.WhenAll(Enumerable.Range(0, 4).Select(_ => Task.Run(() => ImportAsync(lived.Group.Host, document, id))));

        Assert.Single(results.OfType<ImportResult.Imported>());
        Assert.Equal(3, results.OfType<ImportResult.AlreadyThere>().Count());
        Assert.Single(await Rows.ReadAsync(Database.AdminConnectionString, $"select 1 from memberships where group_id = '{id.Value}'"));
    }

    [Fact]
    public async Task Somebody_elses_group_cannot_be_written_into()
    {
        var lived = await LiveAsync();
        var document = await ExportAsync(lived.Group.Access);
        var stranger = await App.SignUpAsync("Stranger");
        var before = await Rows.EverythingAsync(Database);

        Assert.IsType<ImportResult.NotOurs>(await ImportAsync(stranger, document, lived.Group.Id));

        Assert.Equal(before, await Rows.EverythingAsync(Database));
        Assert.Null(await App.Groups.EnterAsync(stranger, lived.Group.Id, Cancellation));
    }

    [Fact]
    public async Task A_host_imports_one_document_at_a_time()
    {
        var host = await App.SignUpAsync("Hana");
        var import = App.Get<GroupImport>();
        using (var turn = import.TryTakeTurn(host))
        {
            Assert.NotNull(turn);
            Assert.Null(import.TryTakeTurn(host));
        }

        using var next = import.TryTakeTurn(host);
        Assert.NotNull(next);
    }

    /// <summary>Replaces a member by raw JSON, so that doubles and characters survive that no tree would take.</summary>
    private static byte[] Spoil(byte[] document, string where, string value)
    {
        const string Place = "here it is spoilt";
        var spoilt = But(document, root =>
        {
            var steps = where.Split('.');
            var node = steps[..^1].Aggregate(root, (at, step) => int.TryParse(step, out var index) ? at[index]! : at[step]!);
            node[steps[^1]] = Place;
        });
        return Encoding.UTF8.GetBytes(Encoding.UTF8.GetString(spoilt).Replace($"\"{Place}\"", value, StringComparison.Ordinal));
    }
}
