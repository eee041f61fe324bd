namespace Triage.Reasoning.Planning;

/// <summary>The access tree with steps numbered: which must be open for an option, and what opening costs.</summary>
internal sealed class AccessWays
{
    private readonly double[] _price;
    private readonly int[][] _path;

    public AccessWays(RepairProblem problem)
    {
        var steps = problem.Access.Steps;
        var number = steps.Select((s, i) => (s.Id, i)).ToDictionary(s => s.Id, s => s.i);
        _price = [.. steps.Select(s => new Expense(s.Minutes).At(problem.Rates))];
        _path = [.. problem.Options.Select(o => problem.Access.PathTo(o.Access).Select(s => number[s.Id]).ToArray())];
        Ids = [.. steps.Select(s => s.Id)];
        OpenAtStart = [.. steps.Select(s => problem.Open.Contains(s.Id))];
        Places = [.. _path.Where(p => p.Length > 0).DistinctBy(p => p[^1])];
    }

    public string[] Ids { get; }

    public bool[] OpenAtStart { get; }

    /// <summary>The ways to the places where options lie, each from the outside in.</summary>
    public int[][] Places { get; }

    public double Opening(int option, bool[] open) => OpeningOf(_path[option], open);

    public double OpeningOf(int[] path, bool[] open)
    {
        var price = 0.0;
        foreach (var step in path)
        {
            price += open[step] ? 0 : _price[step];
        }

        return price;
    }

    /// <summary>Price at the start of what is opened for one option and not for another.</summary>
    public double OpeningBeyond(int option, int other) => OpeningOf([.. _path[option].Except(_path[other])], OpenAtStart);

    public IEnumerable<string> Opens(int option, bool[] open) => _path[option].Where(s => !open[s]).Select(s => Ids[s]);

    /// <summary>What is open after an option; the same array when nothing changes.</summary>
    public bool[] After(int option, bool[] open)
    {
        if (Array.TrueForAll(_path[option], s => open[s]))
        {
            return open;
        }

        bool[] wider = [.. open];
        Open(option, wider);
        return wider;
    }

    public void Open(int option, bool[] open)
    {
        foreach (var step in _path[option])
        {
            open[step] = true;
        }
    }

    public bool IsClosed(int option, bool[] open) => !Array.TrueForAll(_path[option], s => open[s]);

    /// <summary>Whether opening a way is what lays an option open: it lies behind steps of the way and no others.</summary>
    public bool LiesOn(int option, int[] way) => _path[option].Length > 0 && Array.TrueForAll(_path[option], way.Contains);
}
