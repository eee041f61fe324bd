using Triage.Notes.Kinds;
using Triage.Workshop.Knowledge;

namespace MadeUpJobs;

/// <summary>One invented machine with what is truly wrong with it, and what it would show if one looked.</summary>
/// <param name="Shown">Value of every finding of its class.</param>
internal sealed record SickMachine(DeviceScope Scope, Fault Cause, Fault[] Damage, IReadOnlyDictionary<string, string> Shown)
{
    /// <summary>Draws a cause by its share in the hidden truth, then damage that follows, then every finding: the worst that any cause produces.</summary>
    /// <param name="truth">What multiplies the share that a note believes in.</param>
    public static SickMachine Draw(DeviceScope scope, Notebook notes, IReadOnlyDictionary<string, double> truth, Random random)
    {
        var cause = random.Weighted(scope.Faults, fault => (fault.Share?.Probability ?? 0.01) * truth[fault.Id]);
        Fault[] damage =
        [
            .. cause.LeadsTo.Where(next => random.Happens(next.Chance.Probability))
                .Select(next => scope.Faults.FirstOrDefault(f => f.Id == next.Fault)).OfType<Fault>(),
        ];
        return new(scope, cause, damage, scope.Findings.ToDictionary(f => f.Id, f => Value(f, [cause, .. damage], notes, random)));
    }

    public Fault[] Faults => [Cause, .. Damage];

    /// <summary>Whether the finding is not what a good machine shows.</summary>
    public bool IsOdd(Finding finding) => Shown[finding.Id] != finding.Values[0].Id;

    /// <summary>What a finding shows, in words: "display blank", or the finding's own name where the answer is only yes.</summary>
    public string InWords(Finding finding)
    {
        var value = finding.Values.First(v => v.Id == Shown[finding.Id]);
        return value.Id is "yes" || value.Name == value.Id ? finding.Name : value.Name;
    }

    /// <summary>What a test says of this machine; null when the notes do not tell.</summary>
    public string? Outcome(Test test, Random random)
    {
        if (test.Reveals is { } finding)
            return Shown.GetValueOrDefault(finding);
        var fault = Faults.FirstOrDefault(f => f.Role == test.MeasuresRole && f.Part is not null);
        var modes = new[] { fault?.Mode, fault is null ? null : "otherwise", "good", "otherwise" };
        double Chance(TestOutcome outcome) => modes.OfType<string>().Select(m => outcome.Given.GetValueOrDefault(m)?.Probability).FirstOrDefault(p => p is not null) ?? 0.02;
        return test.Outcomes.IsEmpty ? null : random.Weighted(test.Outcomes, Chance).Id;
    }

    private static string Value(Finding finding, Fault[] faults, Notebook notes, Random random)
    {
        var order = finding.Values.Select(v => v.Id).ToList();
        var worst = 0;
        foreach (var shows in faults.SelectMany(f => f.Shows).Where(s => notes.Today(s.Finding) == finding.Id && random.Happens(s.Chance.Probability)))
            worst = Math.Max(worst, shows.Value is null ? order.Count - 1 : order.IndexOf(shows.Value));
        foreach (var (value, at) in finding.Values.Select((v, i) => (v, i)).Skip(1))
        {
            if (value.Anyway is { } anyway && random.Happens(anyway.Probability))
                worst = Math.Max(worst, at);
        }

        return order[worst];
    }
}
