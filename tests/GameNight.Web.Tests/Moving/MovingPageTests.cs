using System.Net;
using System.Text;
using System.Text.Json.Nodes;
using GameNight.TestKit.Running;
using GameNight.Web.Tests.Pages;

namespace GameNight.Web.Tests.Moving;

/// <summary>Leaving and moving as a browser without scripts sees it.</summary>
public class MovingPageTests(SharedApp site)
{
    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Fact]
    public async Task The_document_comes_down_and_goes_into_a_new_group()
    {
        using var host = await HostAsync();
        var group = (await site.HostAsync()).Group;

        var sent = await host.SendAsync($"/g/{group.Value}/moving", $"/g/{group.Value}/moving/document");

        Assert.Equal(HttpStatusCode.OK, sent.StatusCode);
        AssertDownload(sent, "application/json", ".json");
        var document = await sent.Content.ReadAsByteArrayAsync(Cancellation);
        Assert.Equal("gamenight-group", (string?)JsonNode.Parse(document)!["schema"]);

        var page = await host.Client.GetAsync("/bring-in", Cancellation);
        var founded = await BringInAsync(host, await page.DocumentAsync(), document);
        Assert.Equal(HttpStatusCode.SeeOther, founded.StatusCode);
        var twice = await BringInAsync(host, await page.DocumentAsync(), document);
        Assert.Equal(HttpStatusCode.Conflict, twice.StatusCode);
        Assert.Contains($"/g/{founded.GroupId():N}", await twice.TextAsync(), StringComparison.Ordinal);

        await DeleteAsync(host, founded.GroupId(), "Thursday table");
    }

    [Fact]
    public async Task A_download_that_fails_on_the_way_is_cut_off_and_not_shorter()
    {
        await site.InviteAsync("First");
        await site.InviteAsync("Second");
        using var host = await HostAsync();
        var whole = (await site.HostAsync()).Group;
        var document = await (await host.SendAsync($"/g/{whole.Value}/moving", $"/g/{whole.Value}/moving/document"))
            .Content.ReadAsByteArrayAsync(Cancellation);
        var group = (await BringInAsync(host, await (await host.Client.GetAsync("/bring-in", Cancellation)).DocumentAsync(), document)).GroupId();
        await HostAtWork.AskAsync<int>(
            await site.AppAsync(),
            "update nights set facts = jsonb_set(facts, '{zone}', '\"Atlantis/Centre\"') where id = "
            + $"(select id from nights where group_id = '{group}' order by id desc limit 1) and group_id = '{group}' returning 1",
            Cancellation);

        await Assert.ThrowsAsync<HttpRequestException>(() => host.SendAsync(
            $"/g/{group}/moving", $"/g/{group}/moving/document"));

        await DeleteAsync(host, group, "Thursday table");
    }

    [Theory]
    [InlineData("document")]
    [InlineData("delete")]
    public async Task What_cannot_be_undone_asks_who_it_is_and_leads_back(string part)
    {
        using var host = await HostAsync();
        var group = (await site.HostAsync()).Group;
        var token = await host.TokenAsync($"/g/{group.Value}/moving");

        host.LeaveAlone((await site.AppAsync()).DataFolder);

        var asked = await host.PostAsync(
            $"/g/{group.Value}/moving/{part}", [("__RequestVerificationToken", token), ("name", "Thursday table")]);

        Assert.Equal(HttpStatusCode.Redirect, asked.StatusCode);
        Assert.Equal($"/confirm?to={Uri.EscapeDataString($"/g/{group.Value}/moving")}", asked.Headers.Location!.ToString());
        Assert.Equal(HttpStatusCode.OK, (await host.Client.GetAsync($"/g/{group.Value}/moving", Cancellation)).StatusCode);
    }

    [Fact]
    public async Task A_form_from_elsewhere_hands_out_and_deletes_nothing()
    {
        using var host = await HostAsync();
        var group = (await site.HostAsync()).Group;
        (string, string)[] fields = [("name", "Thursday table")];

        foreach (var path in new[] { "document", "delete" })
        {
            var answer = await host.PostAsync($"/g/{group.Value}/moving/{path}", fields);
            Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
            Assert.Contains("open for too long", await answer.TextAsync(), StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task Strangers_find_nothing_here()
    {
        using var nobody = new Visitor((await site.AppAsync()).Address);
        using var host = await HostAsync();
        var (group, other) = ((await site.HostAsync()).Group.Value, Guid.CreateVersion7());

        foreach (var path in new[] { "moving", "moving/people.csv", "moving/past-nights.csv", $"moving/n/{other}/guests.csv" })
        {
            Assert.Equal(HttpStatusCode.Found, (await nobody.Client.GetAsync($"/g/{group}/{path}", Cancellation)).StatusCode);
            Assert.Equal(HttpStatusCode.NotFound, (await host.Client.GetAsync($"/g/{other}/{path}", Cancellation)).StatusCode);
        }

        Assert.Equal(HttpStatusCode.Found, (await nobody.Client.GetAsync("/bring-in", Cancellation)).StatusCode);
    }

    [Fact]
    public async Task Another_name_deletes_nothing_and_says_so()
    {
        using var host = await HostAsync();
        var group = (await site.HostAsync()).Group;

        var answer = await host.SendAsync(
            $"/g/{group.Value}/moving", $"/g/{group.Value}/moving/delete", ("name", "Friday table"));

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Contains("Nothing was deleted", await answer.TextAsync(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_deleted_group_is_not_there_any_more()
    {
        using var host = await HostAsync();
        var group = (await site.HostAsync()).Group;
        var document = await (await host.SendAsync($"/g/{group.Value}/moving", $"/g/{group.Value}/moving/document"))
            .Content.ReadAsByteArrayAsync(Cancellation);
        var founded = await BringInAsync(host, await (await host.Client.GetAsync("/bring-in", Cancellation)).DocumentAsync(), document);

        var deleted = await DeleteAsync(host, founded.GroupId(), "Thursday table");

        Assert.Contains("The group is deleted", await deleted.TextAsync(), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.NotFound, (await host.Client.GetAsync($"/g/{founded.GroupId()}/moving", Cancellation)).StatusCode);
        Assert.Equal(0L, await HostAtWork.AskAsync<long>(
            await site.AppAsync(), $"select count(*) from nights where group_id = '{founded.GroupId()}'", Cancellation));
    }

    [Theory]
    [InlineData("hello", "no document of a group")]
    [InlineData("{\"schema\":\"gamenight-group\",\"version\":9}", "of version 9; this installation reads up to 1")]
    [InlineData("{\"schema\":\"gamenight-group\",\"version\":1,\"group\":{\"name\":\"<img src=x>\"", "cut off")]
    [InlineData("", "Choose the file first")]
    public async Task A_bad_document_is_refused_in_words(string document, string said)
    {
        using var host = await HostAsync();
        var page = await (await host.Client.GetAsync("/bring-in", Cancellation)).DocumentAsync();

        var answer = await BringInAsync(host, page, Encoding.UTF8.GetBytes(document));

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        var html = await answer.Content.ReadAsStringAsync(Cancellation);
        Assert.Contains(said, WebUtility.HtmlDecode(html), StringComparison.Ordinal);
        Assert.DoesNotContain("<img", html, StringComparison.Ordinal);
        Assert.DoesNotContain("System.", html, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_document_that_is_too_large_is_told_so()
    {
        using var host = await HostAsync();
        var page = await (await host.Client.GetAsync("/bring-in", Cancellation)).DocumentAsync();

        var answer = await BringInAsync(host, page, new byte[21 * 1024 * 1024]);

        Assert.Equal(HttpStatusCode.RequestEntityTooLarge, answer.StatusCode);
        Assert.Contains("larger than 20 MB", await answer.TextAsync(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Lists_come_down_as_files_without_must_nots_and_notes()
    {
        var invited = await site.InviteAsync("=Rui+1", facts => facts with { Seats = 1 });
        await invited.Host.HouseholdAsync("Lane house", [invited.Guest], Cancellation);
        await (await invited.OpenAsync()).SendAsync(
            Cancellation, ("presence", "Coming"), ("consent", "on"), ("note", "never in a list"), ("comes", "20:30"));
        using var host = await HostAsync();
        var group = invited.Host.Group.Value;

        var guests = await host.Client.GetAsync($"/g/{group}/moving/n/{invited.Night.Value}/guests.csv", Cancellation);
        var people = await host.Client.GetAsync($"/g/{group}/moving/people.csv", Cancellation);
        var past = await host.Client.GetAsync($"/g/{group}/moving/past-nights.csv", Cancellation);

        foreach (var list in new[] { guests, people, past })
        {
            AssertDownload(list, "text/csv", ".csv");
        }

        var text = await guests.TextAsync();
        Assert.Contains("\r\n'=Rui+1,", text, StringComparison.Ordinal);
        Assert.Contains("comes at,leaves at,place on the waiting list,household,for one night only", text, StringComparison.Ordinal);
        Assert.Contains(",20:30,,1,Lane house,no", text, StringComparison.Ordinal);
        Assert.Contains(",Lane house,no", await people.TextAsync(), StringComparison.Ordinal);
        Assert.DoesNotContain("never in a list", text, StringComparison.Ordinal);
        Assert.Contains("'=Rui+1", await people.TextAsync(), StringComparison.Ordinal);
        Assert.StartsWith("night,served,time zone", await past.TextAsync(), StringComparison.Ordinal);
    }

    private static void AssertDownload(HttpResponseMessage answer, string type, string ending)
    {
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Equal(type, answer.Content.Headers.ContentType!.MediaType);
        var disposition = answer.Content.Headers.ContentDisposition!;
        Assert.Equal("attachment", disposition.DispositionType);
        Assert.Matches($"^\"?[a-z0-9-]+\\{ending}\"?$", disposition.FileName);
        Assert.True(answer.Headers.CacheControl!.NoStore);
        Assert.Equal("nosniff", answer.Headers.GetValues("X-Content-Type-Options").Single());
    }

    private static Task<HttpResponseMessage> DeleteAsync(Visitor host, Guid group, string name) => host.SendAsync(
        $"/g/{group}/moving", $"/g/{group}/moving/delete", ("name", name));

    private static Task<HttpResponseMessage> BringInAsync(Visitor host, AngleSharp.Html.Dom.IHtmlDocument page, byte[] document)
    {
        var form = new MultipartFormDataContent();
        foreach (var hidden in page.QuerySelectorAll("form input[type=hidden]"))
        {
            form.Add(new StringContent(hidden.GetAttribute("value")!), hidden.GetAttribute("name")!);
        }

        form.Add(new ByteArrayContent(document), "document", "../../group.json");
        return host.Client.PostAsync("/bring-in", form, Cancellation);
    }

    private async Task<Visitor> HostAsync()
    {
        var visitor = new Visitor((await site.AppAsync()).Address);
        await visitor.SignInAsync(SharedApp.Email, SharedApp.Password);
        return visitor;
    }
}
