using GameNight.Planning.Guests;

namespace GameNight.Planning.Toppings;

/// <summary>
/// Settles what no solver has to decide: who can be served at all, how many slices each gets when there are too few, and
/// which pies are own pies. Everything is in the order of ids, so the order of the request does not matter.
/// </summary>
internal static class Seating
{
    private static readonly Dictionary<string, Liking> NoLikes = [];

    public static SplitBasis For(SplitRequest request, CancellationToken cancellation)
    {
        var menu = new MenuLists(request.Menu, request.Wetness);
        var conflicts = new List<Conflict>();
        var (eaters, parties, groups, sets) = Settle(request, menu, conflicts);
        var catalogue = CombinationCatalogue.For(
            menu,
            [.. eaters.Select(eater => eater.Palate)],
            [
                .. parties.Select(party => new Party([.. party.Owners.Select(owner => eaters[owner].Palate)], Choices: 2)),
                .. groups.Select(group => new Party([group.Palate], Choices: 1)),
                .. eaters.GroupBy(eater => eater.Needs.Key)
                    .Select(same => new Party([.. same.Select(eater => eater.Palate)], Choices: 1)),
            ],
            cancellation);

        var pins = Pins.Settle(request, menu, sets, eaters, conflicts);
        foreach (var pin in pins.Where(pin => !catalogue.Any(pin.Choice.IsSameAs)))
        {
            catalogue = [.. catalogue, pin.Choice];
        }

        var basis = new SplitBasis(menu, eaters, sets, catalogue, groups, pins, request.SlicesPerPart)
        {
            UnitsPerPie = request.PartsPerPie,
            Aim = request.Aim,
            Conflicts = conflicts,
        };
        (basis.Limits, basis.Packed) = (StockRules.Limits(request, basis), StockRules.Packed(request, basis));
        return basis;
    }

    /// <summary>How many pies lie on the second dough: known before any search, so that both doughs can be weighed.</summary>
    public static int PiesOnSecondDough(SplitRequest request) => request.Menu.SecondDough is null
        ? 0
        : Settle(request, new MenuLists(request.Menu, request.Wetness), []).Sets.Where(set => set.IsOnSecondDough).Sum(set => set.Pies);

    private static (List<SeatedEater> Eaters, List<OwnPieParty> Parties, GroupAtTable[] Groups, PieSet[] Sets) Settle(
        SplitRequest request, MenuLists menu, List<Conflict> conflicts)
    {
        var (eaters, parties) = Admit(request, Hungry(request, menu, conflicts), conflicts);
        var groups = GroupsOf(request, menu);
        var (own, second) = WithRoomForGroups(request, eaters, parties, groups);
        var open = request.Pies - own.Sum() - second;
        return (eaters, parties, groups,
        [
            .. parties.Select((party, index) => new PieSet(own[index], own[index] * request.PartsPerPie, party.Owners, party.IsOnSecondDough)),
            .. second > 0 || OpenSlices(eaters, onSecondDough: true) > 0
                ? [new PieSet(second, second * request.PartsPerPie, [], IsOnSecondDough: true)]
                : Array.Empty<PieSet>(),
            new PieSet(open, open * request.PartsPerPie, []),
        ]);
    }

    /// <summary>Everybody who may have something and wants some, with all the slices they want.</summary>
    private static List<SeatedEater> Hungry(SplitRequest request, MenuLists menu, List<Conflict> conflicts)
    {
        var hungry = new List<SeatedEater>();
        foreach (var eater in request.Eaters.OrderBy(eater => eater.Id, StringComparer.Ordinal))
        {
            var palate = new Palate(eater.Needs, eater.Likes, menu);
            if (palate.NothingBecause is { } because)
            {
                conflicts.Add(new NothingPermitted(eater.Id, because));
            }
            else if (eater.Slices > 0)
            {
                hungry.Add(new SeatedEater(eater.Id, eater.Slices, eater.Needs, palate, eater.WeightPercent));
            }
        }

        return hungry;
    }

