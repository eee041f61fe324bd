using System.Text.RegularExpressions;
using Triage.Search.Queries;

namespace Triage.SearchBench;

/// <summary>Something people type, with the filters they choose.</summary>
/// <param name="Sort">What sort of question it is, in the table.</param>
internal sealed partial record Question(string Sort, string Text)
{
    public string? Kind { get; init; }

    public string? Device { get; init; }

    public string? Outcome { get; init; }

    public SearchQuery ForProduct => new(Text) { Kinds = Any(Kind), Devices = Any(Device), Outcomes = Any(Outcome) };

    /// <summary>In the language of FTS5: phrases as they are, words as alternatives.</summary>
    public string Match => string.Join(" OR ", Pieces().Matches(Text).Select(m => m.Value.StartsWith('"') ? m.Value : $"\"{m.Value}\""));

    private static System.Collections.Immutable.ImmutableArray<string> Any(string? value) => value is null ? [] : [value];

    [GeneratedRegex("\"[^\"]+\"|[^\\s\"]+")]
    private static partial Regex Pieces();
}
