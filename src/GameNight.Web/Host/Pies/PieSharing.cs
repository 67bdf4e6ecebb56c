using GameNight.Nights.ForHosts;
using GameNight.Nights.Membership;
using GameNight.Nights.Records;
using GameNight.Planning.Toppings;
using GameNight.Web.Drawings;
using GameNight.Web.Host.Print;
using GameNight.Web.Moving;
using GameNight.Web.Wording;
using GameNight.Web.Wording.Texts;
using NodaTime;

namespace GameNight.Web.Host.Pies;

/// <summary>The pies of a night as a picture to send to the guests. It names nobody.</summary>
internal static class PieSharing
{
    public static void MapPieSharing(this IEndpointRouteBuilder routes) => routes
        .MapGet("/g/{group:guid}/n/{night:guid}/pies.png", PictureAsync).RequireAuthorization().ExcludeFromDescription();

    private static async Task<IResult> PictureAsync(
        Guid group, Guid night, HttpContext context, GroupDesk groups, HostDesk desk, PlanDesk plans, KitchenDesk kitchens, IClock clock,
        CancellationToken cancellation)
    {
        if (await Entrance.OfAsync(context, groups, group, HostRole.Cook, cancellation) is not { } access
            || await desk.NightAsync(access, new NightId(night), cancellation) is not { } view
            || await plans.PlanAsync(access, new NightId(night), cancellation) is not { Plan.Split: { Pies.Count: > 0 } split } plan)
        {
            return TypedResults.NotFound();
        }

        var menu = await kitchens.MenuAsync(access, cancellation);
        var names = new PieNames(split, plan.Items, plan.Named);
        var bare = menu.Where(item => item.Role == MenuRole.Base && item.GramsPerCm2 <= 0).Select(item => item.Id.ToString()).ToHashSet();
        var png = PiePicture.Png(Text(view.Facts, split, names, plan.SecondDough), names.Combinations, WhiteBases.Of(menu), bare);
        Download.Declare(context.Response, "image/png", $"pies-{view.Facts.Title}", clock.GetCurrentInstant(), "png");
        return TypedResults.Bytes(png, context.Response.ContentType);
    }

    /// <summary>Pies with the same on them stand together; an own pie or one of the second dough never with another kind.</summary>
    /// <param name="secondDough">What this house calls its second dough.</param>
    internal static PiePictureText Text(NightFacts night, ToppingSplit split, PieNames names, string? secondDough = null) => new(
        night.Title,
        QuantityText.DayAndTime(night.ServeAt),
        [
            .. split.Pies
                .GroupBy(pie => (pie.IsOwnPie, pie.IsOnSecondDough, string.Join('|', pie.Sectors.Select(sector => $"{sector.Letter}{sector.Slices}"))))
                .Select(same => (same.First(), PieNames.Numbers([.. same.Select(pie => pie.Number)]), Note(same.First(), secondDough))),
        ],
        [.. split.Combinations.Select(combination => (combination.Letter, names.Of(combination)))],
        [PrintPages.AskFirst, PrintPages.OneKitchen, .. split.Pies.Any(pie => pie.IsOnSecondDough) ? [Cautions.KitchenUsesWheat] : Array.Empty<string>()]);

    private static string? Note(PieOrder pie, string? secondDough) =>
        pie.IsOwnPie ? PiesByHand.KeptApart
        : pie.IsOnSecondDough ? Phrase.Fill(OtherDough.OnPieShort, SecondDoughText.Name(secondDough))
        : null;
}
