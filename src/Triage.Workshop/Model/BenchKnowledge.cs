using System.Collections.Concurrent;
using Triage.Notes.Kinds;
using Triage.Reasoning.Learning;
using Triage.Workshop.Knowledge;

namespace Triage.Workshop.Model;

/// <summary>What answers rest on at one moment: notes, settings and learned numbers. Immutable.</summary>
internal sealed class BenchKnowledge(Notebook notes, CountedJobs counted, BenchSettings settings, Mishaps mishaps)
{
    // what no complaint changes is worked out once a snapshot
    private readonly ConcurrentDictionary<(string? Device, string Class, Build Told), DeviceScope> scopes = new();
    private readonly ConcurrentDictionary<string, CountedJobs> lacking = new(StringComparer.Ordinal);

    public Notebook Notes { get; } = notes;

    public CountedJobs Counted { get; } = counted;

    public BenchSettings Settings { get; } = settings;

    /// <summary>Where the program itself failed.</summary>
    public Mishaps Mishaps { get; } = mishaps;

    public Learned Learned => Counted.Learned;

    /// <summary>What applies to the machine of a job; null when no note knows it.</summary>
    public DeviceScope? ScopeOf(Job job)
    {
        var device = Notes.Find<Device>(job.Device);
        return Notes.Find<DeviceClass>(device?.Class ?? job.Class) is { } kind
            ? scopes.GetOrAdd((device?.Id, kind.Id, job.Build), _ => DeviceScope.Of(Notes, device, kind, job.Build))
            : null;
    }

    /// <summary>The learned numbers with one closed job left out.</summary>
    public CountedJobs CountedWithout(string id) => lacking.GetOrAdd(id, Counted.Without);

    /// <summary>The same with one closed job left out of the learned numbers.</summary>
    public BenchKnowledge Without(string id) => new(Notes, CountedWithout(id), Settings, Mishaps);
}
