using System.Net;
using System.Text;
using GameNight.Nights.Records;
using GameNight.Planning.Guests;

namespace GameNight.Web.Tests.Pages;

public class AnswerTests(SharedApp site)
{
    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Is_kept_without_a_cookie_and_shown_to_guest_and_host()
    {
        var invited = await site.InviteAsync();
        var page = await invited.OpenAsync();

        var answer = await page.SendAsync(
            Cancellation,
            ("presence", "Coming"), ("hunger", "More"), ("companion1", "Child"), ("consent", "on"), ("diet0-Vegetarian", "on"),
            ("must0-Nuts", "t"), ("note", "I bring the expansion"));

        Assert.Equal(HttpStatusCode.SeeOther, answer.StatusCode);
        Assert.StartsWith($"{invited.Link}?sent=yes&as=", answer.Headers.Location!.ToString(), StringComparison.Ordinal);
        Assert.False(answer.Headers.Contains("Set-Cookie"));
        var thanks = await invited.App.Client.GetStringAsync(answer.Headers.Location, Cancellation);
        Assert.Contains("Your answer is kept", thanks, StringComparison.Ordinal);
        var seen = await invited.SeenByHostAsync();
        Assert.Equal((Presence.Coming, Hunger.More), (seen.Answer!.Presence, seen.Answer.Hunger));
        Assert.Equal(PortionClass.Child, Assert.Single(seen.Answer.Companions).Portion);
        Assert.Equal("I bring the expansion", seen.Note);
        Assert.Equal([Diet.Vegetarian], seen.Needs[0].Diets);
        Assert.Equal([Allergen.Nuts], seen.Needs[0].MustNotTouch);
    }

    [Fact]
    public async Task Anything_is_fine_takes_all_likes_back_in_one_tap()
    {
        var invited = await site.InviteAsync();
        var page = await invited.OpenAsync();
        var topping = System.Text.RegularExpressions.Regex.Match(page.Html, "name=\"(like-[^\"]+)\"").Groups[1].Value;
        await page.SendAsync(Cancellation, ("presence", "Coming"), (topping, "Favourite"));
        Assert.Single((await invited.SeenByHostAsync()).Answer!.Likes);

        await (await invited.OpenAsync()).SendAsync(Cancellation, ("presence", "Coming"), (topping, "Favourite"), ("anything", "on"));

        Assert.Empty((await invited.SeenByHostAsync()).Answer!.Likes);
    }

    [Fact]
    public async Task Sent_twice_counts_once()
    {
        var invited = await site.InviteAsync();
        var page = await invited.OpenAsync();

        var first = await page.SendAsync(Cancellation, ("presence", "Coming"));
        var second = await page.SendAsync(Cancellation, ("presence", "Coming"));

        Assert.Equal([HttpStatusCode.SeeOther, HttpStatusCode.SeeOther], [first.StatusCode, second.StatusCode]);
        Assert.Equal("1", (await invited.OpenAsync()).Revision);
    }

