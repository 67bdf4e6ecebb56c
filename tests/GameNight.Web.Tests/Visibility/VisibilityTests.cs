using System.Globalization;
using System.Text.Json;
using System.Text.RegularExpressions;
using GameNight.Nights.Records;
using GameNight.Planning.Appetite;
using GameNight.Planning.Timeline;
using GameNight.TestKit.Running;
using GameNight.Web.Tests.Pages;
using NodaTime;

namespace GameNight.Web.Tests.Visibility;

/// <summary>The matrix of <c>visibility.json</c>, cell by cell: who sees what of a night, and who does not.</summary>
public sealed class VisibilityTests(SharedApp site)
{
    private const string MustNot = "Lupin";

    private static readonly string[] Viewers =
        ["owner", "notesCoHost", "coHost", "self", "otherGuest", "otherGroup", "formerLink", "anonymous", "preview"];

    private static readonly Lock Once = new();
    private static Task<Seen>? _seen;

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    public static TheoryData<string, string, bool> Cells
    {
        get
        {
            using var matrix = JsonDocument.Parse(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Visibility", "visibility.json")));
            var cells = new TheoryData<string, string, bool>();
            foreach (var row in matrix.RootElement.GetProperty("rows").EnumerateArray())
            {
                var seenBy = row.GetProperty("seenBy").EnumerateArray().Select(viewer => viewer.GetString()!).ToHashSet();
                Assert.Subset(Viewers.ToHashSet(), seenBy);
                foreach (var viewer in Viewers)
                {
                    cells.Add(row.GetProperty("marker").GetString()!, viewer, seenBy.Contains(viewer));
                }
            }

            return cells;
        }
    }

    [Theory]
    [MemberData(nameof(Cells))]
    public async Task Everybody_sees_what_is_theirs_to_see_and_no_more(string marker, string viewer, bool sees)
    {
        var seen = await SeenAsync();

        Assert.Equal(sees, seen.Texts[viewer].Contains(seen.Markers[marker], StringComparison.OrdinalIgnoreCase));
    }

    private Task<Seen> SeenAsync()
    {
        lock (Once)
        {
            return _seen ??= LookAsync();
        }
    }

    private async Task<Seen> LookAsync()
    {
        var (app, host) = (await site.AppAsync(), await site.HostAsync());
        var (name, shown) = ("Zebulina Markwort", "Quillfeather");
        var guest = await host.KnowAsync(name, Cancellation);
        var open = await host.KnowAsync(shown, Cancellation);
        var other = await host.KnowAsync("Rui", Cancellation);
        var fellow = await host.KnowAsync("Fellowina Underoof", Cancellation);
        await host.HouseholdAsync("Marked roof", [guest, fellow], Cancellation);
        var night = await host.OpenNightAsync(
            [guest, open, other, fellow], Cancellation, facts => facts with { Title = "Marked title", Address = "Marked lane 9", Courses = [new Course("Marked stew", AppetiteTaken.ALot)], Played = new Played("Marked auction") });
        await SendAsync(
            app, await host.LinkAsync(night, fellow, Cancellation), ("presence", "Coming"), ("consent", "on"), ("note", "Fellow note, between us"));
        await host.OverruleAsync(
            night,
            overrides => overrides.HelpedBy([new HelperOfNight(HelperSkill.Everything, Name: "Marked helping")])
                .WithOwn(new NamedOwnStep("Marked chore", new OwnStep(1, Duration.FromMinutes(10), true, Before: new StepTie(StepKind.Serve)))),
            Cancellation);
        var wish = await host.ToppingAsync("Olives", Cancellation);
        var link = await host.LinkAsync(night, guest, Cancellation);
        await SendAsync(
            app, link, ("presence", "Coming"), ("consent", "on"), ("note", "Marked note, between us"), ("must0-Lupin", "a"),
            ($"like-{wish}", "Never"), ("comes", "20:30"));
        await app.Client.PostAsync(
            $"{link}/messages", new FormUrlEncodedContent([new("address", "marked@example.org"), new("consent", "on")]), Cancellation);
        var contact = await (await app.Client.GetAsync($"{link}/messages", Cancellation)).DocumentAsync();
        var full = await host.OpenNightAsync([guest, other], Cancellation, facts => facts with { Seats = 1 });
        var (waits, waitsToo) = (await host.LinkAsync(full, guest, Cancellation), await host.LinkAsync(full, other, Cancellation));
        await SendAsync(app, waits, ("presence", "Coming"));
        await SendAsync(app, waitsToo, ("presence", "Coming"));
        await SendAsync(app, await host.LinkAsync(night, open, Cancellation), ("presence", "Coming"), ("showsName", "on"));
        var otherLink = await host.LinkAsync(night, other, Cancellation);
        var former = otherLink;
        await host.RenewLinkAsync(night, other, Cancellation);
        otherLink = await host.LinkAsync(night, other, Cancellation);
        await SendAsync(app, otherLink, ("presence", "Undecided"));

        var question = await host.AskForDateAsync([guest], Cancellation, facts => facts with { Title = "Marked evening" });
        var said = DateChoiceFacts.IdOf((await host.QuestionAsync(question, Cancellation)).Facts.Options[0]);
        var dateLink = await host.DateLinkAsync(question, guest, Cancellation);
        await SendAsync(app, dateLink, ($"evening-{said}", "AtAPinch"));
        var asked = await (await app.Client.GetAsync(dateLink, Cancellation)).DocumentAsync();
        var otherDate = await host.DateLinkAsync(await host.AskForDateAsync([other], Cancellation), other, Cancellation);

        var page = await app.Client.GetAsync(link, Cancellation);
        var document = await page.DocumentAsync();
        var texts = new Dictionary<string, string>
        {
            ["owner"] = await SeenByAsync(HostRole.Owner, seesNotes: true),
            ["notesCoHost"] = await SeenByAsync(HostRole.Organiser, seesNotes: true),
            ["coHost"] = await SeenByAsync(HostRole.Cook, seesNotes: false),
            ["otherGroup"] = await host.SeenByStrangerAsync(night, Cancellation) + await host.SeenByStrangerAsync(full, Cancellation),
            ["self"] = Filled(document) + link + Filled(asked) + Said(asked) + dateLink + Arrival(document)
                + contact.QuerySelector("#address")!.GetAttribute("value") + await PlaceAsync(app, waits),
            ["otherGuest"] = await TextAsync(app, otherLink, $"{otherLink}/night.ics", $"{otherLink}/messages", otherDate, waitsToo)
                + await PlaceAsync(app, waitsToo),
            ["formerLink"] = await TextAsync(app, former, $"{former}/night.ics"),
            ["anonymous"] = await TextAsync(
                app, "/", "/sign-in", "/first", "/i/unknown", $"/g/{host.Group}", $"/g/{host.Group}/n/{night}", "/health/ready"),
            ["preview"] = $"{document.Title} {string.Join(' ', document.QuerySelectorAll("meta").Select(meta => meta.GetAttribute("content")))} {page.Headers}",
        };
        async Task<string> SeenByAsync(HostRole right, bool seesNotes) =>
            await host.SeenByAsync(night, right, seesNotes, Cancellation) + await host.SeenByAsync(full, right, seesNotes, Cancellation);

        return new Seen(texts, new Dictionary<string, string>
        {
            ["name"] = name,
            ["shownName"] = shown,
            ["note"] = "Marked note",
            ["mustNot"] = MustNot,
            ["wish"] = wish,
            ["address"] = "Marked lane",
            ["title"] = "Marked title",
            ["course"] = "Marked stew",
            ["group"] = "Thursday table",
            ["played"] = "Marked auction",
            ["helper"] = "Marked helping",
            ["ownStep"] = "Marked chore",
            ["household"] = "Marked roof",
            ["fellow"] = "Fellowina",
            ["fellowNote"] = "Fellow note",
            ["link"] = link["/i/".Length..],
            ["mail"] = "marked@example.org",
            ["place"] = "\"waitingPlace\":1",
            ["arrival"] = "\"comesAtMinute\":1230",
            ["question"] = "Marked evening",
            ["said"] = $"\"{said}\":\"atAPinch\"",
            ["dateLink"] = dateLink["/d/".Length..],
        });
    }

    /// <summary>When the form says that the guest comes, as hosts are handed it.</summary>
    private static string Arrival(AngleSharp.Html.Dom.IHtmlDocument page) =>
        page.QuerySelector("input[name=comes][checked]")?.GetAttribute("value") is { Length: 5 } time
            ? $"\"comesAtMinute\":{(60 * int.Parse(time[..2], CultureInfo.InvariantCulture)) + int.Parse(time[3..], CultureInfo.InvariantCulture)}"
            : "";

    /// <summary>The place in line that a guest reads, as hosts are handed it.</summary>
    private static async Task<string> PlaceAsync(RunningApp app, string link) =>
        $"\"waitingPlace\":{Regex.Match(await app.Client.GetStringAsync(link, Cancellation), "at place ([0-9]+)").Groups[1].Value}";

    /// <summary>What the guest reads, with what their form holds: ticked boxes and chosen likings by name.</summary>
    private static string Filled(AngleSharp.Html.Dom.IHtmlDocument page) => page.Body!.TextContent + string.Join(' ', page
        .QuerySelectorAll("input[checked], option[selected], textarea")
        .Select(field => $"{field.GetAttribute("name") ?? field.ParentElement?.GetAttribute("name")} {field.TextContent}"));

    /// <summary>What the form of a question holds, as hosts are handed it.</summary>
    private static string Said(AngleSharp.Html.Dom.IHtmlDocument page) => string.Join(' ', page.QuerySelectorAll("input[type=radio][checked]")
        .Select(field => $"\"{field.GetAttribute("name")!["evening-".Length..]}\":\"{field.GetAttribute("value")}\""));

    private static async Task<string> TextAsync(RunningApp app, params IReadOnlyList<string> paths)
    {
        var text = "";
        foreach (var path in paths)
        {
            var answer = await app.Client.GetAsync(path, Cancellation);
            text += $"{answer.Headers} {Selected(await answer.DocumentAsync())}";
        }

        return text;
    }

    /// <summary>Names of toppings and allergens stand in everybody's form: what counts is what is chosen there.</summary>
    private static string Selected(AngleSharp.Html.Dom.IHtmlDocument page)
    {
        foreach (var offered in page.QuerySelectorAll("form").ToList())
        {
            offered.Remove();
        }

        return page.DocumentElement.OuterHtml;
    }

    private static async Task SendAsync(RunningApp app, string link, params IReadOnlyList<(string Name, string Value)> fields)
    {
        var sent = await (await AnswerPage.OpenAsync(app.Client, link, Cancellation)).SendAsync(Cancellation, fields);
        Assert.Equal(System.Net.HttpStatusCode.SeeOther, sent.StatusCode);
    }

    private sealed record Seen(IReadOnlyDictionary<string, string> Texts, IReadOnlyDictionary<string, string> Markers);
}
