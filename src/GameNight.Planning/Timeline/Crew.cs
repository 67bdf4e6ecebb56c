namespace GameNight.Planning.Timeline;

/// <summary>What a helper does.</summary>
public enum HelperSkill
{
    /// <summary>Everything the host does.</summary>
    Everything,

    /// <summary>Fetches, grates, serves and clears; neither dough nor oven.</summary>
    FetchAndClear,
}

/// <summary>Whose work a step is.</summary>
public enum StepSkill
{
    Anybody,

    /// <summary>Dough, sauce and oven: the host's, and that of helpers who do everything.</summary>
    Cook,
}

/// <summary>
/// Who there is on a night, the host first, and who may do what. People of whom nothing tells one from the other are one class: a
/// pair of hands more or less of it.
/// </summary>
internal sealed class Crew
{
    private readonly HelperSkill[] _skills;
    private readonly IReadOnlySet<StepKind> _forCooks;
    private readonly IReadOnlyDictionary<int, int> _ownOf;
    private readonly int[] _classOf;
    private readonly int[] _anybody;
    private readonly int[] _cooks;

    /// <param name="skills">One for each person, the host first.</param>
    /// <param name="ownOf">Numbers of own steps that are one person's, with that person.</param>
    private Crew(HelperSkill[] skills, IReadOnlySet<StepKind> forCooks, IReadOnlyDictionary<int, int> ownOf)
    {
        (_skills, _forCooks, _ownOf) = (skills, forCooks, ownOf);
        var classes = Enumerable.Range(0, skills.Length)
            .GroupBy(person => (skills[person], ownOf.Values.Contains(person) ? person : -1)).ToList();
        _classOf = [.. Enumerable.Range(0, skills.Length).Select(person => classes.FindIndex(one => one.Contains(person)))];
        Counts = [.. classes.Select(one => one.Count())];

        // Who can do less comes first, so that cooks stay free for what only they can do.
        int[] order = [.. Enumerable.Range(0, classes.Count).OrderByDescending(one => classes[one].Key.Item1).ThenBy(one => one)];
        _anybody = order;
        _cooks = [.. order.Where(one => classes[one].Key.Item1 == HelperSkill.Everything)];
    }

    /// <summary>How many people each class has.</summary>
    public IReadOnlyList<int> Counts { get; }

    public int People => _skills.Length;

    public static Crew Of(TimelineRequest request) => new(
        [HelperSkill.Everything, .. Enumerable.Range(0, request.Hands - 1).Select(helper => request.Helpers?.ElementAtOrDefault(helper) ?? HelperSkill.Everything)],
        (request.ForCooks ?? []).ToHashSet(),
        (request.Own ?? []).Where(own => own.Who is { } who && who < request.Hands).ToDictionary(own => own.Number, own => own.Who!.Value));

    /// <summary>So many people: the last helpers leave first, and who is more does everything.</summary>
    public Crew With(int people) => people == People ? this : new(
        [.. _skills.Take(people), .. Enumerable.Repeat(HelperSkill.Everything, Math.Max(0, people - People))],
        _forCooks,
        _ownOf.Where(own => own.Value < people).ToDictionary());

    /// <summary>The classes whose hands can do a step, the least able first.</summary>
    public IReadOnlyList<int> Able(StepKind kind, int number) => kind == StepKind.Own && _ownOf.TryGetValue(number, out var person)
        ? [_classOf[person]]
        : _forCooks.Contains(kind) ? _cooks : _anybody;

    /// <summary>The people who can do a step, the least able first.</summary>
    public IEnumerable<int> PeopleFor(StepKind kind, int number) =>
        Able(kind, number).SelectMany(one => Enumerable.Range(0, People).Where(person => _classOf[person] == one));

    /// <summary>The less somebody can do, the lower.</summary>
    public int RankOf(int person) => Array.IndexOf(_anybody, _classOf[person]);

    /// <summary>Gives each piece of work a person, so that nobody does two at once.</summary>
    /// <param name="work">With its start and end in minutes.</param>
    /// <param name="evening">From then on helpers are there; what begins before is given to them only where the host cannot.</param>
    /// <returns>A person for each, in the order given.</returns>
    /// <exception cref="InvalidOperationException">There are not enough people: the schedule was not made for this crew.</exception>
    public int[] Assign(IReadOnlyList<(StepKind Kind, int Number, int Start, int End)> work, int evening)
    {
        // What takes no time takes nobody's hands from anything.
        int[] order = [.. Enumerable.Range(0, work.Count).Where(i => work[i].End > work[i].Start).OrderBy(i => work[i].Start).ThenBy(i => work[i].End).ThenBy(i => i)];
        int[] person = [.. work.Select(one => PeopleFor(one.Kind, one.Number).First())];
        var freeFrom = Enumerable.Repeat(int.MinValue, People).ToArray();
        return Give(0) ? person : throw new InvalidOperationException("The work has more at once than there are people for it.");

        // Nearly always the first choice holds; a step further on that finds nobody has the ones before it chosen anew.
        bool Give(int position)
        {
            if (position == order.Length)
            {
                return true;
            }

            var i = order[position];
            var (kind, number, start, end) = work[i];
            var tried = new HashSet<int>();
            var free = PeopleFor(kind, number).Where(one => freeFrom[one] <= start);
            foreach (var one in start < evening ? [.. free.Order()] : free.ToList())
            {
                if (!tried.Add(_classOf[one]))
                {
                    continue;
                }

                var before = freeFrom[one];
                (person[i], freeFrom[one]) = (one, end);
                if (Give(position + 1))
                {
                    return true;
                }

                freeFrom[one] = before;
            }

            return false;
        }
    }
}
