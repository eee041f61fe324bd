using Triage.Notes.Kinds;
using Triage.Workshop.Knowledge;

namespace Triage.Tools.Exam.Playing;

/// <summary>What a machine shows where nobody said anything else: the normal thing, unless a fault that is there makes that a lie.</summary>
internal sealed class NormalThing(Notebook notes)
{
    private static readonly double Often = FrequencyWords.Table["often"];

    /// <param name="faults">Faults that are still there.</param>
    /// <returns>One of the choices; null where it cannot be told.</returns>
    public string? Of(Asked asked, IEnumerable<Fault> faults) =>
        asked.Finding is { } finding ? OfFinding(notes.Find<Finding>(finding)!, faults)
        : notes.Find<Test>(asked.Id) is { } test ? OfMeasurement(test, faults)
        : asked.Choices[0].Id;

    private string? OfFinding(Finding finding, IEnumerable<Fault> faults)
    {
        var normal = finding.Nominal ? finding.Values.MaxBy(v => v.Anyway?.Probability ?? 1)!.Id : finding.Values[0].Id;
        return faults.Any(f => Abnormal(f, finding, normal) >= Often) ? null : normal;
    }

    private double Abnormal(Fault fault, Finding finding, string normal) =>
        fault.Shows.Where(s => notes.Today(s.Finding) == finding.Id && (s.Value ?? finding.Values[^1].Id) != normal).Sum(s => s.Chance.Probability);

    private string? OfMeasurement(Test test, IEnumerable<Fault> faults)
    {
        var normal = Likeliest(test, "good", "absent");
        return faults.Any(f => StateIn(test, f) is { } state && Likeliest(test, state, "present") != normal) ? null : normal;
    }

    /// <summary>Name under which the test knows the state that a fault puts its part in; null when it says nothing of that fault.</summary>
    private string? StateIn(Test test, Fault fault) =>
        test.Decides == fault.Id ? "present"
        : test.Decides is { } decided ? notes.Find<Fault>(decided) is { } other && (other.Part, other.Role) == (fault.Part, fault.Role) && test.Outcomes.Any(o => o.Given.ContainsKey(fault.Mode ?? "")) ? fault.Mode : null
        : fault.Part is not null && test.MeasuresPart == fault.Part && (test.MeasuresRole is null || test.MeasuresRole == fault.Role) ? fault.Mode
        : null;

    /// <summary>The outcome with the highest chance under a state of the part, by either of its names.</summary>
    private static string Likeliest(Test test, params string[] states) =>
        test.Outcomes.MaxBy(o => states.Append("otherwise").Select(s => o.Given.GetValueOrDefault(s)?.Probability).FirstOrDefault(p => p is not null) ?? 0)!.Id;
}
