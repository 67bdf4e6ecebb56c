namespace GameNight.Browser.Tests;

/// <summary>Every page there is, for checks that look at all of them.</summary>
internal static class PageList
{
    public const string Confirm = "/confirm";

    /// <summary>Plain pages of a signed-in host.</summary>
    public static IReadOnlyList<(string Name, string Path)> OfAccounts { get; } =
    [
        ("account", "/account"),
        .. new[] { "mail", "password", "passkeys", "codes", "remove" }.Select(page => ($"account-{page}", $"/account/{page}")),
        ("confirm", Confirm),
        ("sign-out", "/sign-out"),
    ];

    /// <summary>Plain pages of a group.</summary>
    public static IReadOnlyList<(string Name, string Path)> OfOwners(string group) => [("moving", $"{group}/moving"), ("bring-in", "/bring-in")];

    /// <summary>Live pages of a group and of one of its nights.</summary>
    public static IReadOnlyList<(string Name, string Path)> OfHosts(string group, string night) =>
    [
        ("nights", group),
        .. new[] { "people", "kitchen", "doughs", "menu", "hosts", "new", "past", "rhythm", "dates/new" }.Select(page => (page.Replace('/', '-'), $"{group}/{page}")),
        ("house-sauce", $"{group}/sauce"),
        ("plan", night),
        .. new[] { "guests", "messages", "pies", "dough", "compare", "sauce", "oven", "timeline", "live", "change", "print", "print/sheets", "back" }.Select(page => (page.Replace('/', '-'), $"{night}/{page}")),
    ];

    /// <summary>Live pages of a question for a date.</summary>
    public static IReadOnlyList<(string Name, string Path)> OfQuestions(string group, string choice) =>
        [("question", $"{group}/dates/{choice}"), ("question-change", $"{group}/dates/{choice}/change")];

    /// <summary>Pages without sign-in: two answer links, one of them answered with must-nots.</summary>
    public static IReadOnlyList<(string Name, string Path)> OfEverybody(params IReadOnlyList<string> links) =>
    [
        ("sign-in", "/sign-in"),
        ("sign-in-code", "/sign-in/code"),
        ("link-not-valid", "/i/unknown"),
        ("not-there", "/no-such-page"),
        .. links.Select((link, number) => ($"answer-{number + 1}", link)),
        .. links.Select((link, number) => ($"calendar-and-messages-{number + 1}", $"{link}/messages")),
    ];
}
