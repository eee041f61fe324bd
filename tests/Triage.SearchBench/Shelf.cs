using Triage.Notes.Kinds;
using Triage.Search;
using Triage.Search.Indexing;
using Triage.Search.Queries;

namespace Triage.SearchBench;

/// <summary>The product's index, filled and changed as the open books do it.</summary>
internal static class Shelf
{
    public static void Fill(NoteIndex index, IReadOnlyList<Note> notes, Func<string, Note?> find)
    {
        index.AddAll(notes, n => IndexedNote.From(n, find));
        index.Synonyms = SynonymRings.From(notes.Where(n => n is not Job));
        index.Refresh();
    }

    /// <summary>Files a job again with a word that no other has, and asks for that word.</summary>
    /// <returns>Whether it was found.</returns>
    public static bool SaveAndFind(NoteIndex index, Job job, string word, Func<string, Note?> find)
    {
        index.Remove($"bench/jobs/{job.Id}.md");
        index.Remove(job.Id);
        index.Put(IndexedNote.From(job with { Body = $"{job.Body}\n{word}\n" }, find));
        index.Refresh();
        using var searcher = index.OpenSearcher();
        return searcher.Search(new(word)).Hits is [{ } hit, ..] && hit.Id == job.Id;
    }
}
