using System.Collections.Immutable;
using Triage.Notes.Kinds;

namespace Triage.Cli.Paper;

/// <summary>What can hurt somebody, before the step that meets it.</summary>
internal static class Cautions
{
    public static void Write(Sheet paper, ImmutableArray<Caution> cautions, int indent = 2)
    {
        foreach (var caution in cautions)
            paper.Item("!", caution.Say + (caution.HandOver ? " Not at this bench: hand it over to someone licensed." : ""), indent, Sheet.Warning);
    }
}
