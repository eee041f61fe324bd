using System.Collections.Immutable;
using Triage.Notes.Kinds;
using Triage.Reasoning.Learning;
using Triage.Reasoning.Networks;
using Triage.Workshop.Knowledge;

namespace Triage.Workshop.Model;

/// <summary>Faults become roots: the failure modes of one part in one role exclude each other; damage that follows ties parts together.</summary>
internal static class RootsFromNotes
{
    /// <param name="shares">Share of each fault among causes, the unlisted one and nothing wrong included; sums to 1.</param>
    /// <param name="independentFaults">The factor s of π = s · share.</param>
    public static List<Root> Build(DeviceScope scope, Dictionary<string, Estimate> shares, double independentFaults)
    {
        if (scope.Class.Exact)
            return Published(scope.Faults);
        // π = s · share is as uncertain as the share: the same number of cases behind it, among 1 / s times as many machines
        Estimate Prior(string fault) => new(shares[fault].Mean * independentFaults, shares[fault].Weight / independentFaults);
        var parts = scope.Faults.GroupBy(PartOf, StringComparer.Ordinal)
            .Select(g => new FaultyPart(g.Key, [.. g.Select(f => new FaultMode(f.Id, Prior(f.Id)) { Given = f.Given })])).ToList();
        var tied = TiedParts.Group(parts, scope.Faults);
        return
        [
            .. tied.Select(Root),
            Plain(new(SpecialFaults.NothingWrong, [new(SpecialFaults.NothingWrong, Prior(SpecialFaults.NothingWrong))])),
            Plain(new(SpecialFaults.Unlisted, [new(SpecialFaults.Unlisted, Prior(SpecialFaults.Unlisted))])),
        ];
    }

    /// <summary>A published network: priors as they stand, nothing added.</summary>
    private static List<Root> Published(ImmutableArray<Fault> faults)
    {
        var parts = faults.GroupBy(PartOf, StringComparer.Ordinal)
            .Select(g => new FaultyPart(g.Key, [.. g.Select(f => new FaultMode(f.Id, new(f.Share?.Probability ?? 0, double.PositiveInfinity)) { Given = f.Given })])).ToList();
        return [.. TiedParts.Group(parts, faults).Select(Root)];
    }

    private static Root Root(TiedParts group) => group.Parts.Length == 1 ? Plain(group.Parts[0]) : TiedRoot.Of(group);

    /// <summary>One part in one role; a fault that is no part's stands alone.</summary>
    private static string PartOf(Fault fault) =>
        fault.Part is null || fault.Mode is null ? fault.Id : fault.Role is null ? fault.Part : $"{fault.Role}/{fault.Part}";

    private static Root Plain(FaultyPart part)
    {
        double[] modes = [.. part.Modes.Select(m => m.Prior.Mean)];
        return new(part.Id, [new("good", []), .. part.Modes.Select(m => new RootState(m.Fault, [m.Fault]))], [1 - modes.Sum(), .. modes])
        {
            PriorWeight = [double.PositiveInfinity, .. part.Modes.Select(m => m.Prior.Weight)],
        };
    }
}

/// <param name="Id">Role and part, or the fault itself.</param>
internal sealed record FaultyPart(string Id, ImmutableArray<FaultMode> Modes);

internal sealed record FaultMode(string Fault, Estimate Prior)
{
    /// <summary>Explicit conditional table in place of the prior; empty when there is none.</summary>
    public ImmutableArray<GivenRow> Given { get; init; } = [];
}
