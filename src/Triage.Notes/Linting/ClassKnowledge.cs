using Triage.Notes.Kinds;

namespace Triage.Notes.Linting;

/// <summary>What reaches one class of machine, in any of its builds.</summary>
internal sealed class ClassKnowledge
{
    public ClassKnowledge(DeviceClass machines, NoteIndex index)
    {
        (Class, Index) = (machines, index);
        Faults = [.. index.Reach.FaultsOf(machines).Where(f => CanBe(f.Build) && CanBe(RoleOf(f)?.Build)).OrderBy(f => f.Id, StringComparer.Ordinal)];
        Tests = [.. index.Reach.TestsOf(machines).Where(t => CanBe(t.Build))];
        var shown = Faults.SelectMany(f => f.Shows).Select(s => index.Resolve(s.Finding)).OfType<Finding>();
        Findings = [.. shown.Concat(index.Notes.OfType<Finding>().Where(f => f.Classes.Contains(machines.Id))).Distinct().Where(f => CanBe(f.Build))];
    }

    public DeviceClass Class { get; }

    public NoteIndex Index { get; }

    public IReadOnlyList<Fault> Faults { get; }

    public IReadOnlyList<Test> Tests { get; }

    public IReadOnlyList<Finding> Findings { get; }

    public IEnumerable<Reset> Resets => Index.Notes.OfType<Reset>().Where(r => r.Class == Class.Id && CanBe(r.Build));

    public Role? RoleOf(Fault fault) => Class.Roles.FirstOrDefault(r => r.Id == fault.Role);

    /// <summary>Fixes of the faults that reach it, as the notes that name them define them.</summary>
    public IEnumerable<(Fault Fault, Mend Mend)> Mends =>
        from fault in Faults
        from mend in fault.Mends
        let defined = Index.DefinerOf(mend.Id)?.Mends.First(m => m.Id == mend.Id && m.Name is not null) ?? mend
        where CanBe(defined.Build)
        select (fault, defined);

    /// <summary>Whether a test measures the part that this fault is a failure of.</summary>
    public static bool Measures(Test test, Fault fault) =>
        (test.MeasuresRole ?? test.MeasuresPart) is not null
        && (test.MeasuresRole is null || test.MeasuresRole == fault.Role) && (test.MeasuresPart is null || test.MeasuresPart == fault.Part);

    private bool CanBe(BuildCondition? condition) => condition is null || condition.ChanceOn(Build.Untold, Class.Builds) > 0;
}
