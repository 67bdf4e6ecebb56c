using GameNight.Nights.Membership;
using GameNight.Nights.Records;
using GameNight.Web.SignIn;

namespace GameNight.Web.Moving;

/// <summary>Who may come in here.</summary>
internal static class Entrance
{
    /// <returns>Null when the group is not there, or not for this host with that right: no difference is told.</returns>
    public static async Task<GroupAccess?> OfAsync(
        HttpContext context, GroupDesk groups, Guid group, HostRole right, CancellationToken cancellation) =>
        context.User.HostIdOf() is { } host
            && await groups.EnterAsync(host, new GroupId(group), cancellation) is { } access
            && access.Allows(right)
            ? access
            : null;
}
