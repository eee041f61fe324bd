using System.Collections.Immutable;
using Triage.Notes.Kinds;
using Triage.Workshop.Jobs;
using Triage.Workshop.Knowledge;

namespace Triage.Workshop.Steps;

/// <summary>New notes as a job gives rise to them: of its machine's class, and saying where they came from.</summary>
internal sealed class FromJob(Notebook known, Job job)
{
    private string? Class => known.Find<Device>(job.Device)?.Class ?? job.Class;

    private string Origin => $"First met in [{job.Name}](note:{job.Id}).\n";

    /// <summary>Often shows what this machine showed: whoever writes it down says so, and one job alone would drown among many.</summary>
    /// <param name="part">Part class; null for a fault that is no part's.</param>
    /// <param name="fix">What mends it, in words; null when nobody knows yet.</param>
    public Fault Fault(string words, string? part = null, string? fix = null) => new(FreeId(words), words)
    {
        Part = part,
        Class = Class,
        Shows = [.. Odd().Select(seen => new Shows(seen.Finding, seen.Value, FrequencyWords.Find("often")!) { When = seen.When })],
        Mends = fix is null ? [] : [new(FreeId(fix), fix, FrequencyWords.Find("usually")!) { Effort = new() { Minutes = UsualMinutes }, Needs = part }],
        Body = Origin,
    };

    /// <summary>Two values: not so, and so in the words given.</summary>
    public Finding Finding(string words, ImmutableArray<string> says) => new(FreeId(words), words)
    {
        Values = [new("no", $"not: {words}", [], null), new("yes", words, says, FrequencyWords.Find("rarely")!)],
        Classes = Class is null ? [] : [Class],
        Body = Origin,
    };

    public Test Test(NewTest test) => new(FreeId(test.Name), test.Name)
    {
        Way = test.Way ?? TestWay.Look,
        Reveals = test.Reveals,
        Effort = new() { Minutes = test.Takes, Power = test.Power ?? PowerStage.Cold, Cautions = test.Caution is null ? [] : [new(Hazard.Other, test.Caution)] },
        Steps = test.Steps,
        Classes = Class is null ? [] : [Class],
        Body = Origin,
    };

    public Device Device(string name, string? maker, string @class) => new(FreeId(name), name) { Maker = maker, Class = @class, Body = Origin };

    /// <summary>Common practice, no source: a small repair behind one cover.</summary>
    private const double UsualMinutes = 30;

    /// <summary>What was not as it should be before anything was mended.</summary>
    private IEnumerable<Saw> Odd() =>
        job.Log.AsItCameIn().OfType<Saw>()
            .Where(seen => known.Find<Finding>(seen.Finding) is { Nominal: false } finding && finding.Values[0].Id != seen.Value)
            .DistinctBy(seen => seen.Finding);

    private string FreeId(string words)
    {
        var id = NoteIds.From(words, "note");
        var free = id;
        for (var n = 2; known.Find<Note>(free) is not null; n++)
            free = FormattableString.Invariant($"{id}-{n}");
        return free;
    }
}
