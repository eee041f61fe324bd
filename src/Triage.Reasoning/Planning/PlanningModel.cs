namespace Triage.Reasoning.Planning;

/// <summary>A repair problem with everything numbered: options, access steps, fault sets; prices are in the bench's currency.</summary>
internal sealed class PlanningModel
{
    private readonly double[] _ownPrice;
    private readonly int[] _stops;

    public PlanningModel(RepairProblem problem)
    {
        Options = [.. problem.Options];
        Space = new BeliefSpace(problem);
        Looks = new Looks(Options, Space);
        Ways = new AccessWays(problem);
        _ownPrice = Array.ConvertAll(Options, o => o.Price(problem.Rates));
        Start = new JobState(Space.Prior, DoneBefore(problem), Ways.OpenAtStart, null);
        var order = new OrderOfWork(problem);
        Rules = order.WithChecks(new MeasureFirst(problem, order, Ways, _ownPrice).Checks(Start.Done));
        Fixes = [.. Numbers.Where(o => Options[o] is FixOption && Rules.Allowed[o])];
        Attempts = Array.ConvertAll(Space.Attempts(Fixes), set => set.OrderBy(a => a.Chance / _ownPrice[a.Fix]).ToArray());
        _stops = [.. Numbers.Where(o => Options[o] is StopOption && Rules.Allowed[o])];
    }

    public Option[] Options { get; }

    public IEnumerable<int> Numbers => Enumerable.Range(0, Options.Length);

    public BeliefSpace Space { get; }

    /// <summary>Fixes that no rule forbids.</summary>
    public int[] Fixes { get; }

    /// <summary>By fault set: the fixes that can change it with the chance that they do, worst chance for the price first.</summary>
    public (int Fix, double Chance)[][] Attempts { get; }

    public OrderOfWork Rules { get; }

    public AccessWays Ways { get; }

    public Looks Looks { get; }

    public JobState Start { get; }

    /// <summary>Nodes used so far.</summary>
    public long Nodes { get; set; }

    /// <summary>Price without opening anything.</summary>
    public double OwnPrice(int option) => _ownPrice[option];

    public double Price(int option, bool[] open) => _ownPrice[option] + Ways.Opening(option, open);

    public string Key(JobState state) => state.Key(Space.OneFaultEach);

    public bool Ready(int option, bool[] done) => !done[option] && Rules.Allowed[option] && Rules.Next(option, done) == option;

    public IEnumerable<int> ReadyOptions(JobState state) => Numbers.Where(o => Ready(o, state.Done));

    /// <summary>Tests and fixes that are ready or can become so.</summary>
    public IEnumerable<int> ReadyLater() => Numbers.Where(o => !Start.Done[o] && Rules.Allowed[o] && Options[o] is not StopOption);

    /// <summary>The cheapest way to give up in a state.</summary>
    public Valuation CheapestStop(bool[] done, bool[] open)
    {
        var best = Valuation.None;
        foreach (var stop in _stops)
        {
            best = Ready(stop, done) ? best.OrBetter(new Valuation(Price(stop, open), stop)) : best;
        }

        return best;
    }

    /// <summary>The cheapest way to give up there may ever be, opening left out.</summary>
    public double LeastStop => _stops.Min(s => _ownPrice[s]);

    /// <summary>What can come of an option; outcomes of probability 0 are left out.</summary>
    public IEnumerable<Outcome> Outcomes(JobState state, int option) => Options[option] switch
    {
        FixOption => AfterFix(state, option),
        _ when Looks.Has(option) => AfterLook(state, option),
        _ => [],
    };

    /// <summary>Chance of each outcome of a test or round at the start.</summary>
    public IEnumerable<double> Chances(int look) => Looks.Of(look, Start.Done).Rows.Select(row => row.Expect(Start.Belief, p => p));

    private bool[] DoneBefore(RepairProblem problem)
    {
        var (ids, done) = (problem.Done.ToHashSet(), new bool[Options.Length]);
        foreach (var option in Numbers.Where(o => ids.Contains(Options[o].Id)))
        {
            Looks.Do(option, done);
        }

        return done;
    }

    private IEnumerable<Outcome> AfterFix(JobState state, int fix)
    {
        var clearance = Space.Clearances[fix]!;
        double[] left = [.. state.Belief];
        clearance.Apply(left);
        Nodes += left.Length;
        var works = clearance.Sum(state.Belief, clearance.Works);
        var fails = Weights.Sum(left);
        if (works > 0)
        {
            yield return new Outcome(works / (works + fails), Outcome.Works, null);
        }

        if (fails > 0)
        {
            yield return new Outcome(fails / (works + fails), JobStep.StillFaulty, After(state, fix, new JobStep(fix, JobStep.StillFaulty, state.Last), left, fails));
        }
    }

    private IEnumerable<Outcome> AfterLook(JobState state, int option)
    {
        var look = Looks.Of(option, state.Done);
        for (var shown = 0; shown < look.Rows.Length; shown++)
        {
            var belief = new double[Space.Count];
            var sum = look.Rows[shown].Multiply(state.Belief, belief);
            Nodes += belief.Length;
            if (sum > 0)
            {
                yield return new Outcome(sum, shown, After(state, option, new JobStep(look.Number, shown, state.Last), belief, sum));
            }
        }
    }

    private JobState After(JobState state, int option, JobStep step, double[] weights, double sum)
    {
        Weights.Divide(weights, sum);
        bool[] done = [.. state.Done];
        Looks.Do(option, done);
        return new JobState(weights, done, Ways.After(option, state.Open), step);
    }
}
