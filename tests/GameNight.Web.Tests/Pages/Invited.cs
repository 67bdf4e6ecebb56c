using GameNight.Nights.ForHosts;
using GameNight.Nights.Records;
using GameNight.TestKit.Running;

namespace GameNight.Web.Tests.Pages;

/// <summary>A guest with a private link, and the night it is for.</summary>
public sealed record Invited(RunningApp App, HostAtWork Host, NightId Night, GuestId Guest, string Link)
{
    public Task<AnswerPage> OpenAsync() => AnswerPage.OpenAsync(App.Client, Link, TestContext.Current.CancellationToken);

    /// <summary>What the host sees of this guest.</summary>
    public async Task<InvitedGuest> SeenByHostAsync()
    {
        var night = await Host.NightAsync(Night, TestContext.Current.CancellationToken);
        return night.Guests.Single(guest => guest.Id == Guest);
    }
}
