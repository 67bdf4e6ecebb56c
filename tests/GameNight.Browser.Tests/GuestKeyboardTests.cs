using GameNight.Nights.Records;
using GameNight.Planning.Guests;

namespace GameNight.Browser.Tests;

public class GuestKeyboardTests(Site site)
{
    [Fact]
    public async Task An_answer_can_be_given_without_a_pointer()
    {
        var night = await site.NightAsync("Rui");
        await using var guest = await site.GuestScreenAsync();
        await guest.GoAsync(await night.LinkAsync("Rui"));

        await guest.TabToAsync("input[name=presence]");
        await guest.Page.Keyboard.PressAsync("Space");
        await guest.TabToAsync("input[name=hunger]");
        await guest.Page.Keyboard.PressAsync("ArrowDown");
        await OpenAsync(guest, "Bringing");
        await guest.TabToAsync("#companion1");
        await guest.Page.Keyboard.TypeAsync("teen");
        await OpenAsync(guest, "What I must not eat");
        await guest.TabToAsync("input[name=consent]");
        await guest.Page.Keyboard.PressAsync("Space");
        await guest.TabToAsync("input[name=diet0-Vegan]");
        await guest.Page.Keyboard.PressAsync("Space");
        await guest.TabToAsync("#note");
        await guest.Page.Keyboard.TypeAsync("typed");
        await guest.TabToAsync("button.send");
        await guest.Page.Keyboard.PressAsync("Enter");

        await guest.SeesAsync("Thank you, Rui. Your answer is kept.");
        var seen = (await night.Host.NightAsync(night.Id, TestContext.Current.CancellationToken)).Guests.Single(row => !row.IsHost);
        Assert.Equal((Presence.Coming, Hunger.More), (seen.Answer!.Presence, seen.Answer.Hunger));
        Assert.Equal(PortionClass.Teen, Assert.Single(seen.Answer.Companions).Portion);
        Assert.Equal([Diet.Vegan], seen.Needs[0].Diets);
        Assert.Equal("typed", seen.Note);
        Assert.Empty(guest.Faults);
    }

    private static async Task OpenAsync(Screen guest, string summary)
    {
        for (var stops = 0; stops < 60; stops++)
        {
            if (await guest.Page.EvaluateAsync<bool>(
                "text => document.activeElement?.matches('summary') && document.activeElement.textContent.startsWith(text)", summary))
            {
                await guest.Page.Keyboard.PressAsync("Enter");
                return;
            }

            await guest.Page.Keyboard.PressAsync("Tab");
        }

        Assert.Fail($"“{summary}” cannot be reached with Tab.");
    }
}
