using GameNight.Planning.Guests;

namespace GameNight.Planning.Toppings;

/// <summary>
/// What one eater may have of the menu and what a slice is worth to them, from 0 to 12:
/// favourite 12, like 9, fine 6, rather not 2; nothing on it (plain) 4; something they never want 0.
/// <para>
/// Several toppings: half the best one, half the mean of all (a favourite beside something fine: 10; a like beside
/// something fine: 8). With a "rather not" among them it is half the worst one instead, so that a favourite does not buy
/// it back (a favourite beside it: 4, no more than plain). Rounded down.
/// </para>
/// <para>
/// Another base or cheese than the first one on the menu that this eater may have costs one point each: the dairy-free
/// cheese is for those who need it, but a shared sector is no disaster.
/// </para>
/// </summary>
internal sealed class Palate
{
    public const int HighestScore = 12;
    public const int FineScore = 6;
    private const int PlainScore = 4;
    private const int RatherNotScore = 2;
    private const int NotPermitted = -1;

    private readonly int[] _bases;
    private readonly int[] _cheeses;
    private readonly int[] _toppings;
    private readonly int _houseBase;
    private readonly int _houseCheese;
    private readonly bool _mayHaveToppings;
    private readonly bool _mayHaveMainDough;
    private readonly bool _mayHaveSecondDough;
    private readonly bool _isKeptFromKitchen;

    public Palate(DietaryNeeds needs, IReadOnlyDictionary<string, Liking> likes, MenuLists menu)
    {
        var (dough, second) = (menu.Menu.Dough, menu.Menu.SecondDough?.Composition);
        _mayHaveMainDough = dough.IsPermittedFor(needs);

        // Flour dust travels: what must not touch their slices is in the kitchen as soon as the main dough holds it. Of an
        // unread label it is not said that it does, and the second dough is as little for them.
        _isKeptFromKitchen = needs.MustNotTouch.Any(allergen => dough.Contains.Contains(allergen) || dough.MayContain.Contains(allergen));
        _mayHaveSecondDough = !needs.MustNotTouch.Any(dough.IsOrMayBe) && second?.IsPermittedFor(needs) == true;
        _bases = [.. menu.Bases.Select(Worth)];
        _cheeses = [.. menu.Cheeses.Select(Worth)];
        _toppings = [.. menu.Toppings.Select(Worth)];
        _houseBase = Array.FindIndex(_bases, worth => worth != NotPermitted);
        _houseCheese = Array.FindIndex(_cheeses, worth => worth != NotPermitted);
        _mayHaveToppings = menu.Menu.MostToppings > 0;
        BestPossible = FindBest();

        int Worth(MenuItem item) =>
            item.IsPermittedFor(needs)
                ? WorthOf(likes.GetValueOrDefault(item.Id, Liking.Fine))
                : NotPermitted;
    }

    /// <summary>The highest score any choice can have; more toppings never lift it above the best single one.</summary>
    public int BestPossible { get; }

    /// <summary>Every topping this eater may have is one they never want, so only plain is left.</summary>
    public bool OnlyUnwantedToppings =>
        _mayHaveToppings && _toppings.Any(worth => worth != NotPermitted) && _toppings.All(worth => worth is NotPermitted or 0);

    /// <summary>Why nothing at all can be served, or null when something can.</summary>
    public NothingPermittedBecause? NothingBecause =>
        _isKeptFromKitchen ? NothingPermittedBecause.Kitchen
        : !_mayHaveMainDough && !_mayHaveSecondDough ? NothingPermittedBecause.Dough
        : _houseBase < 0 ? NothingPermittedBecause.Base
        : _houseCheese < 0 ? NothingPermittedBecause.Cheese
        : null;

    /// <summary>The main dough is not for them, and the second one is.</summary>
    public bool NeedsSecondDough => !_mayHaveMainDough && _mayHaveSecondDough;

    public bool MayHaveDough(bool isSecond) => isSecond ? _mayHaveSecondDough : _mayHaveMainDough;

    /// <summary>
    /// How many menu items both may have: the more, the better the two share a pie. 0 when they cannot; doughs are never
    /// shared.
    /// </summary>
    public int InCommonWith(IReadOnlyCollection<Palate> others)
    {
        var bases = Common(palate => palate._bases);
        var cheeses = Common(palate => palate._cheeses);
        return bases == 0 || cheeses == 0 || NothingBecause is not null
            || others.Any(other => other.NothingBecause is not null || other.NeedsSecondDough != NeedsSecondDough)
            ? 0
            : bases + cheeses + Common(palate => palate._toppings);

        int Common(Func<Palate, int[]> list) =>
            Enumerable.Range(0, list(this).Length)
                .Count(item => list(this)[item] != NotPermitted && others.All(other => list(other)[item] != NotPermitted));
    }

    public bool Permits(MenuChoice choice) => Score(choice) is not null;

    /// <summary>What a slice of this choice is worth, on a dough they may have, 0 to 12; null when a hard rule forbids it.</summary>
    public int? Score(MenuChoice choice)
    {
        var baseWorth = _bases[choice.Base];
        var cheeseWorth = _cheeses[choice.Cheese];
        if ((!_mayHaveMainDough && !_mayHaveSecondDough) || baseWorth == NotPermitted || cheeseWorth == NotPermitted)
        {
            return null;
        }

        var (sum, best, worst) = (0, 0, HighestScore);
        foreach (var topping in choice.Toppings)
        {
            var worth = _toppings[topping];
            if (worth == NotPermitted)
            {
                return null;
            }

            sum += worth;
            best = Math.Max(best, worth);
            worst = Math.Min(worst, worth);
        }

        if (baseWorth == 0 || cheeseWorth == 0 || worst == 0)
        {
            return 0;
        }

        var count = choice.Toppings.Count;
        var lead = worst == RatherNotScore ? worst : best;
        var score = count == 0 ? PlainScore : ((lead * count) + sum) / (2 * count);
        var substitutes = (choice.Base == _houseBase ? 0 : 1) + (choice.Cheese == _houseCheese ? 0 : 1);
        return Math.Max(1, score - substitutes);
    }

    private static int WorthOf(Liking liking) => liking switch
    {
        Liking.Never => 0,
        Liking.RatherNot => RatherNotScore,
        Liking.Fine => FineScore,
        Liking.Like => 9,
        Liking.Favourite => HighestScore,
    };

    private int FindBest()
    {
        if (NothingBecause is not null)
        {
            return 0;
        }

        var best = 0;
        for (var baseIndex = 0; baseIndex < _bases.Length; baseIndex++)
        {
            for (var cheese = 0; cheese < _cheeses.Length; cheese++)
            {
                best = Math.Max(best, Score(new MenuChoice(baseIndex, cheese, [])) ?? 0);
                for (var topping = 0; _mayHaveToppings && topping < _toppings.Length; topping++)
                {
                    best = Math.Max(best, Score(new MenuChoice(baseIndex, cheese, [topping])) ?? 0);
                }
            }
        }

        return best;
    }
}
