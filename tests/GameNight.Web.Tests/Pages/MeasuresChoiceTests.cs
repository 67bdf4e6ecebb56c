using System.Net;

namespace GameNight.Web.Tests.Pages;

public class MeasuresChoiceTests(SharedApp site)
{
    private const string Path = "/account/measures";

    [Fact]
    public async Task A_choice_renews_the_sign_in_and_leads_back()
    {
        using var visitor = await SignedInAsync();
        var token = await visitor.TokenAsync("/sign-out");

        // The account is everybody's here: it is left as it was found.
        var changed = await ChooseAsync(visitor, token, "UsCustomary", "/g/somewhere");
        var again = await ChooseAsync(visitor, token, "UsCustomary", "/g/somewhere");
        var back = await ChooseAsync(visitor, token, "Metric", "/g/somewhere");

        Assert.All([changed, again, back], answer => Assert.Equal("/g/somewhere", answer.Headers.Location?.ToString()));
        Assert.True(RenewsSignIn(changed));
        Assert.False(RenewsSignIn(again));
        Assert.True(RenewsSignIn(back));
    }

    [Theory]
    [InlineData("Furlongs", "/")]
    [InlineData("7", "/")]
    [InlineData("UsCustomary", "//elsewhere.example/")]
    public async Task Without_a_form_of_ours_nothing_changes_and_nobody_is_led_away(string measures, string to)
    {
        using var visitor = await SignedInAsync();

        var answer = await ChooseAsync(visitor, "forged", measures, to);

        Assert.False(RenewsSignIn(answer));
        Assert.Equal("/", answer.Headers.Location?.ToString());
    }

    [Theory]
    [InlineData("Furlongs")]
    [InlineData("7")]
    public async Task Measures_that_are_none_change_nothing(string measures)
    {
        using var visitor = await SignedInAsync();

        Assert.False(RenewsSignIn(await ChooseAsync(visitor, await visitor.TokenAsync("/sign-out"), measures, "/")));
    }

    [Fact]
    public async Task Nobody_who_is_not_signed_in_chooses()
    {
        using var visitor = new Visitor((await site.AppAsync()).Address);

        var answer = await ChooseAsync(visitor, "none", "UsCustomary", "/");

        Assert.Equal(HttpStatusCode.Found, answer.StatusCode);
        Assert.StartsWith("/sign-in", new Uri((await site.AppAsync()).Address, answer.Headers.Location!).AbsolutePath, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Pages_say_what_language_they_speak()
    {
        using var visitor = new Visitor((await site.AppAsync()).Address);
        visitor.Client.DefaultRequestHeaders.AcceptLanguage.ParseAdd("xx,en-US;q=0.5");

        var answer = await visitor.Client.GetAsync("/sign-in", TestContext.Current.CancellationToken);

        Assert.Equal(["en"], answer.Content.Headers.ContentLanguage);
        Assert.Equal("en", (await answer.DocumentAsync()).DocumentElement.GetAttribute("lang"));
    }

    private static bool RenewsSignIn(HttpResponseMessage answer) => answer.Headers.TryGetValues("Set-Cookie", out var cookies)
        && cookies.Any(cookie => cookie.StartsWith("gn-host=", StringComparison.Ordinal));

    private static Task<HttpResponseMessage> ChooseAsync(Visitor visitor, string token, string measures, string to) =>
        visitor.PostAsync(Path, [("__RequestVerificationToken", token), ("measures", measures), ("to", to)]);

    private async Task<Visitor> SignedInAsync()
    {
        var visitor = new Visitor((await site.AppAsync()).Address);
        await visitor.SignInAsync(SharedApp.Email, SharedApp.Password);
        return visitor;
    }
}
