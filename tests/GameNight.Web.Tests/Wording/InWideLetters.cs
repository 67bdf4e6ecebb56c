using System.Globalization;
using AngleSharp.Dom;
using Bunit;
using GameNight.WideLetters;
using Microsoft.AspNetCore.Components;

namespace GameNight.Web.Tests.Wording;

/// <summary>What is said is looked at in a language of wide letters, in which nothing plain may be left.</summary>
public abstract class InWideLetters : BunitContext
{
    private readonly CultureInfo _before = CultureInfo.CurrentUICulture;

    protected InWideLetters()
    {
        PseudoLanguage.Install();
        CultureInfo.CurrentUICulture = PseudoLanguage.Culture;
    }

    /// <summary>Names and the like, which people gave and nobody translates.</summary>
    protected abstract IReadOnlyList<string> Given { get; }

    protected override void Dispose(bool disposing)
    {
        CultureInfo.CurrentUICulture = _before;
        base.Dispose(disposing);
    }

    protected void AssertTranslated(string shown)
    {
        Assert.Contains('⟦', shown);
        Assert.Equal("", PseudoLanguage.Foreign(shown, Given));
    }

    /// <summary>What is shown or read out, one part a line: a name at the end of a part must not grow into the next.</summary>
    protected void AssertTranslated<TPart>(IRenderedComponent<TPart> part)
        where TPart : IComponent
    {
        var attributes = part.FindAll("[aria-label], [title], [alt], [placeholder]").SelectMany(element =>
            new[] { "aria-label", "title", "alt", "placeholder" }.Select(element.GetAttribute).OfType<string>());
        AssertTranslated(string.Join('\n', [.. part.Nodes.SelectMany(node => node.GetDescendants().OfType<IText>()).Select(text => text.Data), .. attributes]));
    }
}
