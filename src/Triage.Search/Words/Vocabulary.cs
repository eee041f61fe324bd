using System.Collections.Immutable;
using System.Text.RegularExpressions;
using Triage.Notes.Kinds;

namespace Triage.Search.Words;

/// <summary>All phrasings of some findings, and the spelling of their words.</summary>
internal sealed partial class Vocabulary
{
    private readonly Dictionary<string, List<Phrasing>> byStem = [];
    private readonly HashSet<(string Finding, string Value)> normal = [];
    private readonly Spelling spelling;

    public Vocabulary(IEnumerable<Finding> findings, MachineNames machine)
    {
        Machine = machine;
        var said = new HashSet<string>();
        foreach (var finding in findings)
        {
            var values = ValuesOf(finding);
            normal.Add((finding.Id, finding.Nominal ? "" : values[0].Id));
            for (var value = 0; value < values.Length; value++)
            {
                foreach (var says in SaidOf(values[value]))
                {
                    Add(finding with { Values = values }, value, says);
                    said.UnionWith(Plain().Matches(says).Select(m => m.Value.ToLowerInvariant()));
                }
            }
        }

        spelling = new Spelling(said);
    }

    public MachineNames Machine { get; }

    public bool Has(string finding) => normal.Any(n => n.Finding == finding);

    public bool IsNormal(string finding, string value) => normal.Contains((finding, value));

    /// <summary>Word of a phrasing that this misspelling stands for.</summary>
    public string? Correct(string word) => spelling.Correct(word);

    /// <summary>Phrasings whose first stem is among these.</summary>
    /// <param name="deeds">Those that tell of something done, or those that do not.</param>
    public IEnumerable<Phrasing> With(IEnumerable<string> stems, bool deeds) => stems.SelectMany(s => byStem.GetValueOrDefault(s, [])).Where(p => p.IsDeed == deeds);

    /// <summary>To a radio's owner "the radio is dead" speaks of the set, not of its reception.</summary>
    private bool IsOfTheMachine(Phrasing phrasing) =>
        phrasing.Stems.Where(s => !Subjects.WorksOrNot.Contains(s)).ToList() is { Count: > 0 } told && told.Count < phrasing.Stems.Length && Machine.Is(told);

    private void Add(Finding finding, int value, string says)
    {
        foreach (var phrasing in Phrasing.Of(finding, value, says).Where(p => !IsOfTheMachine(p)).Select(p => p with { OfMachine = Machine.Is(p.Stems) }))
        {
            if (!byStem.TryGetValue(phrasing.Stems[0], out var list))
            {
                byStem[phrasing.Stems[0]] = list = [];
            }

            list.Add(phrasing);
        }
    }

    /// <summary>The name of a value is the bench's word for it: it is no phrasing where the note has some.</summary>
    private static IEnumerable<string> SaidOf(FindingValue value) =>
        value.Says.IsEmpty ? [value.Name] : value.Says.Distinct(StringComparer.OrdinalIgnoreCase);

    private static ImmutableArray<FindingValue> ValuesOf(Finding finding) => finding.Values.IsEmpty
        ? [new("no", "", [], null), new("yes", finding.Name, [], null)]
        : finding.Values;

    [GeneratedRegex(@"\p{L}{4,}")]
    private static partial Regex Plain();
}