    /// <summary>
    /// Grants the slices and sets own pies apart. Where the own pies do not all fit, parties that need fewer pies go first,
    /// and the rest gets nothing: from another pie it must not eat.
    /// </summary>
    private static (List<SeatedEater> Eaters, List<OwnPieParty> Parties) Admit(
        SplitRequest request, List<SeatedEater> hungry, List<Conflict> conflicts)
    {
        var admitted = hungry.ToList();
        var refused = new SortedSet<string>(StringComparer.Ordinal);
        while (true)
        {
            var granted = Granted(request.AllSlices, admitted);
            var eaters = admitted.Select((eater, index) => eater with { Slices = granted[index] })
                .Where(eater => eater.Slices > 0)
                .ToList();
            var parties = OwnPies.Arrange(eaters, request.SlicesPerPie);
            var left = request.Pies;
            var unfit = new List<OwnPieParty>();
            foreach (var party in parties.OrderBy(party => party.Pies).ThenBy(party => party.Owners[0]))
            {
                if (party.Pies <= left)
                {
                    left -= party.Pies;
                }
                else
                {
                    unfit.Add(party);
                }
            }

            if (unfit.Count == 0)
            {
                AddConflicts(admitted);
                return (eaters, parties);
            }

            refused.UnionWith(unfit.SelectMany(party => party.Owners).Select(owner => eaters[owner].Id));
            admitted.RemoveAll(eater => refused.Contains(eater.Id));
        }

        void AddConflicts(List<SeatedEater> served)
        {
            if (refused.Count > 0)
            {
                conflicts.Add(new OwnPiesDoNotFit([.. refused], PiesNeeded(), request.Pies));
            }

            var wanted = served.Sum(eater => eater.Slices);
            if (wanted > request.AllSlices)
            {
                conflicts.Add(new TooFewSlices(wanted, request.AllSlices, PiesNeeded()));
            }
        }

        int PiesNeeded() =>
            OwnPies.Arrange(hungry, request.SlicesPerPie).Sum(party => party.Pies)
            + OwnPies.PiesFor(OpenSlices(hungry, onSecondDough: true), request.SlicesPerPie)
            + OwnPies.PiesFor(OpenSlices(hungry, onSecondDough: false), request.SlicesPerPie);
    }

    private static IReadOnlyList<int> Granted(int available, List<SeatedEater> eaters) =>
        eaters.Sum(eater => eater.Slices) <= available
            ? [.. eaters.Select(eater => eater.Slices)]
            : ContestedShares.Whole([.. eaters.Select(eater => eater.Slices)], available);

    private static GroupAtTable[] GroupsOf(SplitRequest request, MenuLists menu) =>
    [
        .. request.Groups
            .Select(group => new GroupAtTable(
                group with { EaterIds = [.. group.EaterIds.Order(StringComparer.Ordinal)] },
                new Palate(group.Needs, NoLikes, menu)))
            .Where(group => group.Palate.NothingBecause is null)
            .OrderBy(group => string.Join('|', group.Group.EaterIds), StringComparer.Ordinal)
            .ThenBy(group => group.Group.Needs.Key, StringComparer.Ordinal)
            .ThenBy(group => group.Group.SlicesNineInTen),
    ];

    /// <summary>
    /// The own pies of each party and the other pies of the second dough: what their slices need, and another one where their
    /// groups may well eat more and everybody else still finds enough on the open pies. What a begun main dough is not enough
    /// for lies on the second one.
    /// </summary>
    private static (int[] Own, int Second) WithRoomForGroups(
        SplitRequest request, List<SeatedEater> eaters, List<OwnPieParty> parties, GroupAtTable[] groups)
    {
        var pies = parties.Select(party => party.Pies).ToArray();
        var second = Math.Min(
            request.Pies - pies.Sum(), OwnPies.PiesFor(OpenSlices(eaters, onSecondDough: true), request.SlicesPerPie));
        var spare = request.Pies - pies.Sum() - second
            - OwnPies.PiesFor(OpenSlices(eaters, onSecondDough: false), request.SlicesPerPie);
        for (var party = 0; party < pies.Length; party++)
        {
            var ids = parties[party].Owners.Select(owner => eaters[owner].Id).ToHashSet();
            var wanted = groups
                .Where(group => group.Group.Needs.NeedsOwnPie && group.Group.EaterIds.Any(ids.Contains))
                .Sum(group => group.Group.SlicesNineInTen);
            pies[party] += More(wanted, pies[party]);
        }

        second += More(
            groups.Where(group => !group.Group.Needs.NeedsOwnPie && group.Palate.NeedsSecondDough).Sum(group => group.Group.SlicesNineInTen),
            second);
        if (request is { Menu.SecondDough: not null, MainBalls: { } balls })
        {
            var ownOfMain = parties.Index().Where(party => !party.Item.IsOnSecondDough).Sum(party => pies[party.Index]);
            var free = request.Pies - pies.Sum();
            second = Math.Clamp(free - Math.Max(0, balls - ownOfMain), second, free);
        }

        return (pies, second);

        int More(int wanted, int there)
        {
            var more = Math.Clamp(OwnPies.PiesFor(wanted, request.SlicesPerPie) - there, 0, Math.Max(0, spare));
            spare -= more;
            return more;
        }
    }

    /// <summary>Slices that are eaten from pies of a dough that are nobody's own.</summary>
    private static int OpenSlices(IEnumerable<SeatedEater> eaters, bool onSecondDough) => eaters
        .Where(eater => !eater.Needs.NeedsOwnPie && eater.Palate.NeedsSecondDough == onSecondDough)
        .Sum(eater => eater.Slices);
}
