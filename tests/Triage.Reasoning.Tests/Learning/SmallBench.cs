using System.Collections.Immutable;
using Triage.Reasoning.Learning;

namespace Triage.Reasoning.Tests.Learning;

/// <summary>A small world for tests: supply and regulator faults of one device class, a lamp (ordered), a sound (three ordered values), a blink code (nominal).</summary>
static class SmallBench
{
    public static readonly ImmutableArray<string> OwnDevice = ["K-10", "keyboard"];
    public static readonly ImmutableArray<string> OtherDevice = ["K-20", "keyboard"];
    public static readonly ImmutableArray<string> None = [];

    /// <summary>Pooling as given, whatever the jobs say: numbers can be worked by hand.</summary>
    public static readonly LearnerSettings Fixed = new() { PoolingSpread = 0 };

    public static readonly Knowledge Notes = new()
    {
        Faults =
        [
            new("fuse-open", "fuse/open", 3, 4) { Shows = [new("lamp", [0.1, 0.9], 10)] },
            new("regulator-short", "regulator/short", 1, 4) { Shows = [new("sound", [0.2, 0.3, 0.5], 6), new("code", [0.1, 0.8, 0.1], 5)] },
            new("second-regulator-short", "regulator/short", 1, 4),
            new("jack-loose", null, 0, 0),
        ],
        Findings =
        [
            new("lamp", ["lit", "dark"], false, [0.9, 0.1], 10),
            new("sound", ["clear", "weak", "none"], false, [0.8, 0.1, 0.1], 10),
            new("code", ["0", "1", "2"], true, [0.5, 0.25, 0.25], 10),
        ],
        Actions =
        [
            new("cold-start", [new("regulator-short", new(0.5, 2), new(0.5, 2)), new("fuse-open", new(0.25, 4), new(0.5, 2))]),
        ],
    };

    /// <summary>The same with three sorts of machine: of the last nobody knows whether it has the jack.</summary>
    public static readonly Knowledge Scoped = Notes with
    {
        Scopes =
        [
            KnownScope.Of("keyboard", ["fuse-open", "regulator-short", "jack-loose"]),
            KnownScope.Of("deck", ["regulator-short", "second-regulator-short"]),
            new("radio", KnownScope.Of("radio", ["fuse-open", "regulator-short"]).Availability.Add("jack-loose", 0.4)),
        ],
    };

    public static JobRecord Job(string id, string cause, params (string Finding, string Value)[] seen) => new()
    {
        Id = id,
        Closed = DateTimeOffset.UnixEpoch,
        Levels = OwnDevice,
        Causes = [new(cause)],
        Weight = 1,
        Checked = [.. seen.Select(s => new CheckedFinding(s.Finding, s.Value))],
    };

    public static Learned Learn(params IEnumerable<JobRecord> jobs) => Learner.Learn(Notes, jobs, Fixed);

    /// <summary>Jobs of every sort, from a seed: several devices, grades, uncertain, double and new causes, partial checks, actions.</summary>
    public static ImmutableArray<JobRecord> Random(int seed, int count)
    {
        var random = new Random(seed);
        return [.. Enumerable.Range(0, count).Select(i => Random(random, $"job-{i}"))];
    }

    /// <summary>The same on machines of all sorts, known and unknown.</summary>
    public static ImmutableArray<JobRecord> RandomScoped(int seed, int count)
    {
        var random = new Random(seed + 1);
        return [.. Random(seed, count).Select(job => job with { Scope = random.Next(5) switch { 0 => "", 1 => "radio", _ => job.Levels[^1] } })];
    }

    static JobRecord Random(Random random, string id)
    {
        string[] faults = [.. Notes.Faults.Select(f => f.Id), "never-seen"];
        random.Shuffle(faults);
        return new()
        {
            Id = id,
            Closed = DateTimeOffset.UnixEpoch.AddDays(random.Next(40)),
            Levels = random.Next(3) switch { 0 => OwnDevice, 1 => OtherDevice, _ => ["deck"] },
            Causes = random.Next(4) switch
            {
                0 => [new(faults[0]), new(faults[1], random.NextDouble())],
                1 => [new(faults[0], 0.7), new(faults[1], 0.3)],
                2 => [new(faults[0], 1, faults[0] == "never-seen")],
                _ => [new(faults[0])],
            },
            Weight = random.Next(1, 11) / 10.0,
            Checked = [.. Notes.Findings.Where(_ => random.Next(2) == 0).Select(f => new CheckedFinding(f.Id, f.Values[random.Next(f.Values.Length)]))],
            Tried = random.Next(2) == 0 ? [] : [new("cold-start", random.Next(2) == 0, random.Next(2) == 0 ? null : true, random.Next(3) * 20)],
        };
    }

    /// <summary>Every number there is, in a fixed order.</summary>
    public static double[] Everything(this Learned learned) =>
    [
        learned.JobsCounted,
        learned.IndependentFaults,
        .. from levels in (ImmutableArray<string>[])[OwnDevice, OtherDevice, ["deck"], None]
           from number in AtLevels(learned, levels)
           select number,
        .. from finding in Notes.Findings from number in Numbers(learned.Ambient(finding.Id)) select number,
        .. from fault in Notes.Faults
           from estimate in (Estimate?[])[learned.Works("cold-start", fault.Id), learned.Holds("cold-start", fault.Id)]
           select estimate?.Mean ?? -1,
    ];

    static IEnumerable<double> AtLevels(Learned learned, ImmutableArray<string> levels) =>
    [
        learned.UnlistedShare(levels).Mean,
        .. from fault in Notes.Faults let share = learned.Share(fault.Id, levels) from number in (double[])[share.Mean, share.Weight] select number,
        .. LinksAt(learned, levels),
    ];

    public static IEnumerable<double> LinksAt(Learned learned, ImmutableArray<string> levels) =>
        from fault in Notes.Faults
        from finding in Notes.Findings
        from number in Numbers(learned.Link(fault.Id, finding.Id, levels))
        select number;

    static IEnumerable<double> Numbers(Distribution? distribution) => distribution is null ? [-1] : [.. distribution.Mean, distribution.Weight];
}
