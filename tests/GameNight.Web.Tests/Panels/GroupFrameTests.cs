using Bunit;
using GameNight.Nights.Records;
using GameNight.Web.Host;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;
using NodaTime.Testing;

namespace GameNight.Web.Tests.Panels;

/// <summary>A link to a page that refuses the host would be a dead end.</summary>
public class GroupFrameTests : BunitContext
{
    public GroupFrameTests()
    {
        Services.AddSingleton<IClock>(new FakeClock(Instant.FromUtc(2026, 12, 10, 12, 0)));
    }

    [Theory]
    [InlineData(null, false)]
    [InlineData(HostRole.Cook, false)]
    [InlineData(HostRole.Organiser, true)]
    [InlineData(HostRole.Owner, true)]
    public void Only_who_may_organise_is_led_to_changing_a_night_and_to_moving(HostRole? right, bool isOffered)
    {
        var night = Links(right, "a-night");
        var group = Links(right, night: null);

        Assert.Equal(isOffered, night.Contains("Change"));
        Assert.Equal(isOffered, group.Contains("Moving"));
        Assert.Superset(new HashSet<string> { "Plan", "Guests", "Timeline", "Print", "All nights" }, night.ToHashSet());
        Assert.Superset(new HashSet<string> { "Nights", "People", "Kitchen", "Doughs", "Menu", "Hosts", "Account" }, group.ToHashSet());
    }

    private List<string> Links(HostRole? right, string? night) =>
    [
        .. Render<GroupFrame>(with => with
            .Add(frame => frame.Title, "Title").Add(frame => frame.Group, "a-group").Add(frame => frame.Night, night).Add(frame => frame.Right, right))
            .FindAll("nav a").Select(link => link.TextContent),
    ];
}
