using GameNight.Nights.ForGuests;
using GameNight.Web.Wording.Texts;
using NodaTime;

namespace GameNight.Web.Wording;

/// <summary>What is wrong with an answer, for the field it is about.</summary>
internal static class AnswerFaultText
{
    /// <param name="most">What would be right, where that is a number.</param>
    public static (string Field, string Sentence) Say(AnswerFault fault, int most, LocalDateTime serveAt, LocalDateTime? endsAt) => fault switch
    {
        AnswerFault.TooManyCompanions => ("companions", Phrase.Fill(GuestPages.TooManyCompanions, most)),
        AnswerFault.NoSeatForCompanions when most <= 0 => ("companions", AnswerPages.NoSeatForAnybody),
        AnswerFault.NoSeatForCompanions => (
            "companions", Phrase.Count(AnswerPages.ResourceManager, nameof(AnswerPages.NoSeatForMoreOther), most)),
        AnswerFault.NoteTooLong => ("note", Phrase.Fill(GuestPages.NoteTooLong, most)),
        AnswerFault.ComesAfterTheEnd => (
            "comes", Phrase.Fill(AnswerPages.ComesAfterTheEnd, QuantityText.Time(StayTimes.End(serveAt, endsAt).TimeOfDay))),
        AnswerFault.LeavesBeforeTheFirstPie => (
            "leaves", Phrase.Fill(AnswerPages.LeavesBeforeTheFirstPie, QuantityText.Time(serveAt.TimeOfDay))),
        AnswerFault.LeavesBeforeComing => ("leaves", AnswerPages.LeavesBeforeComing),
    };
}
