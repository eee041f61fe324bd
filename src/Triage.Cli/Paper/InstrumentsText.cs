using System.Collections.Immutable;
using Triage.Workshop.Knowledge;

namespace Triage.Cli.Paper;

/// <summary>Meters and testers as they were set up.</summary>
internal static class InstrumentsText
{
    public static void Write(Sheet paper, ImmutableArray<TypedInstrument> instruments)
    {
        if (instruments.IsEmpty)
            paper.Say("None set up: an ordinary 2000-count meter with a component tester is assumed.");
        foreach (var meter in instruments)
        {
            paper.Title(meter.Name);
            if (meter.Kind is { } kind)
                paper.Field("is a", kind);
            paper.Field("loads with", meter.Input ?? "");
            if (meter.Burden is { } burden)
                paper.Field("drops", burden);
            foreach (var range in meter.Ranges)
                paper.Field("range", range);
            if (!meter.Cannot.IsEmpty)
                paper.Field("cannot", string.Join(", ", meter.Cannot));
        }
    }
}

/// <summary>What --json says of instruments.</summary>
internal sealed record InstrumentsPage(ImmutableArray<TypedInstrument> Instruments);
