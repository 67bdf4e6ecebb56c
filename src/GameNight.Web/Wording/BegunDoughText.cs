using GameNight.Nights.ForHosts;
using GameNight.Nights.Records;
using GameNight.Web.Wording.Texts;
using NodaTime;
using static GameNight.Web.Wording.Phrase;
using static GameNight.Web.Wording.QuantityText;

namespace GameNight.Web.Wording;

/// <summary>Says what a move or a cancellation means for a dough that is committed.</summary>
public static class BegunDoughText
{
    public static string SayMoved(CommitmentView dough, NightFacts facts, Instant serveAt)
    {
        var cold = dough.ColdWhenServedAt(serveAt);
        var (shortest, longest) = (facts.ShortestColdHours, facts.LongestColdHours);
        return cold < Duration.FromHours(shortest) ? Fill(AfterCommitment.ColdTooShort, Length(cold), shortest, longest)
            : cold > Duration.FromHours(longest) ? Fill(AfterCommitment.ColdTooLong, Length(cold), shortest, longest)
            : Fill(AfterCommitment.ColdStillWorks, Length(cold), shortest, longest);
    }

    public static string SayCancelled(CommitmentView dough, NightFacts facts, Measures measures)
    {
        var keepsUntil = dough.ServeAt - dough.Cold + Duration.FromHours(facts.LongestColdHours);
        var (balls, mass) = (Balls(dough.Balls), measures.SayDough(dough.Dough));
        return dough.CanBeTakenBack
            ? Fill(AfterCommitment.CommittedAndCalledOff, balls, mass, Moment(dough.MixAt, facts.Zone))
            : Fill(AfterCommitment.BegunAndCalledOff, balls, mass, Moment(keepsUntil, facts.Zone));
    }
}
