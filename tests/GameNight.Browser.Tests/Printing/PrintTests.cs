using GameNight.Planning.Guests;
using GameNight.Web.Wording;
using Microsoft.Playwright;
using UglyToad.PdfPig;
using UglyToad.PdfPig.Content;
using static Microsoft.Playwright.Assertions;

namespace GameNight.Browser.Tests.Printing;

/// <summary>The sheets as the browser itself prints them, read back from its PDF and looked at as pictures.</summary>
public class PrintTests(Site site, PrintedNights nights) : IClassFixture<PrintedNights>
{
    private const double PointsPerMillimetre = 72 / 25.4;

    /// <summary>Home printers leave about this much of a page white.</summary>
    private const double EdgeMillimetres = 8;

    private static readonly Dictionary<string, (double Width, double Height)> Papers = new()
    {
        ["A4"] = (210, 297),
        ["Letter"] = (215.9, 279.4),
    };

    public static MatrixTheoryData<string, bool> EveryPaperAndNight => new(["A4", "Letter"], [false, true]);

    [Theory]
    [MemberData(nameof(EveryPaperAndNight))]
    public async Task Nothing_is_cut_off_on_either_paper_and_every_page_says_what_it_belongs_to(string format, bool isLong)
    {
        using var paper = PdfDocument.Open(await PdfAsync(isLong, format));

        var (width, height) = Papers[format];
        Assert.All(paper.GetPages(), page =>
        {
            Assert.Equal(width * PointsPerMillimetre, page.Width, 1.0);
            Assert.Equal(height * PointsPerMillimetre, page.Height, 1.0);
            Assert.All(page.Letters.Where(letter => !string.IsNullOrWhiteSpace(letter.Value)), letter => AssertOnPaper(page, letter));
            var text = TextOf(page);
            Assert.Contains(isLong ? PrintedNights.LongTitle : "Board games", text, StringComparison.Ordinal);
            Assert.Contains("Plan of ", text, StringComparison.Ordinal);
            Assert.Contains($"{page.Number} / {paper.NumberOfPages}", text, StringComparison.Ordinal);
            Assert.DoesNotMatch("All nights|Choose other sheets|browser's own menu", text);
        });
    }

    [Theory]
    [InlineData("A4", false, ColorScheme.Light)]
    [InlineData("A4", true, ColorScheme.Dark)]
    [InlineData("Letter", false, ColorScheme.Dark)]
    [InlineData("Letter", true, ColorScheme.Light)]
    public async Task Pages_are_black_on_white_have_something_on_them_and_keep_their_margins(string format, bool isLong, ColorScheme light)
    {
        var pdf = await nights.PdfAsync(site.Chromium, isLong, format, light);

        var pages = await PagePicture.OfAsync(pdf, $"{(isLong ? "long" : "usual")}-{format}".ToLowerInvariant());

        Assert.NotEmpty(pages);
        Assert.All(pages, page =>
        {
            Assert.InRange(page.StrongestColour(), 0, 8);
            Assert.InRange(page.Ink(), 0.003, 0.3);
            Assert.False(page.HasInkWithin(EdgeMillimetres));
        });
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task The_table_sheet_names_every_allergen_and_nobody(bool isLong)
    {
        using var paper = PdfDocument.Open(await PdfAsync(isLong, "A4", "table"));

        var text = TextOf(paper);
        Assert.Contains("What is on the pies", text, StringComparison.Ordinal);
        Assert.All(Enum.GetValues<Allergen>(), allergen => Assert.Contains(WordText.Say(allergen), text, StringComparison.Ordinal));
        Assert.Contains("Contains cereals with gluten", text, StringComparison.Ordinal);
        Assert.DoesNotMatch($"Person\\d|{PrintedNights.FamilyName}|{PrintedNights.HostName}|Rui|Eva|Luis", text);
        Assert.DoesNotMatch("(?i)\\bsafe(ly)?\\b|free[ -](from|of)|guarantee", text);
    }

    [Fact]
    public async Task What_a_pie_contains_is_what_the_labels_say_of_what_is_on_it()
    {
        await using var screen = await nights.OpenAsync(site.Chromium, isLong: true, "table");

        var rows = await screen.Page.Locator(".paper-served").AllAsync();
        Assert.True(rows.Count > 2, "Too little on the table to compare.");
        foreach (var row in rows)
        {
            var (onIt, contains) = (await row.Locator(".paper-sectors").InnerTextAsync(), await row.Locator(".contains dd").InnerTextAsync());
            Assert.Equal(
                onIt.Contains("Cheese blend", StringComparison.Ordinal) || onIt.Contains("Pesto", StringComparison.Ordinal) || onIt.Contains("Cream base", StringComparison.Ordinal),
                contains.Contains("milk", StringComparison.Ordinal));
            Assert.Equal(onIt.Contains("Anchovies", StringComparison.Ordinal), contains.Contains("fish", StringComparison.Ordinal));
            Assert.Equal(onIt.Contains("Pesto", StringComparison.Ordinal), contains.Contains("nuts", StringComparison.Ordinal));
        }
    }

    [Fact]
    public async Task The_cards_say_whose_own_pie_it_is_and_every_pie_has_one_that_is_not_torn()
    {
        await using var screen = await nights.OpenAsync(site.Chromium, isLong: true, "cards");
        var pies = await screen.Page.Locator(".paper-card").CountAsync();
        using var paper = PdfDocument.Open(await screen.Page.PdfAsync(new() { Format = "Letter" }));

        Assert.True(pies >= 25, $"Only {pies} pies for 60 guests.");
        Assert.Contains("Own pie for Person01", TextOf(paper), StringComparison.Ordinal);
        Assert.Contains("Must not touch fish.", TextOf(paper), StringComparison.Ordinal);
        foreach (var number in Enumerable.Range(1, pies))
        {
            var card = screen.Page.Locator($"article[aria-labelledby=card{number}]");
            var words = (await card.InnerTextAsync()).Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries);
            Assert.Single(paper.GetPages(), page => Regex(page, $"Pie {number}(?!\\d)"));
            var home = paper.GetPages().Single(page => Regex(page, $"Pie {number}(?!\\d)"));
            Assert.All(words, word => Assert.Contains(word, TextOf(home), StringComparison.Ordinal));
        }

        static bool Regex(Page page, string pattern) => page.GetWords().Zip(page.GetWords().Skip(1))
            .Any(both => System.Text.RegularExpressions.Regex.IsMatch($"{both.First.Text} {both.Second.Text}", $"^{pattern}$"));
    }

