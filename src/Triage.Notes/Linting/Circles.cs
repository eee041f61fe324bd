using Triage.Notes.Kinds;

namespace Triage.Notes.Linting;

/// <summary>Finds orders that go in a circle: steps that each come after the other, damage that leads back to its cause.</summary>
internal static class Circles
{
    public static IEnumerable<(NotePlace Place, ProblemText Text)> Of(NoteIndex index)
    {
        var after = index.Notes.Where(n => n is Test or Reset).ToDictionary(n => n.Id, n => Present(After(n), index));
        var damage = index.Notes.OfType<Fault>().ToDictionary(f => f.Id, f => Present(f.LeadsTo.Select(l => l.Fault), index));
        return Named("after", after, index).Concat(Named("leads-to", damage, index))
            .Concat(index.Notes.SelectMany(AccessCircles));
    }

    private static IEnumerable<string> After(Note note) => note switch
    {
        Test test => test.Effort.After,
        Reset reset => reset.Effort.After,
        _ => [],
    };

    /// <summary>Ids as they are now.</summary>
    private static List<string> Present(IEnumerable<string> ids, NoteIndex index) => [.. ids.Select(id => index.Resolve(id)?.Id ?? id)];

    private static IEnumerable<(NotePlace, ProblemText)> Named(string field, Dictionary<string, List<string>> next, NoteIndex index) =>
        Find(next).Select(circle => (index.Resolve(circle[0])!.Place, NoteProblems.Cycle(field, circle)));

    private static IEnumerable<(NotePlace, ProblemText)> AccessCircles(Note note)
    {
        var steps = note switch
        {
            DeviceClass c => c.Access,
            Device d => d.Access,
            _ => [],
        };
        var behind = steps.DistinctBy(s => s.Id).ToDictionary(s => s.Id, s => s.Behind is { } b ? new List<string> { b } : []);
        return Find(behind).Select(circle => (note.Place, NoteProblems.Cycle("behind", circle)));
    }

    /// <summary>One circle for each step back to something still being followed; the first id is repeated at the end.</summary>
    private static List<List<string>> Find(Dictionary<string, List<string>> next)
    {
        var found = new List<List<string>>();
        var done = new HashSet<string>();
        foreach (var start in next.Keys.Order(StringComparer.Ordinal))
        {
            Follow(start, next, done, found);
        }

        return found;
    }

    /// <summary>Depth first, with a stack of its own: a chain of notes may be long.</summary>
    private static void Follow(string start, Dictionary<string, List<string>> next, HashSet<string> done, List<List<string>> found)
    {
        var path = new List<string>();
        var waiting = new Stack<(string Id, int Depth)>([(start, 0)]);
        while (waiting.TryPop(out var at))
        {
            done.UnionWith(path.Skip(at.Depth));
            path.RemoveRange(at.Depth, path.Count - at.Depth);
            if (path.IndexOf(at.Id) is >= 0 and var back)
            {
                found.Add([.. path.Skip(back), at.Id]);
                continue;
            }

            if (done.Contains(at.Id) || !next.TryGetValue(at.Id, out var ahead))
            {
                continue;
            }

            path.Add(at.Id);
            foreach (var id in ahead)
            {
                waiting.Push((id, path.Count));
            }
        }

        done.UnionWith(path);
    }
}
