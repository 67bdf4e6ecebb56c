using GameNight.Nights.PastNights;

namespace GameNight.Web.Wording;

/// <summary>Says what to do about a field of what a host writes down after a night.</summary>
public static class LogProblemText
{
    public static string Say(LogProblem problem) => problem.Fault switch
    {
        LogFault.OutOfRange => $"Type a number from {QuantityText.Number(problem.Low)} to {QuantityText.Number(problem.High)}.",
        LogFault.TooLong => $"Too long: {QuantityText.Number(problem.High)} characters fit.",
        LogFault.LessThanItsPies => $"The single pies add up to {PastNightText.Slices(problem.Low)} already: correct one of the two.",
        LogFault.UnknownGuest => "This guest does not belong to the group any more. Load the page again.",
        LogFault.UnknownPie => "This pie is not in the plan any more. Load the page again.",
    };
}
