using System.Collections.Immutable;
using Triage.Reasoning;
using Triage.Reasoning.Inference;
using Triage.Reasoning.Learning;
using Triage.Workshop.Model;

namespace Triage.Workshop.Chances;

/// <summary>What was worked out for one job. Ranking, hypotheses and what actions would tell all rest on the same moved chances.</summary>
internal sealed class Reasoned
{
    private readonly Learned learned;
    private readonly Lazy<SingleCauses> single;
    private readonly ImmutableArray<MovedChance> moves;

    private Reasoned(DeviceNetwork network, ActionsOfNotes actions, JobEvidence evidence, Learned learned)
    {
        (Network, Actions, Evidence, this.learned) = (network, actions, evidence, learned);
        single = new(() => SingleCauses.Of(network, evidence, learned));
        ByNetwork = PosteriorInference.Of(network.Network, evidence.Evidence);
        moves = learned.Dependent(network.Scope.Levels) is null || network.Scope.Class.Exact ? [] : single.Value.Moves(ByNetwork);
        Posterior = MovedChances.Of(ByNetwork, moves);
    }

    public DeviceNetwork Network { get; }

    public ActionsOfNotes Actions { get; }

    public JobEvidence Evidence { get; }

    /// <summary>What is shown and acted upon.</summary>
    public Posterior Posterior { get; }

    /// <summary>The same with findings independent given the causes.</summary>
    public Posterior ByNetwork { get; }

    public SingleCauses Single => single.Value;

    public static Reasoned Of(DeviceNetwork network, ActionsOfNotes actions, JobEvidence evidence, Learned learned) => new(network, actions, evidence, learned);

    /// <summary>The same job with other evidence; log entries behind the observations stay in their order.</summary>
    public Reasoned With(JobEvidence evidence) => new(Network, Actions, evidence, learned);

    /// <summary>Whether findings weigh otherwise than in the network.</summary>
    public bool IsMoved => !moves.IsEmpty;

    /// <summary>P(the fault is there now).</summary>
    public double Now(string fault) => Sum(fault, Posterior, p => p.Remaining);

    /// <summary>P(the fault was there when the machine came in).</summary>
    public double AtFirst(string fault) => Sum(fault, Posterior, p => p.Marginals);

    /// <summary>Ways things can be now, as likely as <see cref="Posterior"/> says.</summary>
    public HypothesisSet Hypotheses(int most, double bound) =>
        MovedChances.Of(Triage.Reasoning.Inference.Hypotheses.Of(Network.Network, Evidence.Evidence, most, bound), moves);

    /// <summary>P(the evidence with something more | the evidence, and something is wrong where the network says so).</summary>
    public double ChanceOf(JobEvidence more)
    {
        var byNetwork = Math.Exp(PosteriorInference.Of(Network.Network, more.Evidence).LogEvidenceAsConditioned - ByNetwork.LogEvidenceAsConditioned);
        return Math.Clamp(moves.IsEmpty ? byNetwork : byNetwork + moves.Zip(Single.ChancesOf(more), (m, p) => m.AtFirst * p).Sum(), 0, 1);
    }

    /// <summary>An interval of the network's probability, moved along the logit as the probability was.</summary>
    /// <param name="now">Of the fault's being there now; else of its having been there when the machine came in.</param>
    public Interval Moved(string fault, Interval interval, bool now) =>
        moves.IsEmpty ? interval
        : now ? MovedChances.Of(interval, Sum(fault, ByNetwork, p => p.Remaining), Now(fault))
        : MovedChances.Of(interval, Sum(fault, ByNetwork, p => p.Marginals), AtFirst(fault));

    private double Sum(string fault, Posterior posterior, Func<Posterior, ImmutableArray<ImmutableArray<double>>> of) =>
        posterior.Contradiction || !Network.Faults.TryGetValue(fault, out var places) ? 0 : places.Sum(p => of(posterior)[p.Root][p.State]);
}
