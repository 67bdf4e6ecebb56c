using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using GameNight.Nights.ForGuests;
using GameNight.Nights.Links;
using GameNight.Web.Startup;
using Microsoft.Net.Http.Headers;
using NodaTime;

namespace GameNight.Web.Guests;

/// <summary>A guest's own calendar, which programs fetch again and again: what did not change is not sent again.</summary>
internal static class FeedEndpoints
{
    /// <summary>Raised when the same nights are written in another way.</summary>
    private const int Writing = 1;

    public static void MapFeeds(this IEndpointRouteBuilder routes) =>
        routes.MapGet($"{SecretPaths.Feed}/{{token}}/nights.ics", ReadAsync).ExcludeFromDescription()
            .AddEndpointFilter(routes.ServiceProvider.GetRequiredService<UnknownLinks>());

    public static string PathOf(LinkToken feed) => $"{SecretPaths.Feed}/{feed.Text}/nights.ics";

    private static async Task<IResult> ReadAsync(
        string token, HttpContext context, ContactBook book, IClock clock, CancellationToken cancellation)
    {
        if (await book.FeedAsync(LinkToken.TryParse(token), cancellation) is not { } feed)
        {
            return GuestEndpoints.NotValid(false);
        }

        // Of the nights and not of the file, which says when it was written.
        var tag = new EntityTagHeaderValue($"\"{TagOf(feed)}\"");
        return TypedResults.Bytes(
            Encoding.UTF8.GetBytes(NightCalendar.WriteFeed(feed, clock.GetCurrentInstant())),
            $"{NightCalendar.MediaType}; charset=utf-8; method=PUBLISH",
            "nights.ics",
            entityTag: tag);
    }

    private static string TagOf(FeedView feed) => Convert.ToHexStringLower(SHA256.HashData(
        JsonSerializer.SerializeToUtf8Bytes(new
        {
            Writing,
            feed.GroupName,
            Nights = NightCalendar.InFeed(feed).Select(night => night.ToString()),
        }))[..16]);
}
