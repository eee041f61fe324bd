namespace Triage.Reasoning.Planning;

/// <summary>
/// Best-first search of the tree of options and outcomes (AO*, Martelli and Montanari 1973), each state held between what
/// something that can be done costs and what nobody can do it for. The state looked into next lies where the option that
/// may cost least leads most uncertainly (McMahan, Likhachev and Gordon 2005).
/// Stopped at any moment, what it knows is the cost of something that can be done.
/// </summary>
/// <param name="worth">By option: false for what was too far from the best at the start to be looked at again.</param>
internal sealed class BestFirstSearch(PlanningModel model, OneStepLookAhead oneStep, bool[] worth) : IContinuation
{
    private readonly Dictionary<string, Prospect> _known = [];

    /// <summary>Searches until the start is settled or the model has used so many nodes.</summary>
    public void Run(long until)
    {
        for (var start = At(model.Start); model.Nodes < until && !start.Settled;)
        {
            Deepen(start);
        }
    }

    /// <summary>What is known of a state that was come across, else its best sequence of fixes.</summary>
    public Valuation From(JobState state) => _known.TryGetValue(model.Key(state), out var prospect) ? prospect.Known : oneStep.From(state);

    private Prospect At(JobState state)
    {
        var key = model.Key(state);
        if (!_known.TryGetValue(key, out var prospect))
        {
            _known[key] = prospect = new Prospect(state, oneStep.From(state), new PerfectInformation(model, state).Least);
        }

        return prospect;
    }

    private void Deepen(Prospect prospect)
    {
        if (prospect.Moves is null)
        {
            prospect.Moves = [.. Moves(prospect)];
        }
        else if (prospect.Promising?.Uncertain is { } next)
        {
            Deepen(next);
        }

        prospect.Update();
    }

    private IEnumerable<Move> Moves(Prospect prospect)
    {
        var state = prospect.State;
        var informed = new PerfectInformation(model, state);
        foreach (var option in model.ReadyOptions(state))
        {
            if (worth[option] && informed.Bound(option) < prospect.Known.Cost && oneStep.CanPay(state, option, prospect.Known.Cost))
            {
                var outcomes = model.Outcomes(state, option).Where(o => o.Next is not null).Select(o => (o.Probability, At(o.Next!)));
                yield return new Move(option, model.Price(option, state.Open), [.. outcomes]);
            }
        }
    }
}
