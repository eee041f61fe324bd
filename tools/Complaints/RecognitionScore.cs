using System.Collections.Immutable;
using System.Text.Json;
using Triage.Notes.Kinds;
using Triage.Search.Words;

namespace Triage.Complaints;

/// <summary>
/// What was read against what was labelled. A finding whose condition or hedge was lost, or made up, counts half; what no finding says counts as missed.
/// </summary>
/// <param name="findings">Of these it is known which value is normal.</param>
internal sealed class RecognitionScore(IEnumerable<Finding> findings)
{
    private static readonly JsonSerializerOptions Json = new() { PropertyNamingPolicy = JsonNamingPolicy.CamelCase };

    private readonly HashSet<(string, string)> normal = [.. findings.Where(f => !f.Nominal).Select(f => (f.Id, f.Values.IsEmpty ? "no" : f.Values[0].Id))];
    private readonly SortedDictionary<string, (double Right, int Said, int Labelled)> byFinding = new(StringComparer.Ordinal);
    private readonly List<(double Sure, bool Right)> sure = [];
    private int missed, wrong, turnedRound, normals, stating, rightSomewhere;

    public int Complaints { get; private set; }

    public int Labelled => byFinding.Values.Sum(f => f.Labelled) + missed;

    public double Precision => Right / Math.Max(1, Said);

    public double Recall => Right / Math.Max(1, Labelled);

    public double F1 => 2 * Right / Math.Max(1, Said + Labelled);

    /// <summary>Of what is said to be fine, the share that was read as a fault of the same finding, or a fault as fine.</summary>
    public double NegationErrors => (double)turnedRound / Math.Max(1, normals);

    /// <summary>Of complaints that state a symptom, the share with at least one right finding.</summary>
    public double SomethingRight => (double)rightSomewhere / Math.Max(1, stating);

    /// <summary>Share of the findings read that nobody stated.</summary>
    public double WrongFindings => (double)wrong / Math.Max(1, Said);

    private double Right => byFinding.Values.Sum(f => f.Right);

    private int Said => byFinding.Values.Sum(f => f.Said);

    public void Add(LabelledComplaint complaint, IEnumerable<RecognisedFinding> readings)
    {
        Complaints++;
        var read = readings.Select(r => new Label(r.Finding, r.Value, r.When.FirstOrDefault(""), r.Hedged)).DistinctBy(r => (r.Finding, r.Value)).ToImmutableArray();
        var credits = read.Select(r => (r.Finding, Credit: Credit(r, complaint.Labels))).ToImmutableArray();
        foreach (var finding in read.Concat(complaint.Labels).Select(f => f.Finding).Distinct())
        {
            var (right, said, labelled) = byFinding.GetValueOrDefault(finding);
            byFinding[finding] = (right + credits.Where(c => c.Finding == finding).Sum(c => c.Credit), said + read.Count(r => r.Finding == finding), labelled + complaint.Labels.Count(l => l.Finding == finding));
        }

        sure.AddRange(readings.Select(r => (r.Sure, complaint.Labels.Any(l => l.Is(r)))));
        missed += complaint.Missed;
        wrong += credits.Count(c => c.Credit == 0);
        stating += complaint.StatesSomething ? 1 : 0;
        rightSomewhere += credits.Any(c => c.Credit > 0) ? 1 : 0;
        normals += complaint.Labels.Count(IsNormal);
        turnedRound += read.Count(r => !complaint.Labels.Any(l => Same(l, r)) && complaint.Labels.Any(l => l.Finding == r.Finding && IsNormal(l) != IsNormal(r)));
    }

    public string PerFinding() => string.Join('\n', byFinding.Select(f => FormattableString.Invariant($"  {f.Key}: {f.Value.Right} right of {f.Value.Said} read and {f.Value.Labelled} labelled")));

    /// <summary>Of what was taken to be so sure, how much was right.</summary>
    public string PerSureness() => string.Join('\n', sure.GroupBy(s => Math.Min(9, (int)(10 * s.Sure))).OrderBy(g => g.Key)
        .Select(g => FormattableString.Invariant($"  sure {g.Average(s => s.Sure):0.00}: {g.Count(s => s.Right)} right of {g.Count()}")));

    public string ToJson() => JsonSerializer.Serialize(new { Precision = Rounded(Precision), Recall = Rounded(Recall), F1 = Rounded(F1), NegationErrors = Rounded(NegationErrors), Normals = normals, SomethingRight = Rounded(SomethingRight), WrongFindings = Rounded(WrongFindings) }, Json);

    public override string ToString() => FormattableString.Invariant(
        $"{Complaints} complaints: precision {Precision:0.000}, recall {Recall:0.000}, micro-F1 {F1:0.000}; turned round {turnedRound}, of {normals} said to be fine; something right in {SomethingRight:0.000}, wrong findings {WrongFindings:0.000}, no finding for {missed} things stated");

    private bool IsNormal(Label label) => normal.Contains((label.Finding, label.Value));

    private static double Credit(Label read, ImmutableArray<Label> labels) =>
        labels.Where(l => Same(l, read)).Select(l => l.When == read.When && l.Hedged == read.Hedged ? 1 : 0.5).FirstOrDefault();

    private static bool Same(Label one, Label other) => one.Finding == other.Finding && one.Value == other.Value;

    private static double Rounded(double share) => Math.Round(share, 4);
}
