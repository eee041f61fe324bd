using System.Collections.Concurrent;
using System.Collections.Immutable;
using Triage.Notes;

namespace Triage.Workshop.Knowledge;

/// <summary>
/// Faults of the program itself, each kept to the note at which it was met: everything else works on, and the check names the note.
/// Safe for several threads.
/// </summary>
internal sealed class Mishaps
{
    /// <summary>More than anybody reads; what is met beyond that is not remembered.</summary>
    private const int Most = 200;

    private readonly ConcurrentDictionary<string, Problem> met = new(StringComparer.Ordinal);

    public ImmutableArray<Problem> All => [.. met.Values.OrderBy(p => p.Path, StringComparer.Ordinal)];

    /// <summary>Works something out for one note, or meets a fault there and goes on without.</summary>
    /// <param name="path">File of the note; empty for a complaint that no note holds.</param>
    /// <param name="doing">What was being done: "counting this job".</param>
    public T Or<T>(string path, string doing, Func<T> work, Func<Problem, T> without)
    {
        try
        {
            return work();
        }
        catch (Exception e) when (e is not (OperationCanceledException or OutOfMemoryException))
        {
            return without(Meet(path, doing, e));
        }
    }

    /// <summary>Notes that one was met.</summary>
    public Problem Meet(string path, string doing, Exception e)
    {
        var problem = new Problem(path.Length > 0 ? path : "the bench", 0, 0, Severity.Error, $"The program failed while {doing} ({e.GetType().Name}: {e.Message}); everything else goes on without it.",
            "Look for something unusual in this note, or send it to whoever looks after the program.");
        if (met.Count < Most)
            met[path] = problem;
        return problem;
    }

    /// <summary>All is worked out anew.</summary>
    public void Clear() => met.Clear();

    /// <summary>What was met at files that have changed since is worked out anew.</summary>
    public void Forget(IEnumerable<string> paths)
    {
        foreach (var path in paths)
            met.TryRemove(path, out _);
    }
}
