using System.Net;

namespace GameNight.Web.Tests.Pages;

/// <summary>What goes along with a person: their measures and their language.</summary>
public class PersonTests(SharedApp site)
{
    [Fact]
    public async Task Measures_that_were_chosen_go_along_with_the_sign_in_at_once()
    {
        using var visitor = new Visitor((await site.AppAsync()).Address);
        await visitor.SignInAsync(SharedApp.Email, SharedApp.Password);

        // The account is everybody's here: it is left as it was found.
        var changed = await visitor.SendAsync("/account", ("name", "Ines"), ("measures", "UsCustomary"));
        var back = await visitor.SendAsync("/account", ("name", "Ines"), ("measures", "Metric"));

        Assert.All([changed, back], answer => Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode));
        Assert.All([changed, back], answer => Assert.Contains(
            answer.Headers.GetValues("Set-Cookie"), cookie => cookie.StartsWith("gn-host=", StringComparison.Ordinal)));
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
}
