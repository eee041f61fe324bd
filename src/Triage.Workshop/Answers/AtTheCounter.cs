using System.Collections.Immutable;
using Triage.Notes.Kinds;
using Triage.Reasoning.Inference;
using Triage.Reasoning.Planning;
using Triage.Workshop.Answers.Wording;
using Triage.Workshop.Chances;
using Triage.Workshop.Jobs;

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
        var asked = Worthwhile(hypotheses).ToList();
        return [.. asked.OrderByDescending(q => q.Bits).Take(Most)];
    }

    private IEnumerable<CounterQuestion> Worthwhile(HypothesisSet hypotheses)
    {
        var settled = job.Log.OfType<Skipped>().Select(s => s.Step).ToHashSet(StringComparer.Ordinal);
        var network = reasoned.Network;
        foreach (var finding in network.Scope.AskedAtTheCounter.Where(f => !settled.Contains(f.Id) && !network.Scope.Tests.Any(t => t.Reveals == f.Id && settled.Contains(t.Id))))
        {
            if (!network.Findings.TryGetValue(finding.Id, out var index) || reasoned.Evidence.Last(finding.Id, network) is not null)
                continue;
            var bits = WhatTells.Bits(hypotheses.Listed, network.Network.Findings[index]);
            if (bits >= LeastBits)
                yield return new(finding.Id, finding.Ask ?? finding.Name, [.. finding.Values.Select(v => new NamedValue(v.Id, WordsFor.Value(finding, v.Id)))], bits);
        }
    }
}
