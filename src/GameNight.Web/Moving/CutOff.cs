using GameNight.Nights.Records;

namespace GameNight.Web.Moving;

internal static partial class CutOff
{
    [LoggerMessage(LogLevel.Warning, "The export of group {Group} was cut off; the host was shown an incomplete download.")]
    public static partial void Say(ILogger log, GroupId group, Exception fault);
}