    [Fact]
    public async Task From_two_devices_the_last_counts_at_once_and_both_are_told_what_gave_way()
    {
        var invited = await site.InviteAsync();
        var (phone, laptop) = (await invited.OpenAsync(), await invited.OpenAsync());
        var onPhone = await phone.SendAsync(Cancellation, ("presence", "NotComing"), ("hunger", "Less"));

        var sent = await laptop.SendAsync(
            Cancellation, ("presence", "Coming"), ("companion2", "Teen"), ("consent", "on"), ("note", "typed on the laptop"));

        Assert.Equal(HttpStatusCode.SeeOther, sent.StatusCode);
        Assert.Equal((Presence.Coming, "typed on the laptop"), ((await invited.SeenByHostAsync()).Answer!.Presence, (await invited.SeenByHostAsync()).Note));
        var told = await invited.App.Client.GetStringAsync(sent.Headers.Location, Cancellation);
        Assert.Contains("Your answer is kept", told, StringComparison.Ordinal);
        Assert.Contains("Whether you come: not coming before, coming, with 1 along now", told, StringComparison.Ordinal);
        Assert.Contains("Hunger: less than usual before, as usual now", told, StringComparison.Ordinal);

        // The phone at its next look, by either address.
        foreach (var address in new[] { onPhone.Headers.Location!.ToString(), invited.Link })
        {
            var next = await invited.App.Client.GetStringAsync(address, Cancellation);
            Assert.Contains("Whether you come: not coming before", next, StringComparison.Ordinal);
            Assert.DoesNotContain("Your answer is kept", next, StringComparison.Ordinal);
        }

        await (await invited.OpenAsync()).SendAsync(Cancellation, ("presence", "Coming"));
        Assert.DoesNotContain("Whether you come:", (await invited.OpenAsync()).Html, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Without_saying_whether_one_comes_is_asked_again_with_everything_typed()
    {
        var invited = await site.InviteAsync();
        var page = await invited.OpenAsync();

        var refused = await page.SendAsync(Cancellation, ("hunger", "Less"), ("note", "typed"), ("consent", "on"), ("must0-Milk", "a"));

        var document = await refused.DocumentAsync();
        Assert.Equal(HttpStatusCode.BadRequest, refused.StatusCode);
        Assert.Contains("Say first whether you come.", await refused.TextAsync(), StringComparison.Ordinal);
        Assert.Equal("typed", document.QuerySelector("#note")!.TextContent);
        Assert.True(document.QuerySelector("input[name=hunger][value=Less]")!.HasAttribute("checked"));
        Assert.True(document.QuerySelector("[name=must0-Milk] option[value=a]")!.HasAttribute("selected"));
        Assert.Null((await invited.SeenByHostAsync()).Answer);
    }

    [Fact]
    public async Task With_more_companions_than_the_host_allows_is_refused_and_loses_nobody()
    {
        var invited = await site.InviteAsync();
        var page = await invited.OpenAsync();
        await invited.Host.ChangeAsync(invited.Night, facts => facts with { MostCompanions = 1 }, Cancellation);

        var refused = await page.SendAsync(Cancellation, ("presence", "Coming"), ("companion1", "Adult"), ("companion2", "Child"));

        var document = await refused.DocumentAsync();
        Assert.Equal(HttpStatusCode.BadRequest, refused.StatusCode);
        Assert.Contains("You can bring up to 1.", await refused.TextAsync(), StringComparison.Ordinal);
        Assert.True(document.QuerySelector("#companion2 option[value=Child]")!.HasAttribute("selected"));
        Assert.Null((await invited.SeenByHostAsync()).Answer);
    }

    [Fact]
    public async Task Must_nots_without_consent_are_not_stored_and_the_page_says_so()
    {
        var invited = await site.InviteAsync();
        var page = await invited.OpenAsync();

        var answer = await page.SendAsync(Cancellation, ("presence", "Coming"), ("must0-Peanuts", "t"), ("note", "severe"));
        var thanks = await invited.App.Client.GetStringAsync(answer.Headers.Location, Cancellation);

        Assert.Contains("the host will not know unless you tell them", thanks, StringComparison.Ordinal);
        var seen = await invited.SeenByHostAsync();
        Assert.NotNull(seen.Answer);
        Assert.Empty(seen.Needs);
        Assert.Null(seen.Note);
    }

    [Fact]
    public async Task A_note_that_is_too_long_comes_back_whole()
    {
        var invited = await site.InviteAsync();
        var page = await invited.OpenAsync();
        var note = new string('x', DietaryNote.LongestNote + 1);

        var refused = await page.SendAsync(Cancellation, ("presence", "Coming"), ("consent", "on"), ("note", note));

        Assert.Equal(HttpStatusCode.BadRequest, refused.StatusCode);
        Assert.Equal(note, (await refused.DocumentAsync()).QuerySelector("#note")!.TextContent);
    }

    [Fact]
    public async Task A_megabyte_is_refused_with_a_plain_page()
    {
        var invited = await site.InviteAsync();
        var page = await invited.OpenAsync();

        // Asked first whether it may send, or the server hangs up in the middle of the sending.
        var request = new HttpRequestMessage(HttpMethod.Post, page.Link)
        {
            Content = new FormUrlEncodedContent([new("presence", "Coming"), new("note", new string('x', 1_000_000))]),
        };
        request.Headers.ExpectContinue = true;
        var refused = await invited.App.Client.SendAsync(request, Cancellation);

        Assert.Equal(HttpStatusCode.RequestEntityTooLarge, refused.StatusCode);
        Assert.Contains("What was sent is too long", await refused.TextAsync(), StringComparison.Ordinal);
        Assert.Null((await invited.SeenByHostAsync()).Answer);
    }

    [Theory]
    [InlineData("Origin", "https://elsewhere.example")]
    [InlineData("Sec-Fetch-Site", "cross-site")]
    [InlineData("Sec-Fetch-Site", "same-site")]
    public async Task Sent_from_another_site_is_refused(string header, string value)
    {
        var invited = await site.InviteAsync();

        var refused = await PostWithAsync(invited, invited.Link, header, value);
        var disowned = await PostWithAsync(invited, $"{invited.Link}/not-me", header, value);

        Assert.Equal(HttpStatusCode.Forbidden, refused.StatusCode);
        Assert.NotEqual(HttpStatusCode.OK, disowned.StatusCode);
        var seen = await invited.SeenByHostAsync();
        Assert.Null(seen.Answer);
        Assert.False(seen.LinkWasDisowned);
    }

    [Theory]
    [InlineData("Sec-Fetch-Site", "same-origin")]
    [InlineData("Sec-Fetch-Site", "none")]
    [InlineData("Origin", "null")]
    public async Task Sent_from_the_page_itself_is_kept(string header, string value)
    {
        var invited = await site.InviteAsync();

        var answer = await PostWithAsync(invited, invited.Link, header, value);

        Assert.Equal(HttpStatusCode.SeeOther, answer.StatusCode);
    }

    [Theory]
    [InlineData("presence=Coming&hunger=7&companion1=99&key=not-a-guid&revision=-1")]
    [InlineData("presence=Coming&revision=99999999999999999999&like-nothing=Like&must0-Nuts=x")]
    [InlineData("presence=0")]
    [InlineData("%00=%00&presence=%00")]
    [InlineData("")]
    public async Task Nonsense_in_fields_never_breaks_the_page(string body)
    {
        var invited = await site.InviteAsync();

        var answer = await invited.App.Client.PostAsync(
            invited.Link, new StringContent(body, Encoding.ASCII, "application/x-www-form-urlencoded"), Cancellation);

        Assert.InRange((int)answer.StatusCode, 200, 499);
    }

    private static Task<HttpResponseMessage> PostWithAsync(Invited invited, string path, string header, string value)
    {
        var request = new HttpRequestMessage(HttpMethod.Post, path)
        {
            Content = new FormUrlEncodedContent([new("presence", "Coming"), new("revision", "0")]),
        };
        request.Headers.Add(header, value);
        return invited.App.Client.SendAsync(request, Cancellation);
    }
}
