namespace GameNight.Web.Wording;

/// <summary>What the sheet on the table says to everybody. It names no person and promises nothing.</summary>
public static class TableText
{
    public const string AskFirst =
        "Allergy, or anything you must not have? Ask the host before the first bite, and look at the pack yourself. In doubt leave it, and follow your doctor. In an emergency call the local emergency number.";

    public const string OneKitchen =
        "All pies come from one home kitchen: one oven, one bench, flour dust everywhere. Traces of anything used tonight can be on any pie.";

    public const string WhatTheWordsMean =
        "“Contains”, “may contain” and “unknown” are three things. Unknown means that nobody has read it on a label: it may well be in there. Not named means only that no label that was read names it; it is no promise.";

    public const string Source =
        "The fourteen allergens of Regulation (EU) No 1169/2011, Annex II, as far as the labels say.";

    public const string KeptApart = "Kept apart, on its own board: ask the host before you take from it.";
}
