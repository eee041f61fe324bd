using System.Collections.Immutable;

namespace Triage.Workshop.Exchange.Importing;

/// <summary>What a map makes of each column, in words.</summary>
internal static class ColumnUses
{
    public static ImmutableArray<ColumnUse> Of(ColumnMap map, ImmutableArray<string> header) =>
        [.. header.Select(column => new ColumnUse(column, string.Join(", ", Uses(map, column).DefaultIfEmpty(Other(map)))))];

    private static IEnumerable<string> Uses(ColumnMap map, string column)
    {
        (string? Column, string Use)[] named =
        [
            (map.Id.Column, "id of the job"), (map.Class.Column, "kind of machine"), (map.Device, "device"), (map.Unit, "what it says on the machine"),
            (map.Opened?.Column, "when it came in"), (map.Closed.Column, "when it was done"), (map.Complaint, "complaint"),
            (map.Cause, $"cause, {Notes.Words.Of(map.Grade)}"), (map.Outcome.Column, "how it ended"),
        ];
        return named.Where(n => n.Column == column).Select(n => n.Use)
            .Concat(map.Findings.Where(f => f.Column == column).Select(_ => "finding"))
            .Concat(map.Text.Contains(column) ? ["text below the job"] : [])
            .Concat(map.Ignore.Contains(column) ? ["left out"] : []);
    }

    private static string Other(ColumnMap map) => map.Others switch
    {
        OtherColumns.Text => "text below the job",
        OtherColumns.Finding => "finding",
        OtherColumns.Ignore => "left out",
    };
}
