using GameNight.Nights.ForGuests;
using GameNight.Nights.Records;
using GameNight.Planning.Guests;
using GameNight.Web.Wording.Texts;

namespace GameNight.Web.Wording;

/// <summary>Says what an answer replaced without its page having known of it.</summary>
internal static class ReplacedText
{
    /// <summary>An answer in a few words.</summary>
    public static string Say(AnswerFacts answer) => answer.Companions.Count == 0
        ? WordText.Say(answer.Presence)
        : Phrase.Fill(GuestPages.AnswerWithCompanions, WordText.Say(answer.Presence), answer.Companions.Count);

    /// <summary>Each difference between the answer that gave way and the one that counts.</summary>
    public static IEnumerable<string> Differences(InvitationView invitation, AnswerFacts before)
    {
        var now = invitation.Answer!;
        (string What, string Before, string Now)[] all =
        [
            (AnswerPages.ReplacedComing, Say(before), Say(now)),
            (AnswerPages.ReplacedRemotely, EatsHere(before), EatsHere(now)),
            (AnswerPages.ReplacedHunger, WordText.Say(before.Hunger), WordText.Say(now.Hunger)),
            (AnswerPages.ReplacedTimes, Times(before), Times(now)),
            (AnswerPages.ReplacedLikes, Likes(invitation, before), Likes(invitation, now)),
        ];
        return all.Where(row => row.Before != row.Now).Select(row => Phrase.Fill(AnswerPages.ReplacedWas, row.What, row.Before, row.Now));
    }

    private static string EatsHere(AnswerFacts answer) => answer.Remotely ? AnswerPages.ReplacedEatsNot : AnswerPages.ReplacedEats;

    private static string Times(AnswerFacts answer) =>
        WordText.And([.. StayText.Say(answer)]) is { Length: > 0 } said ? said : AnswerPages.WholeEvening;

    private static string Likes(InvitationView invitation, AnswerFacts answer) =>
        WordText.And([.. invitation.Toppings
            .Where(topping => answer.Likes.GetValueOrDefault(topping.Id, Liking.Fine) != Liking.Fine)
            .Select(topping => Phrase.Fill(AnswerPages.ReplacedLiking, topping.Name, WordText.Say(answer.Likes[topping.Id])))]) is { Length: > 0 } said
                ? said
                : AnswerPages.ReplacedNoLikes;
}
