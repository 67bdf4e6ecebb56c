namespace GameNight.Planning.Toppings;

/// <summary>
/// Hands out the slices of given sectors: as many as can be eaten, and among those ways one with the least regret. A
/// cheapest flow by repeated shortest paths, which is exact; the network has a few hundred edges.
/// </summary>
internal sealed class SliceFlow
{
    private readonly List<(int From, int To, int Regret)> _edges = [];
    private readonly List<int> _room = [];
    private readonly List<List<int>> _leaving;

    public SliceFlow(int nodes) => _leaving = [.. Enumerable.Range(0, nodes).Select(_ => new List<int>())];

    /// <returns>The number of the edge, for <see cref="Through"/>.</returns>
    public int Connect(int from, int to, int room, int regret)
    {
        Add(from, to, room, regret);
        Add(to, from, 0, -regret);
        return _edges.Count - 2;

        void Add(int start, int end, int capacity, int cost)
        {
            _leaving[start].Add(_edges.Count);
            _edges.Add((start, end, cost));
            _room.Add(capacity);
        }
    }

    /// <summary>How much flows along an edge.</summary>
    public int Through(int edge) => _room[edge + 1];

    public void Fill(int source, int sink, CancellationToken cancellation)
    {
        while (CheapestPath(source, sink) is { } path)
        {
            cancellation.ThrowIfCancellationRequested();
            var amount = path.Min(edge => _room[edge]);
            foreach (var edge in path)
            {
                _room[edge] -= amount;
                _room[edge ^ 1] += amount;
            }
        }
    }

    private List<int>? CheapestPath(int source, int sink)
    {
        var regret = Enumerable.Repeat(int.MaxValue, _leaving.Count).ToArray();
        var cameBy = Enumerable.Repeat(-1, _leaving.Count).ToArray();
        var isWaiting = new bool[_leaving.Count];
        var waiting = new Queue<int>([source]);
        regret[source] = 0;
        while (waiting.TryDequeue(out var node))
        {
            isWaiting[node] = false;

            // A way never leads on from the sink: edges added later would make a cycle of falling regret there.
            foreach (var edge in node == sink ? [] : _leaving[node])
            {
                var (_, to, cost) = _edges[edge];
                if (to != source && _room[edge] > 0 && regret[node] + cost < regret[to])
                {
                    regret[to] = regret[node] + cost;
                    cameBy[to] = edge;
                    if (!isWaiting[to])
                    {
                        isWaiting[to] = true;
                        waiting.Enqueue(to);
                    }
                }
            }
        }

        if (cameBy[sink] < 0)
        {
            return null;
        }

        var path = new List<int>();
        for (var node = sink; node != source; node = _edges[cameBy[node]].From)
        {
            path.Add(cameBy[node]);
        }

        return path;
    }
}
