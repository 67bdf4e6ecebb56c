using Microsoft.Playwright;

namespace GameNight.Browser.Tests;

/// <summary>The first account, made as a host does it.</summary>
internal static class FirstAccount
{
    public const string Email = "ines@example.org";
    public const string Password = "pizza on every thursday";

    /// <returns>The group that was founded.</returns>
    public static async Task<Guid> MakeAsync(Screen screen, string code)
    {
        await screen.GoAsync("/first");
        foreach (var (label, text) in new[]
        {
            ("Code", code), ("Your name, as the group knows it", "Ines"), ("E-mail", Email), ("Password", Password),
            ("Name of the group", "Thursday table"), ("Time zone", "Europe/Lisbon"),
        })
        {
            await screen.Page.GetByLabel(label, new PageGetByLabelOptions { Exact = true }).FillAsync(text);
        }

        await screen.Page.GetByRole(AriaRole.Button, new() { Name = "Found the group" }).ClickAsync();
        await screen.LiveAsync();
        return Guid.Parse(new Uri(screen.Page.Url).Segments[^1]);
    }
}
