namespace Triage.Reasoning.Planning;

/// <summary>Hard rules: which options may ever be taken, and which must be done before which.</summary>
internal sealed class OrderOfWork
{
    private readonly int[][] _before;
    private readonly bool[] _leads;
    private readonly int[][] _checks;

    public OrderOfWork(RepairProblem problem)
    {
        var number = problem.Options.Select((o, i) => (o.Id, i)).ToDictionary(o => o.Id, o => o.i);
        var done = problem.Done.ToHashSet();
        Allowed = new bool[problem.Options.Length];
        _leads = new bool[problem.Options.Length];
        _before = new int[problem.Options.Length][];
        for (var option = 0; option < Allowed.Length; option++)
        {
            var chain = new List<int>();
            Allowed[option] = Collect(problem, number, done, option, chain, []);
            _before[option] = [.. chain];
            chain.ForEach(earlier => _leads[earlier] = true);
        }

        _checks = [.. problem.Options.Select(_ => Array.Empty<int>())];
        AnyOrder = _leads.Contains(true);
    }

    private OrderOfWork(OrderOfWork order, int[][] checks)
    {
        (Allowed, _before, _checks) = (order.Allowed, order._before, checks);
        _leads = [.. order._leads];
        foreach (var check in checks.SelectMany(c => c))
        {
            _leads[check] = true;
            Array.ForEach(_before[check], earlier => _leads[earlier] = true);
        }

        AnyOrder = _leads.Contains(true);
    }

    /// <summary>The same order, and some options wait for one of their checks, whichever comes first.</summary>
    /// <param name="checks">By option; where none has been done, the first of them is the one to do.</param>
    public OrderOfWork WithChecks(int[][] checks) => new(this, checks);

    /// <summary>Not blocked, and nor is anything that must come before.</summary>
    public bool[] Allowed { get; }

    /// <summary>The first undone option of everything that must come before this one; itself when nothing is missing.</summary>
    public int Next(int option, bool[] done)
    {
        foreach (var earlier in _before[option])
        {
            if (!done[earlier])
            {
                return CheckOf(earlier, done) is { } first ? Next(first, done) : earlier;
            }
        }

        return CheckOf(option, done) is { } check ? Next(check, done) : option;
    }

    /// <summary>Everything undone that must come before an option, in an order in which it can be done.</summary>
    public IEnumerable<int> Missing(int option, bool[] done) =>
        _before[option].Where(o => !done[o]).Append(option).SelectMany(o => WithCheck(o, done)).Distinct().Where(o => o != option);

    /// <summary>Everything that must come before an option, done or not, checks left out.</summary>
    public IEnumerable<int> Earlier(int option) => _before[option];

    /// <summary>The check that an option waits for; null when it waits for none.</summary>
    public int? CheckOf(int option, bool[] done) => _checks[option] is [var first, ..] checks && !Array.Exists(checks, c => done[c]) ? first : null;

    /// <summary>Whether anything must come before anything else.</summary>
    public bool AnyOrder { get; }

    /// <summary>Whether anything must wait for this option.</summary>
    public bool Leads(int option) => _leads[option];

    public bool HasEarlier(int option) => _before[option].Length > 0 || _checks[option].Length > 0;

    private IEnumerable<int> WithCheck(int option, bool[] done) =>
        CheckOf(option, done) is { } check ? [.. _before[check].Where(o => !done[o]), check, option] : [option];

    private static bool Collect(
        RepairProblem problem, Dictionary<string, int> number, HashSet<string> done, int option, List<int> chain, HashSet<int> path)
    {
        if (problem.Options[option].Blocked is not null || !path.Add(option))
        {
            return false;
        }

        foreach (var id in problem.Options[option].After.Where(id => !done.Contains(id)))
        {
            if (!number.TryGetValue(id, out var earlier) || problem.Options[earlier] is StopOption)
            {
                return false;
            }

            if (!chain.Contains(earlier))
            {
                if (!Collect(problem, number, done, earlier, chain, path))
                {
                    return false;
                }

                chain.Add(earlier);
            }
        }

        path.Remove(option);
        return true;
    }
}
