using System.Net;
using AngleSharp.Html.Parser;
using GameNight.TestKit.Running;
using GameNight.Web.SignIn;
using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.AspNetCore.Identity;

namespace GameNight.Web.Tests.Pages;

/// <summary>A browser that keeps cookies, follows no redirects and fills in the forms of plain pages.</summary>
internal sealed class Visitor : IDisposable
{
    private const string TokenField = "__RequestVerificationToken";

    private readonly SocketsHttpHandler _handler = OwnAddress.Handler();
    private readonly HttpClient _client;

    public Visitor(Uri address)
    {
        _client = new HttpClient(_handler) { BaseAddress = address };
    }

    public HttpClient Client => _client;

    public async Task<string> TokenAsync(string path)
    {
        var page = await _client.GetStringAsync(path);
        return new HtmlParser().ParseDocument(page).QuerySelector($"input[name={TokenField}]")!.GetAttribute("value")!;
    }

    public async Task<HttpResponseMessage> SendAsync(string path, params IReadOnlyList<(string Name, string Value)> fields) =>
        await PostAsync(path, [(TokenField, await TokenAsync(path)), .. fields]);

    /// <summary>Of a page with several forms: the one that goes to <paramref name="to"/>.</summary>
    public async Task<HttpResponseMessage> SendAsync(string page, string to, params IReadOnlyList<(string Name, string Value)> fields) =>
        await PostAsync(to, [(TokenField, await TokenAsync(page)), .. fields]);

    public Task<HttpResponseMessage> PostAsync(string path, IReadOnlyList<(string Name, string Value)> fields) => _client.PostAsync(
        path, new FormUrlEncodedContent(fields.Select(field => KeyValuePair.Create(field.Name, field.Value))));

    /// <summary>As if the sign-in had last been proven a quarter of an hour ago.</summary>
    public void LeaveAlone(string dataFolder)
    {
        var keys = DataProtectionProvider.Create(
            new DirectoryInfo(Path.Combine(dataFolder, "keys")), keys => keys.SetApplicationName("gamenight"));
        var tickets = new TicketDataFormat(keys.CreateProtector(
            "Microsoft.AspNetCore.Authentication.Cookies.CookieAuthenticationMiddleware", IdentityConstants.ApplicationScheme, "v2"));
        var cookie = _handler.CookieContainer.GetCookies(_client.BaseAddress!)["gn-host"]!;
        var ticket = tickets.Unprotect(cookie.Value)!;
        HostSession.Prove(ticket.Properties, DateTimeOffset.UtcNow - TimeSpan.FromMinutes(15));
        cookie.Value = tickets.Protect(ticket);
    }

    public Task<HttpResponseMessage> FoundAsync(string code, string email, string password, string name = "Ines", string group = "Thursday table") => SendAsync(
        "/first",
        ("code", code), ("name", name), ("email", email), ("password", password), ("group", group), ("zone", "Europe/Lisbon"));

    public Task<HttpResponseMessage> SignInAsync(string email, string password, string to = "/") =>
        SendAsync("/sign-in", ("email", email), ("password", password), ("to", to));

    public void Dispose() => _client.Dispose();
}

/// <summary>What an answer says.</summary>
internal static class Answers
{
    public static async Task<string> TextAsync(this HttpResponseMessage answer) =>
        WebUtility.HtmlDecode(await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));

    /// <summary>Of a redirection to a group's page.</summary>
    public static Guid GroupId(this HttpResponseMessage founded) =>
        founded.Headers.Location?.ToString() is { } to && to.StartsWith("/g/", StringComparison.Ordinal)
            ? Guid.Parse(to["/g/".Length..])
            : throw new InvalidOperationException($"No group was founded: {founded}");

    public static async Task<AngleSharp.Html.Dom.IHtmlDocument> DocumentAsync(this HttpResponseMessage answer) =>
        new HtmlParser().ParseDocument(await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));
}
