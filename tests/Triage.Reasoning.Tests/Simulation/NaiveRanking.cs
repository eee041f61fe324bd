using Triage.Reasoning.Learning;

namespace Triage.Reasoning.Tests.Simulation;

/// <summary>P(fault | findings, exactly one fault) from learned numbers, findings independent given the fault.</summary>
static class NaiveRanking
{
    public static IReadOnlyDictionary<string, double> Of(Learned learned, JobRecord unit)
    {
        string[] faults = [.. SixMachines.Notes.Faults.Select(fault => fault.Id)];
        var shares = learned.Shares(KnownScope.Of("all", faults), unit.Levels);
        double unlisted = learned.UnlistedShare(unit.Levels).Mean;
        var chances = faults.Select(fault => (fault, Chance: (1 - unlisted) * shares[fault].Mean * Likelihood(learned, unit, fault))).ToDictionary(item => item.fault, item => item.Chance);
        // what is not listed shows anything as likely as not
        chances[Prequential.Unlisted] = unlisted * unit.Checked.Aggregate(1.0, (product, seen) => product / Finding(seen).Values.Length);
        return chances;
    }

    static double Likelihood(Learned learned, JobRecord unit, string fault) => unit.Checked.Aggregate(1.0, (product, seen) =>
        product * Math.Max(1e-6, (learned.Seen(fault, seen.Finding, unit.Levels) ?? learned.Ambient(seen.Finding)).Mean[Finding(seen).Values.IndexOf(seen.Value)]));

    static KnownFinding Finding(CheckedFinding seen) => SixMachines.Notes.Findings.Single(finding => finding.Id == seen.Finding);
}
