using GameNight.Nights.ForHosts;
using GameNight.Nights.Records;
using NodaTime;
using static GameNight.Web.Wording.QuantityText;

namespace GameNight.Web.Wording;

/// <summary>Says what a move or a cancellation means for a dough that is committed.</summary>
public static class BegunDoughText
{
    public static string SayMoved(CommitmentView dough, NightFacts facts, Instant serveAt)
    {
        var cold = dough.ColdWhenServedAt(serveAt);
        var hours = $"The committed dough would be cold for {Length(cold)}, and you set {facts.ShortestColdHours} to {facts.LongestColdHours} hours";
        return cold < Duration.FromHours(facts.ShortestColdHours) ? $"{hours}: it will have risen too little."
            : cold > Duration.FromHours(facts.LongestColdHours) ? $"{hours}: it will slacken, and when it is far too long another dough is planned."
            : $"{hours}: that still works.";
    }

    public static string SayCancelled(CommitmentView dough, NightFacts facts)
    {
        var keepsUntil = dough.ServeAt - dough.Cold + Duration.FromHours(facts.LongestColdHours);
        var what = $"{(dough.Balls == 1 ? "1 ball" : $"{dough.Balls} balls")}, {Grams(dough.Dough)}";
        return dough.CanBeTakenBack
            ? $"The dough is committed ({what}); mixing begins {Moment(dough.MixAt, facts.Zone)}, so nothing is lost if you do not begin."
            : $"The dough is begun ({what}). By your hours it is good until about {Moment(keepsUntil, facts.Zone)}: bake it for yourselves by then.";
    }
}
