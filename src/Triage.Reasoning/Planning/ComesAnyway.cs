namespace Triage.Reasoning.Planning;

/// <summary>
/// What a plan does after a look whatever that look, and small looks after it, show. Looks commute with looks, and where there is
/// one fault with fixes too: then what comes anyway costs no more when it comes first, however far the search has got with it, and
/// what the small look would have shown may not be needed any more.
/// </summary>
internal sealed class ComesAnyway(PlanningModel model, IContinuation plan, LeadingCause leader)
{
    /// <summary>States followed before it is given up. Chosen so that it costs little beside the search.</summary>
    private const int Enough = 200;

    private int _followed;

    /// <summary>Null where it depends on what is seen, where the plan does not say, and for what is not a small look.</summary>
    public Anyway? After(int option)
    {
        _followed = 0;
        return IsSmallLook(option) && After(model.Start, option) is { } then && model.Ready(then, model.Start.Done)
            ? new(model.Options[then].Id, model.Looks.Has(then) || model.Space.OneFaultEach) : null;
    }

    private bool IsSmallLook(int option) => model.Looks.Has(option) && !leader.IsMetBy(model.Options[option]);

    private int? After(JobState state, int look)
    {
        int? then = null;
        foreach (var outcome in model.Outcomes(state, look))
        {
            var next = Deed(outcome.Next!);
            if (next is null || (then is not null && then != next))
            {
                return null;
            }

            then = next;
        }

        return then;
    }

    private int? Deed(JobState state)
    {
        if (++_followed > Enough)
        {
            return null;
        }

        var first = plan.From(state).First;
        return IsSmallLook(first) ? After(state, first) : first;
    }
}
