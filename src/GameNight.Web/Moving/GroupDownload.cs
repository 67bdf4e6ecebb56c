using GameNight.Nights.Membership;
using GameNight.Nights.Moving;
using NodaTime;

namespace GameNight.Web.Moving;

/// <summary>
/// Sends a group's document while it is written. When something fails on the way the connection is cut: the browser says
/// that the download is incomplete, and never shows a shorter document as if it were the whole.
/// </summary>
internal sealed class GroupDownload(GroupExport export, GroupAccess access, IClock clock, Func<IResult> whenBusy, ILogger log) : IResult
{
    public async Task ExecuteAsync(HttpContext httpContext)
    {
        var response = httpContext.Response;
        try
        {
            var result = await export.WriteAsync(access, Open, httpContext.RequestAborted);
            if (result is ExportResult.Busy)
            {
                await whenBusy().ExecuteAsync(httpContext);
            }
        }
        catch (Exception fault) when (response.HasStarted)
        {
            CutOff.Say(log, access.GroupId, fault);
            httpContext.Abort();
        }

        Stream Open(string name)
        {
            Download.Declare(response, "application/json; charset=utf-8", name, clock.GetCurrentInstant(), "json");
            return response.Body;
        }
    }
}
