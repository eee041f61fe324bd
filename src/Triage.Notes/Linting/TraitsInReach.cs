using Triage.Notes.Kinds;

namespace Triage.Notes.Linting;

/// <summary>Checks that a build names traits and values that a class, which the note is for, lists.</summary>
internal static class TraitsInReach
{
    /// <summary>A value of a trait that is itself missing is not reported besides; a note that reaches no class is for others to name.</summary>
    public static ProblemText? Missing(Note note, Reference reference, NoteIndex index)
    {
        var classes = index.Reach.ClassesOf(note).ToList();
        if (classes.Count == 0)
        {
            return null;
        }

        var traits = classes.SelectMany(c => c.Builds).ToLookup(t => t.Id);
        if (reference.Within is not { } trait)
        {
            return traits.Contains(reference.Id) ? null
                : NoteProblems.NoSuchTrait(reference.Id, classes.Select(c => c.Id), Nearest.To(reference.Id, traits.Select(t => t.Key)));
        }

        var values = traits[trait].SelectMany(t => t.Values).Select(v => v.Id).ToList();
        return values.Count == 0 || values.Contains(reference.Id) ? null : NoteProblems.NotWithin(reference.Kind, reference.Id, trait, Nearest.To(reference.Id, values));
    }
}
