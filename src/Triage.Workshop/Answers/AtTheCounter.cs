using System.Collections.Immutable;
using Triage.Notes.Kinds;
using Triage.Reasoning.Inference;
using Triage.Workshop.Answers.Wording;
using Triage.Workshop.Chances;
using Triage.Workshop.Jobs;
using Triage.Workshop.Model;

namespace Triage.Workshop.Answers;

/// <summary>
/// The owner stands at the counter once: what is worth asking now, most telling first. Later a question costs a call.
/// </summary>
internal sealed class AtTheCounter(Job job, Reasoned reasoned)
{
    /// <summary>More questions than this nobody answers (common practice, no source).</summary>
    private const int Most = 4;

    public ImmutableArray<CounterQuestion> Questions(HypothesisSet hypotheses)
    {
        if (!CounterHours.IsOpen(job))
            return [];
        var network = reasoned.Network;
        var done = new StepsDone(network, job, reasoned.Evidence);
        var asked = network.Scope.AskedAtTheCounter
            .Where(f => done.CanShow(f.Id) && !done.Knows(f.Id) && !done.Has(f.Id) && !network.Scope.Tests.Any(t => t.Reveals == f.Id && done.Has(t.Id)))
            .ToDictionary(f => f.Id, StringComparer.Ordinal);
        return [.. WorthAsking.Of(hypotheses.Listed, [.. asked.Keys.Select(id => network.Network.Findings[network.Findings[id]])])
            .OrderByDescending(q => q.Bits).Take(Most).Select(q => Question(asked[q.Finding.Id], q.Bits))];
    }

    private static CounterQuestion Question(Finding finding, double bits) =>
        new(finding.Id, finding.Ask ?? finding.Name, [.. finding.Values.Select(v => new NamedValue(v.Id, WordsFor.Value(finding, v.Id)))], bits);
}
