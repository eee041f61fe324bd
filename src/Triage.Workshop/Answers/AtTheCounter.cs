using System.Collections.Immutable;
using Triage.Notes.Kinds;
using Triage.Reasoning.Inference;
using Triage.Reasoning.Planning;
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
    private const int Most = 5;

    /// <summary>A question that tells less than this, in bits, is not worth the owner's time (chosen by trial).</summary>
    private const double LeastBits = 0.01;

    public ImmutableArray<CounterQuestion> Questions(HypothesisSet hypotheses)
    {
        if (!CounterHours.IsOpen(job))
            return [];
        var network = reasoned.Network;
        var done = new StepsDone(network, job, reasoned.Evidence);
        var asked = network.Scope.AskedAtTheCounter
            .Where(f => done.CanShow(f.Id) && !done.Knows(f.Id) && !done.Has(f.Id) && !network.Scope.Tests.Any(t => t.Reveals == f.Id && done.Has(t.Id))).ToList();
        return [.. asked.Zip(WhatTells.Bits(hypotheses.Listed, asked.Select(f => network.Network.Findings[network.Findings[f.Id]])), Question)
            .Where(q => q.Bits >= LeastBits).OrderByDescending(q => q.Bits).Take(Most)];
    }

    private static CounterQuestion Question(Finding finding, double bits) =>
        new(finding.Id, finding.Ask ?? finding.Name, [.. finding.Values.Select(v => new NamedValue(v.Id, WordsFor.Value(finding, v.Id)))], bits);
}
