using Triage.Notes.Kinds;

namespace Triage.Search.Tests.Words;

/// <summary>Precision and recall of what was read against what was labelled, over all findings and for each.</summary>
internal sealed class RecognitionScore(IEnumerable<Finding> findings)
{
    private readonly HashSet<(string, string)> normal = [.. findings.Where(f => !f.Nominal).Select(f => (f.Id, f.Values.IsEmpty ? "no" : f.Values[0].Id))];
    private readonly SortedDictionary<string, (int Right, int Said, int Labelled)> byFinding = new(StringComparer.Ordinal);
    private (int Right, int Said, int Labelled, int Opposite) denied;

    public int Complaints { get; private set; }

    public int Labelled => byFinding.Values.Sum(f => f.Labelled);

    public double Precision => (double)Right / Said;

    public double Recall => (double)Right / Labelled;

    public double F1 => 2 * Precision * Recall / (Precision + Recall);

    /// <summary>Normal values read where another value of the same finding was said, as a share of the normal values read.</summary>
    public double NegationErrors => (double)denied.Opposite / denied.Said;

    private int Right => byFinding.Values.Sum(f => f.Right);

    private int Said => byFinding.Values.Sum(f => f.Said);

    public void Add(HeldOutComplaint complaint, IReadOnlySet<(string Finding, string Value)> read)
    {
        Complaints++;
        foreach (var finding in read.Concat(complaint.Labels).Select(f => f.Finding).Distinct())
        {
            var (right, said, labelled) = byFinding.GetValueOrDefault(finding);
            byFinding[finding] = (
                right + read.Count(r => r.Finding == finding && complaint.Labels.Contains(r)),
                said + read.Count(r => r.Finding == finding),
                labelled + complaint.Labels.Count(l => l.Finding == finding));
        }

        denied.Right += read.Count(r => normal.Contains(r) && complaint.Labels.Contains(r));
        denied.Said += read.Count(normal.Contains);
        denied.Labelled += complaint.Labels.Count(normal.Contains);
        denied.Opposite += read.Count(r => normal.Contains(r) && !complaint.Labels.Contains(r) && complaint.Labels.Any(l => l.Finding == r.Finding));
    }

    public string PerFinding() => string.Join('\n', byFinding.Select(f => $"  {f.Key}: {f.Value.Right} right of {f.Value.Said} read and {f.Value.Labelled} labelled"));

    public override string ToString() => FormattableString.Invariant(
        $"precision {Precision:0.000}, recall {Recall:0.000}, micro-F1 {F1:0.000}; normal values: {denied.Right} right of {denied.Said} read and {denied.Labelled} labelled, {denied.Opposite} where the opposite was said");
}
