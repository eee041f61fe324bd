using System.Collections.Immutable;
using Triage.Notes.Kinds;
using Triage.Workshop.Knowledge;

namespace Triage.Workshop.Reviews;

/// <summary>What a test cost and found in closed jobs.</summary>
/// <param name="Test">Test id.</param>
/// <param name="Done">Times done.</param>
/// <param name="Found">Times its outcome was not the normal one: a finding shown, a part not measured good.</param>
/// <param name="Minutes">Bench minutes of one, as its note says, without opening anything.</param>
/// <param name="Jobs">Ids of the jobs in which it found something, newest first.</param>
public sealed record TestRecord(string Test, string Name, int Done, int Found, double Minutes, ImmutableArray<string> Jobs)
{
    /// <summary>Minutes spent on it for each time it found something; infinite while it never did.</summary>
    public double MinutesPerFind => Found == 0 ? double.PositiveInfinity : Done * Minutes / Found;

    /// <param name="jobs">Newest first.</param>
    internal static ImmutableArray<TestRecord> Of(IReadOnlyList<Job> jobs, Notebook notes) =>
    [
        .. from job in jobs
           from done in job.Log.OfType<Tested>()
           let test = notes.Find<Test>(done.Test)
           where test is not null
           group (job.Id, Found: IsFind(test, done.Outcome, notes)) by test into all
           let found = all.Where(a => a.Found).ToList()
           let record = new TestRecord(all.Key.Id, all.Key.Name, all.Count(), found.Count, all.Key.Effort.Minutes, [.. found.Select(f => f.Id).Distinct()])
           orderby record.MinutesPerFind, record.Done descending, record.Test
           select record,
    ];

    /// <summary>A measurement's outcome is a find unless a good part gives it more often than not.</summary>
    private static bool IsFind(Test test, string outcome, Notebook notes) =>
        notes.Find<Finding>(test.Reveals) is { } finding
            ? finding.Nominal || finding.Values[0].Id != outcome
            : test.Outcomes.FirstOrDefault(o => o.Id == outcome) is { } came && !(came.Given.GetValueOrDefault("good")?.Probability > 0.5);
}
