using System.Text.RegularExpressions;
using GameNight.TestKit.Running;
using NodaTime;
using NodaTime.Text;
using static Microsoft.Playwright.Assertions;

namespace GameNight.Browser.Tests;

public class DateTests(Site site)
{
    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Fact]
    public async Task From_a_rhythm_to_a_question_to_answers_to_a_night_that_everybody_is_told_of()
    {
        await site.Chromium.BrowserAsync();
        await using var app = await RunningApp.StartAsync(Cancellation);
        await using var host = await Screen.OpenAsync(site.Chromium, app.Address, Screen.Desk);
        var group = await FirstAccount.MakeAsync(host, app.FirstAccountCode);
        await using var work = await HostAtWork.EnterAsync(app, group, Cancellation);
        foreach (var name in new[] { "Rui", "Eva", "Ines" })
        {
            await work.KnowAsync(name, Cancellation);
        }

        await MeetAsync(host, group);
        await AskAsync(host, group);
        await host.SeesAsync("0 of 3 have answered");
        await AnswerAsync(app, await LinkAsync(host, "Rui"), "Rui", "works", "no");
        await host.SeesAsync("1 of 3 have answered");
        await AnswerAsync(app, await LinkAsync(host, "Eva"), "Eva", "works", "at a pinch");
        await host.SeesAsync("2 of 3 have answered");
        await host.SeesAsync("Works for 2, at a pinch for 0, no for 0; 1 said nothing.");
        await host.OpenEverythingAsync();
        await host.CheckLooksAsync("question");
        await host.Page.SetViewportSizeAsync(Screen.Desk, 844);
        var link = await LinkAsync(host, "Rui");

        await host.Page.Locator(".evenings > li").First.GetByRole(Microsoft.Playwright.AriaRole.Button, new() { NameRegex = new("^Choose") }).ClickAsync();
        await host.SeesAsync("All 3 who were asked are invited and told once; nobody is answered for.");
        await host.Button("Make the night").ClickAsync();
        await host.SeesAsync("Everybody who was asked is invited: by mail where there is an address");
        await host.Page.GetByText("To the night", new() { Exact = true }).ClickAsync();
        await host.Page.GetByRole(Microsoft.Playwright.AriaRole.Link, new() { Name = "Messages" }).ClickAsync();
        await Expect(host.Page.Locator("textarea")).ToHaveCountAsync(3);
        await Expect(host.Page.Locator("textarea").First).ToHaveValueAsync(new Regex("asked which evening, and this is the one"));

        await using var guest = await Screen.OpenAsync(site.Chromium, app.Address, Screen.Phone, withScript: false);
        await guest.GoAsync(link);
        await guest.Page.GetByText("To your invitation").ClickAsync();
        await guest.SeesAsync("It is chosen below; it counts when you send it.");
        await Expect(guest.Page.Locator("input[value=Coming]")).ToBeCheckedAsync();
        Assert.Empty(host.Faults);
        Assert.Empty(guest.Faults);
    }

    [Fact]
    public async Task Pages_of_dates_and_rhythm_look_right()
    {
        var night = await site.NightAsync("Rui", "Eva");
        var work = await site.HostAsync();
        var question = await work.AskForDateAsync([.. night.Guests.Values], Cancellation);
        await using var host = await site.HostScreenAsync();
        await using var guest = await site.GuestScreenAsync();

        foreach (var (name, path) in PageList.OfQuestions(await site.GroupPathAsync(), question.ToString()))
        {
            await host.GoLiveAsync(path);
            await Expect(host.Page.Locator(".evenings, form").First).ToBeVisibleAsync();
            await host.OpenEverythingAsync();
            await host.CheckLooksAsync(name);
        }

        await host.GoLiveAsync($"{await site.GroupPathAsync()}/rhythm");
        await host.Button("One more day").ClickAsync();
        await host.CheckLooksAsync("rhythm");
        await guest.GoAsync($"{await work.DateLinkAsync(question, night.Guests["Rui"], Cancellation)}?zone=Asia/Tokyo");
        await guest.OpenEverythingAsync();
        await guest.CheckLooksAsync("dates");
        Assert.Empty(host.Faults);
        Assert.Empty(guest.Faults);
    }

    [Fact]
    public async Task A_guest_elsewhere_reads_their_own_time_by_itself_or_when_they_ask_for_it()
    {
        var night = await site.NightAsync("Rui");
        var work = await site.HostAsync();
        var link = await work.DateLinkAsync(await work.AskForDateAsync([.. night.Guests.Values], Cancellation), night.Guests["Rui"], Cancellation);
        await using var plain = await site.GuestScreenAsync(withScript: false);

        await plain.GoAsync(link);
        Assert.DoesNotContain("Asia/Tokyo", await plain.Page.InnerTextAsync("form[data-answer]"), StringComparison.Ordinal);
        await plain.Page.GetByText("I am in another time zone").ClickAsync();
        await plain.Field("Your time zone, such as Europe/Lisbon").FillAsync("Asia/Tokyo");
        await plain.Button("Show my own time too").ClickAsync();
        await plain.SeesAsync("in Asia/Tokyo");
        await plain.Page.Locator("label.choice", new() { HasText = "at a pinch" }).First.ClickAsync();
        await plain.Button("Send my answer").ClickAsync();
        await plain.SeesAsync("What you said is kept.");
        await plain.SeesAsync("in Asia/Tokyo");

        await plain.GoAsync($"{link}?zone=Nowhere");
        await plain.SeesAsync("The time zone Nowhere is not known.");
        Assert.Empty(plain.Faults);
    }

    /// <summary>The last Saturday of each month, from two weeks on.</summary>
    private static async Task MeetAsync(Screen host, Guid group)
    {
        await host.GoLiveAsync($"/g/{group}/rhythm");
        await host.Field("How often").SelectOptionAsync("m-1");
        await host.Field("Day of the week").SelectOptionAsync("6");
        await host.Field("Not before").FillAsync(LocalDatePattern.Iso.Format(SystemClock.Instance.GetCurrentInstant().InUtc().Date.PlusDays(14)));
        await host.Button("Save the rhythm").ClickAsync();
        await host.SeesAsync("The rhythm is saved.");
        await Expect(host.Page.Locator("li.rowline")).ToHaveCountAsync(6);
        var second = await host.Page.Locator("li.rowline strong").Nth(1).InnerTextAsync();
        await host.Page.Locator("li.rowline").First.GetByText("Skip it").ClickAsync();
        await Expect(host.Page.Locator("li.rowline strong").First).ToHaveTextAsync(second);
        await host.GoLiveAsync($"/g/{group}/new");
        await Expect(host.Field("First pie on the table")).ToHaveValueAsync("19:30");
        Assert.Equal(IsoDayOfWeek.Saturday, LocalDatePattern.Iso.Parse(await host.Field("Date").InputValueAsync()).Value.DayOfWeek);
    }

    /// <summary>Two evenings, after the same one twice was refused and nothing typed was lost.</summary>
    private static async Task AskAsync(Screen host, Guid group)
    {
        await host.GoLiveAsync($"/g/{group}/dates/new");
        await host.SeesAsync("The first evenings are the next ones of your rhythm.");
        await host.Field("What it is called").FillAsync("Winter table");
        await host.Button("Take out evening 3").ClickAsync();
        var second = await host.Field("Evening 2, date").InputValueAsync();
        await host.Field("Evening 2, date").FillAsync(await host.Field("Evening 1, date").InputValueAsync());
        await host.Button("Ask them").ClickAsync();
        await host.SeesAsync("This evening stands above already.");
        await Expect(host.Field("What it is called")).ToHaveValueAsync("Winter table");
        await host.Field("Evening 2, date").FillAsync(second);
        await host.Button("Ask them").ClickAsync();
        await Expect(host.Page.Locator(".evenings > li")).ToHaveCountAsync(2);
    }

    private static async Task<string> LinkAsync(Screen host, string name)
    {
        await host.Button($"Link of {name}").ClickAsync();
        var link = await host.Page.Locator("#link").InputValueAsync();
        await host.Button("Close").ClickAsync();
        await Expect(host.Page.Locator("#link")).ToHaveCountAsync(0);
        return new Uri(link).AbsolutePath;
    }

    private async Task AnswerAsync(RunningApp app, string link, string name, params IReadOnlyList<string> answers)
    {
        await using var guest = await Screen.OpenAsync(site.Chromium, app.Address, Screen.Phone, withScript: false);
        await guest.GoAsync(link);
        await guest.SeesAsync($"Answering as {name}.");
        await guest.Button("Send my answer").ClickAsync();
        await guest.SeesAsync("Say of at least one evening whether it works for you");
        for (var evening = 0; evening < answers.Count; evening++)
        {
            await guest.Page.Locator("fieldset.ask").Nth(evening).Locator("label.choice", new() { HasText = answers[evening] }).ClickAsync();
        }

        await guest.Button("Send my answer").ClickAsync();
        await guest.SeesAsync($"Thank you, {name}. What you said is kept.");
        Assert.DoesNotContain(guest.Faults, fault => !fault.Contains("400", StringComparison.Ordinal));
    }
}
