using System.Collections.Immutable;
using Triage.Reasoning.Learning;

namespace Triage.Reasoning.Tests.Simulation;

/// <summary>What the notes of the simulated workshop say: three classes with two devices each, whose faults are shared by role; capacitors and joints in two roles.</summary>
static class SixMachines
{
    public const double ShareWeight = 6;

    public static readonly ImmutableArray<ImmutableArray<string>> Devices =
    [
        ["deck-1", "deck"], ["deck-2", "deck"], ["keyboard-1", "keyboard"], ["keyboard-2", "keyboard"], ["drum-1", "drum"], ["drum-2", "drum"],
    ];

    public static readonly Knowledge Notes = new()
    {
        Faults =
        [
            Fault("supply-capacitor-dry", "capacitor/dry", 3, ("hum", [0.2, 0.3, 0.5]), ("starts", [0.6, 0.4])),
            Fault("backup-capacitor-dry", "capacitor/dry", 2, ("hum", [0.2, 0.3, 0.5]), ("starts", [0.6, 0.4])),
            Fault("jack-joint-cracked", "joint/cracked", 2, ("crackle", [0.3, 0.7]), ("sound", [0.5, 0.2, 0.3])),
            Fault("switch-joint-cracked", "joint/cracked", 1, ("crackle", [0.3, 0.7]), ("sound", [0.5, 0.2, 0.3])),
            Fault("fuse-open", "fuse/open", 2, ("starts", [0.05, 0.95]), ("lamp", [0.1, 0.9])),
            Fault("regulator-short", "regulator/short", 1, ("lamp", [0.4, 0.6]), ("warm", [0.3, 0.7]), ("starts", [0.3, 0.7])),
            Fault("amplifier-short", "amplifier/short", 2, ("sound", [0.1, 0.2, 0.7]), ("warm", [0.5, 0.5])),
        ],
        Findings =
        [
            Finding("starts", "yes", "no"), Finding("lamp", "lit", "dark"), Finding("crackle", "no", "yes"),
            Finding("warm", "no", "yes"), Finding("hum", "none", "weak", "strong"), Finding("sound", "clear", "weak", "none"),
        ],
        Actions = [new("mend", [.. Ids.Select(id => new KnownClearing(id, new(0.8, 2), new(0.8, 2)))])],
    };

    static IEnumerable<string> Ids =>
        ["supply-capacitor-dry", "backup-capacitor-dry", "jack-joint-cracked", "switch-joint-cracked", "fuse-open", "regulator-short", "amplifier-short"];

    static KnownFault Fault(string id, string group, double share, params (string Finding, double[] Produces)[] shows) =>
        new(id, group, share, ShareWeight) { Shows = [.. shows.Select(s => new KnownLink(s.Finding, [.. s.Produces], 8))] };

    static KnownFinding Finding(string id, params string[] values) =>
        new(id, [.. values], false, [0.97, .. values.Skip(1).Select(_ => 0.03 / (values.Length - 1))], 30);
}