    [Fact]
    public async Task The_address_says_which_sheets_are_printed()
    {
        using var paper = PdfDocument.Open(await PdfAsync(isLong: false, "A4", "shopping", "timeline"));

        var text = TextOf(paper);
        Assert.Contains("Prices are not included", text, StringComparison.Ordinal);
        Assert.Contains("At the oven", text, StringComparison.Ordinal);
        Assert.DoesNotMatch("The plan(?! takes)|Pie cards|What is on the pies", text);
    }

    [Fact]
    public async Task The_choice_and_the_print_button_work_and_the_dialog_holds_nothing_up()
    {
        await using var screen = await nights.OpenAsync(site.Chromium, isLong: false);
        await screen.Page.GetByRole(AriaRole.Link, new() { Name = "Choose other sheets" }).ClickAsync();
        await Expect(screen.Page.Locator(".printchoice")).ToBeVisibleAsync();
        foreach (var sheet in new[] { "The plan", "Pie cards", "Table sheet" })
        {
            await screen.Field(sheet).UncheckAsync();
        }

        await screen.Button("Show the sheets").ClickAsync();
        await Expect(screen.Page.Locator(".paper")).ToHaveCountAsync(2);
        await screen.LiveAsync();
        Assert.EndsWith("/print/sheets?sheet=shopping&sheet=timeline", screen.Page.Url, StringComparison.Ordinal);

        await screen.Page.EvaluateAsync("() => { window.printed = 0; window.print = () => window.printed++; }");
        await screen.Button("Print").ClickAsync();

        await screen.Page.WaitForFunctionAsync("() => window.printed === 1");
        Assert.Empty(screen.Faults);
    }

    private Task<byte[]> PdfAsync(bool isLong, string format, params IReadOnlyList<string> sheets) =>
        nights.PdfAsync(site.Chromium, isLong, format, ColorScheme.Light, sheets);

    private static void AssertOnPaper(Page page, Letter letter)
    {
        var (edge, box) = (EdgeMillimetres * PointsPerMillimetre, letter.BoundingBox);
        Assert.True(
            box.Left >= edge && box.Right <= page.Width - edge && box.Bottom >= edge && box.Top <= page.Height - edge,
            $"“{letter.Value}” on page {page.Number} is outside the page: {box}.");
    }

    private static string TextOf(PdfDocument paper) => string.Join(' ', paper.GetPages().Select(TextOf));

    private static string TextOf(Page page) => string.Join(' ', page.GetWords().Select(word => word.Text));
}
