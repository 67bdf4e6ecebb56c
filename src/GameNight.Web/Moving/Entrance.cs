using GameNight.Nights.Membership;
using GameNight.Nights.Records;
using GameNight.Web.SignIn;
using Microsoft.AspNetCore.Identity;

namespace GameNight.Web.Moving;

/// <summary>Who may come in here, and whether it is really them.</summary>
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

    /// <summary>
    /// A phone left on the table must neither take a whole group along nor delete it: the password is asked for once more.
    /// </summary>
    public static async Task<bool> IsThemAsync(
        HttpContext context, UserManager<HostAccount> accounts, SignInManager<HostAccount> signIn, string password) =>
        password.Length <= AccountRules.LongestPassword
            && await accounts.GetUserAsync(context.User) is { } account
            && (await signIn.CheckPasswordSignInAsync(account, password, lockoutOnFailure: true)).Succeeded;
}
