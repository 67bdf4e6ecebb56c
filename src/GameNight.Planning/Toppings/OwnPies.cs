namespace GameNight.Planning.Toppings;

/// <summary>Eaters who share own pies, by place in the list they came from, and how many pies that takes.</summary>
/// <param name="IsOnSecondDough">All of them need the second dough; a party is of one dough.</param>
internal sealed record OwnPieParty(IReadOnlyList<int> Owners, int Slices, int Pies, bool IsOnSecondDough);

/// <summary>
/// Which eaters share an own pie. Eaters with the same must-nots always do; others only where it saves a pie, those with
/// most of the menu in common first, and only when some base and some cheese are permitted to all of them.
/// </summary>
internal static class OwnPies
{
    public static List<OwnPieParty> Arrange(IReadOnlyList<SeatedEater> eaters, int slicesPerPie)
    {
        var parties = Enumerable.Range(0, eaters.Count)
            .Where(eater => eaters[eater].Needs.NeedsOwnPie)
            .GroupBy(eater => eaters[eater].Needs.Key)
            .Select(same => PartyOf([.. same]))
            .ToList();

        while (BestMerge() is { } merge)
        {
            var (first, second) = (parties[merge.First], parties[merge.Second]);
            parties[merge.First] = PartyOf([.. first.Owners.Concat(second.Owners).Order()]);
            parties.RemoveAt(merge.Second);
        }

        // Those of the second dough first, before flour of the main one is about.
        return [.. parties.OrderBy(party => party.IsOnSecondDough ? 0 : 1)];

        OwnPieParty PartyOf(int[] owners)
        {
            var total = owners.Sum(owner => eaters[owner].Slices);
            return new OwnPieParty(owners, total, PiesFor(total, slicesPerPie), eaters[owners[0]].Palate.NeedsSecondDough);
        }

        (int First, int Second)? BestMerge()
        {
            (int First, int Second)? best = null;
            var mostInCommon = 0;
            for (var first = 0; first < parties.Count; first++)
            {
                for (var second = first + 1; second < parties.Count; second++)
                {
                    var (one, other) = (parties[first], parties[second]);
                    if (PiesFor(one.Slices + other.Slices, slicesPerPie) == one.Pies + other.Pies)
                    {
                        continue;
                    }

                    var together = one.Owners.Concat(other.Owners).Select(owner => eaters[owner].Palate).ToArray();
                    var inCommon = together[0].InCommonWith(together[1..]);
                    if (inCommon > mostInCommon)
                    {
                        (best, mostInCommon) = ((first, second), inCommon);
                    }
                }
            }

            return best;
        }
    }

    public static int PiesFor(int slices, int slicesPerPie) => (slices + slicesPerPie - 1) / slicesPerPie;
}
