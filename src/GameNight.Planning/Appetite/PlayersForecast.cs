using GameNight.Planning.Quantities;

namespace GameNight.Planning.Appetite;

/// <summary>With how many what is played works; null leaves that end open.</summary>
/// <param name="Fewest">1 to 300.</param>
/// <param name="Most">1 to 300, not under the fewest.</param>
public sealed record PlayersWanted(int? Fewest = null, int? Most = null)
{
    public const int MostPlayers = 300;
}

/// <summary>How many may be at the game: everybody who comes, who joins from elsewhere and children counted in.</summary>
/// <param name="TooFew">Chance of fewer than the fewest; 0 without such an end.</param>
/// <param name="TooMany">Chance of more than the most; 0 without such an end.</param>
public sealed record PlayersForecast(PlayersWanted Wanted, Estimate<double> Players, Share TooFew, Share TooMany);
