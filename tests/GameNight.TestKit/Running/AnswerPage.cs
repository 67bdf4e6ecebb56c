using System.Net;
using System.Text.RegularExpressions;

namespace GameNight.TestKit.Running;

/// <summary>A guest's answer page as a browser without script sees it: the form that it shows, and sending it.</summary>
public sealed partial class AnswerPage
{
    private readonly HttpClient _client;

    private AnswerPage(HttpClient client, string link, string html)
    {
        _client = client;
        Link = link;
        Html = html;
        Key = Hidden("key");
        Revision = Hidden("revision");
    }

    public string Link { get; }

    public string Html { get; }

    public string Key { get; }

    public string Revision { get; }

    public static async Task<AnswerPage> OpenAsync(HttpClient client, string link, CancellationToken cancellation) =>
        new(client, link, await client.GetStringAsync(link, cancellation));

    /// <summary>Sends the form of this page with these fields on top of its hidden ones.</summary>
    public Task<HttpResponseMessage> SendAsync(CancellationToken cancellation, params IReadOnlyList<(string Name, string Value)> fields) =>
        _client.PostAsync(
            Link,
            new FormUrlEncodedContent([
                new("key", Key), new("revision", Revision),
                .. fields.Select(field => KeyValuePair.Create(field.Name, field.Value))]),
            cancellation);

    private string Hidden(string name)
    {
        var field = HiddenField().Matches(Html).FirstOrDefault(match => match.Groups[1].Value == name);
        return WebUtility.HtmlDecode(field?.Groups[2].Value
            ?? throw new InvalidOperationException($"The page has no field {name}:\n{Html}"));
    }

    [GeneratedRegex("<input type=\"hidden\" name=\"([^\"]+)\" value=\"([^\"]*)\"")]
    private static partial Regex HiddenField();
}
