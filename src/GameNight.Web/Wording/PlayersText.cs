using GameNight.Nights.Records;
using GameNight.Planning.Appetite;
using GameNight.Web.Wording.Texts;

namespace GameNight.Web.Wording;

/// <summary>What is played, with how many, and with what chance it does not work out.</summary>
internal static class PlayersText
{
    public static string Say(Played played) => played.Players is { } players and not { Fewest: null, Most: null }
        ? Phrase.Fill(AnswerPages.PlayedBy, played.Name, Say(players))
        : Phrase.Fill(AnswerPages.Played, played.Name);

    /// <summary>One sentence for each end that may be missed; one when none can be.</summary>
    public static IReadOnlyList<string> Say(PlayersForecast forecast)
    {
        List<string> said = [];
        if (forecast is { Wanted.Fewest: { } fewest, TooFew.Value: > 0 })
        {
            said.Add(Phrase.Count(TablePages.ResourceManager, nameof(TablePages.TooFewPlayersOther), fewest, QuantityText.Chance(forecast.TooFew)));
        }

        if (forecast is { Wanted.Most: { } most, TooMany.Value: > 0 })
        {
            said.Add(Phrase.Count(TablePages.ResourceManager, nameof(TablePages.TooManyPlayersOther), most + 1, QuantityText.Chance(forecast.TooMany)));
        }

        return said.Count > 0 ? said : [TablePages.PlayersFit];
    }

    private static string Say(PlayersWanted players) => players switch
    {
        { Fewest: { } only, Most: { } most } when only == most =>
            Phrase.Count(AnswerPages.ResourceManager, nameof(AnswerPages.PlayersExactlyOther), only),
        { Fewest: { } fewest, Most: { } most } =>
            Phrase.Count(AnswerPages.ResourceManager, nameof(AnswerPages.PlayersFromToOther), most, fewest),
        { Fewest: { } fewest } => Phrase.Count(AnswerPages.ResourceManager, nameof(AnswerPages.PlayersFromOther), fewest),
        _ => Phrase.Count(AnswerPages.ResourceManager, nameof(AnswerPages.PlayersUpToOther), players.Most!.Value),
    };
}
