using System.Net;
using AngleSharp.Dom;
using AngleSharp.Html.Parser;
using Microsoft.AspNetCore.Razor.Language;
using Microsoft.AspNetCore.Razor.Language.Intermediate;

namespace GameNight.Web.Tests.Wording;

/// <summary>No page says a word by its markup: what stands there is translated with no file of texts.</summary>
public class MarkupTests
{
    private static readonly string[] Said =
        ["aria-label", "title", "alt", "placeholder", "data-text", "label", "Title", "Above", "Label", "Caption", "Sentence", "Preview", "Unit", "Button"];

    /// <summary>What is the same in every language.</summary>
    private static readonly HashSet<string> Names = ["GameNight"];

    private static readonly RazorProjectEngine Engine = RazorProjectEngine.Create(
        RazorConfiguration.Default, RazorProjectFileSystem.Create(TextFile.Web));

    public static TheoryData<string> Pages =>
    [
        .. Directory.GetFiles(TextFile.Web, "*.razor", SearchOption.AllDirectories)
            .Select(path => Path.GetRelativePath(TextFile.Web, path))
            .Where(path => !path.StartsWith("obj", StringComparison.Ordinal)),
    ];

    [Theory]
    [MemberData(nameof(Pages))]
    public void Markup_holds_no_words(string page) => Assert.Equal("", string.Join('|', WordsOf(
        Engine.FileSystem.GetItem("/" + page.Replace(Path.DirectorySeparatorChar, '/'), FileKinds.Component))));

    [Theory]
    [InlineData("<p>Plain words</p>", "Plain words")]
    [InlineData("<p>@Count plain</p>", "plain")]
    [InlineData("<p class=\"soft\" id=\"x\">@Texts.Said &ndash; 12&nbsp;%</p>", "")]
    [InlineData("<img alt=\"A pie\" src=\"pie.png\" />", "A pie")]
    [InlineData("<PlainDocument Title=\"Sign in\"><p>@Said</p></PlainDocument>", "Sign in")]
    [InlineData("<button aria-label=\"@(Is ? Texts.Yes : Texts.No)\" type=\"button\">×</button>", "")]
    [InlineData("@if (Is)\n{\n    <b>Is</b>\n}\nelse\n{\n    <text>is not</text>\n}", "Is|is not")]
    [InlineData("<a href=\"/\">GameNight</a>@code {\n    private string Word => \"word\";\n}", "")]
    public void Words_in_markup_are_found(string markup, string found) =>
        Assert.Equal(found, string.Join('|', WordsOf(new Written(markup))));

    private static IEnumerable<string> WordsOf(RazorProjectItem page)
    {
        var said = new List<string>();
        Collect(Engine.Process(page).GetDocumentIntermediateNode(), said);
        return said.Select(text => text.Trim())
            .Where(text => text.Any(char.IsLetter) && !Names.Contains(text) && !text.StartsWith("<!DOCTYPE", StringComparison.Ordinal));
    }

    private static void Collect(IntermediateNode node, List<string> said)
    {
        switch (node)
        {
            case MarkupBlockIntermediateNode block:
                var body = new HtmlParser().ParseFragment(block.Content, new HtmlParser().ParseDocument("").Body!);
                said.AddRange(body.SelectMany(part => part.DescendantsAndSelf()).SelectMany(SaidBy));
                return;
            case HtmlContentIntermediateNode content:
                said.Add(WebUtility.HtmlDecode(Literal(content)));
                return;
            case HtmlAttributeIntermediateNode attribute when Said.Contains(attribute.AttributeName):
                said.Add(string.Join(' ', attribute.Children.OfType<HtmlAttributeValueIntermediateNode>().Select(Literal)));
                return;
            case HtmlAttributeIntermediateNode:
                return;
        }

        foreach (var child in node.Children)
        {
            Collect(child, said);
        }
    }

    private static IEnumerable<string> SaidBy(INode node) => node switch
    {
        IText text => [text.Data],
        IElement element => Said.Select(element.GetAttribute).OfType<string>(),
        _ => [],
    };

    private static string Literal(IntermediateNode node) =>
        string.Concat(node.Children.OfType<IntermediateToken>().Where(token => token.IsHtml).Select(token => token.Content));

    private sealed class Written(string markup) : RazorProjectItem
    {
        public override string BasePath => "/";

        public override string FilePath => "/Written.razor";

        public override string PhysicalPath => "/Written.razor";

        public override string FileKind => FileKinds.Component;

        public override bool Exists => true;

        public override Stream Read() => new MemoryStream(System.Text.Encoding.UTF8.GetBytes(markup));
    }
}
