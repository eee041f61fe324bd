namespace Triage.Reasoning.Planning;

/// <summary>
/// Values an option by its price and the best sequence of fixes after each of its outcomes. A test or round whose answer can change
/// too little to be worth its price is valued as if it were ignored, which is never too low.
/// </summary>
internal sealed class OneStepLookAhead(PlanningModel model) : IContinuation
{
    private readonly FixSequence _after = new(model);
    private readonly Dictionary<string, Valuation> _known = [];

    /// <summary>Cost when nothing is looked at: the best sequence with a stop. Histories that lead to one belief are valued once.</summary>
    public Valuation From(JobState state)
    {
        var key = model.Key(state);
        return _known.TryGetValue(key, out var known) ? known : _known[key] = _after.From(state);
    }

    /// <summary>Values ready options other than stops.</summary>
    /// <param name="ignoring">Cost from this state when nothing is looked at.</param>
    public double CostOf(JobState state, int option, double ignoring) =>
        CanPay(state, option, ignoring) ? this.CostOf(model, state, option) : model.Price(option, state.Open) + ignoring;

    /// <summary>
    /// False for a test or round that is not worth its price. A change of belief by a total variation of d changes the cost of what is best by at most d times the spread of costs over
    /// hypotheses; the spread is taken as the price of giving up plus the expected cost.
    /// </summary>
    public bool CanPay(JobState state, int option, double ignoring)
    {
        if (!model.Looks.Has(option) || model.Rules.Leads(option))
        {
            return true;
        }

        var spread = model.CheapestStop(state.Done, state.Open).Cost + ignoring;
        var variation = 0.0;
        foreach (var row in model.Looks.Of(option, state.Done).Rows)
        {
            var mean = row.Expect(state.Belief, p => p);
            variation += row.Expect(state.Belief, p => Math.Abs(p - mean)) / 2;
            model.Nodes += row.Length;
        }

        return variation * spread > model.Price(option, state.Open);
    }
}
