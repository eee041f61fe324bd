using System.Collections.Immutable;
using Triage.Reasoning.Learning;
using Triage.Reasoning.Networks;

namespace Triage.Reasoning.Tests.Simulation;

/// <summary>The network of a device from learned numbers, as the workshop builds it: π = s · share with share's weight over s.</summary>
static class LearnedNetwork
{
    public static Network On(ImmutableArray<string> device, Learned learned)
    {
        var faults = SixMachines.Notes.Faults;
        var shares = learned.Shares(KnownScope.Of("all", faults.Select(f => f.Id)), device);
        double s = learned.IndependentFaults;
        return new(
            [.. faults.Select(f => new Root(f.Id, [new("good", []), new("faulty", [f.Id])], [1 - s * shares[f.Id].Mean, s * shares[f.Id].Mean]) { PriorWeight = [double.PositiveInfinity, shares[f.Id].Weight / s] })],
            [.. SixMachines.Notes.Findings.Select(finding => Finding(finding, device, learned))]);
    }

    static Finding Finding(KnownFinding finding, ImmutableArray<string> device, Learned learned)
    {
        Distribution ambient = learned.Ambient(finding.Id);
        var links = SixMachines.Notes.Faults.Select((f, r) => (r, Link: learned.Link(f.Id, finding.Id, device))).Where(item => item.Link is not null);
        return new(finding.Id, finding.Values, ambient.Mean, [.. links.Select(item => new Link(item.r, 1, item.Link!.Mean) { Weight = item.Link.Weight })]) { AmbientWeight = ambient.Weight };
    }

    public static Evidence Evidence(JobRecord job) => new()
    {
        Observations = [.. job.Checked.Select(seen => SixMachines.Notes.Findings.Select((f, i) => (f, i)).Single(item => item.f.Id == seen.Finding))
            .Zip(job.Checked, (item, seen) => new Observation(item.i, item.f.Values.IndexOf(seen.Value)))],
    };
}
