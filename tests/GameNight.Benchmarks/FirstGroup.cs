using System.Net;
using System.Text.RegularExpressions;
using GameNight.TestKit.Running;

/// <summary>The first account and its group, made as a browser without script makes them.</summary>
internal static partial class FirstGroup
{
    public static async Task<(Guid Group, IReadOnlyList<Cookie> Cookies)> FoundAsync(RunningApp app)
    {
        var jar = new CookieContainer();
        using var client = new HttpClient(new HttpClientHandler { AllowAutoRedirect = false, CookieContainer = jar }) { BaseAddress = app.Address };
        var page = await client.GetStringAsync("/first");
        var hidden = HiddenField().Matches(page).Select(field => KeyValuePair.Create(field.Groups[1].Value, WebUtility.HtmlDecode(field.Groups[2].Value)));
        var founded = await client.PostAsync("/first", new FormUrlEncodedContent([
            .. hidden, new("code", app.FirstAccountCode), new("name", "Ines"), new("email", "ines@example.org"),
            new("password", "pizza on every thursday"), new("group", "Thursday table"), new("zone", "Europe/Lisbon")]));
        return (Guid.Parse(founded.Headers.Location!.ToString()["/g/".Length..]), [.. jar.GetAllCookies().Cast<Cookie>()]);
    }

    [GeneratedRegex("<input type=\"hidden\" name=\"([^\"]+)\" value=\"([^\"]*)\"")]
    private static partial Regex HiddenField();
}
