using System.Net;

namespace GameNight.Web.Tests.Pages;

public class SignInTests(SharedApp site)
{
    [Fact]
    public async Task The_right_password_opens_the_page_that_was_asked_for()
    {
        using var visitor = await VisitorAsync();

        var answer = await visitor.SignInAsync(SharedApp.Email, SharedApp.Password, "/g/somewhere?tab=2");

        Assert.Equal(HttpStatusCode.Found, answer.StatusCode);
        Assert.Equal("/g/somewhere?tab=2", answer.Headers.Location!.ToString());
        Assert.Contains(answer.Headers.GetValues("Set-Cookie"), cookie =>
            cookie.StartsWith("gn-host=", StringComparison.Ordinal)
            && cookie.Contains("httponly", StringComparison.OrdinalIgnoreCase)
            && cookie.Contains("samesite=lax", StringComparison.OrdinalIgnoreCase));
    }

    [Theory]
    [InlineData(SharedApp.Email, "not the password at all")]
    [InlineData("nobody@example.org", SharedApp.Password)]
    public async Task A_wrong_password_and_an_unknown_address_get_the_same_answer(string email, string password)
    {
        using var visitor = await VisitorAsync();

        var answer = await visitor.SignInAsync(email, password);

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Contains("That e-mail and password do not belong together.", await answer.TextAsync(), StringComparison.Ordinal);
        Assert.Equal(email, (await answer.DocumentAsync()).QuerySelector("#email")!.GetAttribute("value"));
    }

    [Theory]
    [InlineData("https://elsewhere.example/")]
    [InlineData("//elsewhere.example/")]
    [InlineData("/\\elsewhere.example/")]
    [InlineData("\\\\elsewhere.example")]
    [InlineData("/\t/elsewhere.example")]
    [InlineData("javascript:alert(1)")]
    public async Task Signing_in_never_leads_to_another_site(string to)
    {
        using var visitor = await VisitorAsync();

        var answer = await visitor.SignInAsync(SharedApp.Email, SharedApp.Password, to);

        Assert.Equal("/", answer.Headers.Location!.ToString());
    }

    [Fact]
    public async Task A_form_without_its_token_is_refused_and_can_be_sent_again()
    {
        using var visitor = await VisitorAsync();
        (string, string)[] fields = [("email", SharedApp.Email), ("password", SharedApp.Password)];

        var refused = await visitor.PostAsync("/sign-in", fields);

        Assert.Equal(HttpStatusCode.BadRequest, refused.StatusCode);
        Assert.DoesNotContain("gn-host=", string.Join(';', SetCookies(refused)), StringComparison.Ordinal);
        Assert.Contains("open for too long", await refused.TextAsync(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_address_with_markup_comes_back_as_text()
    {
        using var visitor = await VisitorAsync();

        var answer = await visitor.SignInAsync("\"><img src=x onerror=alert(1)>", "does not matter");
        var page = await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);

        Assert.DoesNotContain("<img", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_host_page_is_closed_to_visitors_and_says_where_to_sign_in()
    {
        using var visitor = await VisitorAsync();

        var answer = await visitor.Client.GetAsync($"/g/{Guid.CreateVersion7()}", TestContext.Current.CancellationToken);

        Assert.Equal(HttpStatusCode.Found, answer.StatusCode);
        Assert.StartsWith("/sign-in?to=%2Fg%2F", answer.Headers.Location!.PathAndQuery, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Signing_out_ends_the_session()
    {
        using var visitor = await VisitorAsync();
        await visitor.SignInAsync(SharedApp.Email, SharedApp.Password);

        var answer = await visitor.SendAsync("/sign-out");
        var after = await visitor.Client.GetAsync("/", TestContext.Current.CancellationToken);

        Assert.Equal("/sign-in", answer.Headers.Location!.ToString());
        Assert.Equal(HttpStatusCode.Found, after.StatusCode);
    }

    private static IEnumerable<string> SetCookies(HttpResponseMessage answer) =>
        answer.Headers.TryGetValues("Set-Cookie", out var cookies) ? cookies : [];

    private async Task<Visitor> VisitorAsync() => new((await site.AppAsync()).Address);
}
