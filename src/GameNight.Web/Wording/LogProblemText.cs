using GameNight.Nights.PastNights;
using GameNight.Web.Wording.Texts;

namespace GameNight.Web.Wording;

/// <summary>Says what to do about a field of what a host writes down after a night.</summary>
public static class LogProblemText
{
    public static string Say(LogProblem problem) => problem.Fault switch
    {
        LogFault.OutOfRange => ProblemText.TypeNumber(problem.Low, problem.High, problem.Field == LogField.Heads ? "log.heads" : "log.left"),
        LogFault.TooLong => Phrase.Fill(PastNightPages.WordsTooLong, QuantityText.Number(problem.High)),
        LogFault.LessThanItsPies => Phrase.Fill(PastNightPages.LessThanItsPies, PastNightText.Slices(problem.Low)),
        LogFault.UnknownGuest => PastNightPages.UnknownGuest,
        LogFault.UnknownPie => PastNightPages.UnknownPie,
    };
}
