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
        var hungry = Hungry(request, menu, conflicts);
        var (eaters, parties) = Admit(request, hungry, conflicts);
        var groups = GroupsOf(request, menu);
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

        var pies = WithRoomForGroups(request, eaters, parties, groups);
        var unitsPerPie = request.PartsPerPie;
        PieSet[] sets =
        [
            .. parties.Select((party, index) => new PieSet(pies[index], pies[index] * unitsPerPie, party.Owners)),
            new PieSet(request.Pies - pies.Sum(), (request.Pies - pies.Sum()) * unitsPerPie, []),
        ];
        var pins = Pins.Settle(request, menu, sets, eaters, conflicts);
        foreach (var pin in pins.Where(pin => !catalogue.Any(pin.Choice.IsSameAs)))
        {
            catalogue = [.. catalogue, pin.Choice];
        }

        var basis = new SplitBasis(menu, eaters, sets, catalogue, groups, pins, request.SlicesPerPart)
        {
            UnitsPerPie = unitsPerPie,
            Aim = request.Aim,
            Conflicts = conflicts,
        };
        (basis.Limits, basis.Packed) = (StockRules.Limits(request, basis), StockRules.Packed(request, basis));
        return basis;
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
            + OwnPies.PiesFor(OpenSlices(hungry), request.SlicesPerPie);
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
    /// The own pies of each party: what its slices need, and another one where its groups may well eat more and everybody
    /// else still finds enough on the open pies.
    /// </summary>
    private static int[] WithRoomForGroups(
        SplitRequest request, List<SeatedEater> eaters, List<OwnPieParty> parties, GroupAtTable[] groups)
    {
        var pies = parties.Select(party => party.Pies).ToArray();
        var spare = request.Pies - pies.Sum() - OwnPies.PiesFor(OpenSlices(eaters), request.SlicesPerPie);
        for (var party = 0; party < pies.Length; party++)
        {
            var ids = parties[party].Owners.Select(owner => eaters[owner].Id).ToHashSet();
            var wanted = groups
                .Where(group => group.Group.Needs.NeedsOwnPie && group.Group.EaterIds.Any(ids.Contains))
                .Sum(group => group.Group.SlicesNineInTen);
            var more = Math.Clamp(OwnPies.PiesFor(wanted, request.SlicesPerPie) - pies[party], 0, Math.Max(0, spare));
            pies[party] += more;
            spare -= more;
        }

        return pies;
    }

    private static int OpenSlices(IEnumerable<SeatedEater> eaters) =>
        eaters.Where(eater => !eater.Needs.NeedsOwnPie).Sum(eater => eater.Slices);
}
