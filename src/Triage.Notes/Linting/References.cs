using Triage.Notes.Kinds;

namespace Triage.Notes.Linting;

/// <summary>Checks that what a note names exists, and is of the kind that it should be.</summary>
internal static class References
{
    public static IEnumerable<Problem> Check(Note note, Reference reference, NoteIndex index)
    {
        if (Missing(note, reference, index) is { } text)
        {
            yield return Linter.At(note.Place.Path, reference.Line, reference.Column, text);
        }
    }

    private static ProblemText? Missing(Note note, Reference reference, NoteIndex index)
    {
        if (reference.Kind is ReferenceKind.Trait or ReferenceKind.TraitValue)
        {
            return TraitsInReach.Missing(note, reference, index);
        }

        if (reference.Within is { } within)
        {
            return NotListed(reference, within, index) ?? (reference.Kind == ReferenceKind.Access ? Unreachable(note, reference, index) : null);
        }

        if (Exists(reference, index))
        {
            return reference.Kind == ReferenceKind.Access ? Unreachable(note, reference, index) : null;
        }

        return index.Resolve(reference.Id) is { } other
            ? NoteProblems.OtherKind(reference.Kind, reference.Id, other.Kind)
            : NoteProblems.Dangling(reference.Kind, reference.Id, index.Suggestions.For(reference.Kind, reference.Id));
    }

    /// <summary>A step that some machine has, but not every one that this note is for.</summary>
    private static ProblemText? Unreachable(Note note, Reference reference, NoteIndex index) =>
        index.Reach.Lacking(note, reference.Id).ToList() is { Count: > 0 } lacking ? NoteProblems.NoSuchStepIn(reference.Id, lacking) : null;

    private static bool Exists(Reference reference, NoteIndex index) => reference.Kind switch
    {
        ReferenceKind.Fix => index.DefinerOf(reference.Id) is not null,
        ReferenceKind.Action => index.DefinerOf(reference.Id) is not null || index.Resolve(reference.Id) is Reset,
        ReferenceKind.Step => index.DefinerOf(reference.Id) is not null || index.Resolve(reference.Id) is { } step && Fits(ReferenceKind.Step, step),
        ReferenceKind.Role => index.Roles.Contains(reference.Id),
        ReferenceKind.Protect => index.ProtectSteps.Contains(reference.Id),
        ReferenceKind.Access => index.AccessSteps.Contains(reference.Id),
        _ => index.Resolve(reference.Id) is { } note && Fits(reference.Kind, note),
    };

    public static bool Fits(ReferenceKind kind, Note note) => kind switch
    {
        ReferenceKind.Note => true,
        ReferenceKind.DeviceClass => note is DeviceClass,
        ReferenceKind.Device => note is Device,
        ReferenceKind.PartClass => note is PartClass,
        ReferenceKind.Fault => note is Fault,
        ReferenceKind.Finding => note is Finding,
        ReferenceKind.Test => note is Test,
        ReferenceKind.Reset or ReferenceKind.Action => note is Reset,
        ReferenceKind.TestOrReset => note is Test or Reset,
        ReferenceKind.Step => note is Finding or Test or Reset,
        ReferenceKind.Fix or ReferenceKind.Role or ReferenceKind.Mode or ReferenceKind.Value or ReferenceKind.Outcome
            or ReferenceKind.Access or ReferenceKind.Trait or ReferenceKind.TraitValue or ReferenceKind.Protect => false,
    };

    /// <summary>A reference into a note that is itself missing is reported once, where that note is named.</summary>
    private static ProblemText? NotListed(Reference reference, string within, NoteIndex index)
    {
        if (index.Resolve(within) is not { } owner || Listed(reference.Kind, owner, index)?.ToList() is not { } listed || listed.Contains(reference.Id))
        {
            return null;
        }

        return NoteProblems.NotWithin(reference.Kind, reference.Id, within, Nearest.To(reference.Id, listed));
    }

    /// <summary>What the owner lists of a kind; null when it is no owner of that kind, or keeps no such list.</summary>
    private static IEnumerable<string>? Listed(ReferenceKind kind, Note owner, NoteIndex index) => (kind, owner) switch
    {
        (ReferenceKind.Value, Finding finding) => finding.Values.Select(v => v.Id),
        (ReferenceKind.Mode, PartClass part) => part.Modes.Select(m => m.Id),
        (ReferenceKind.Mode, Fault fault) => (fault.Part is { } part ? index.Resolve(part) as PartClass : null)?.Modes.Select(m => m.Id) ?? [],
        (ReferenceKind.Outcome, Test { Reveals: { } revealed }) => (index.Resolve(revealed) as Finding)?.Values.Select(v => v.Id),
        (ReferenceKind.Outcome, Test test) => test.Outcomes.Select(o => o.Id),
        (ReferenceKind.Access, Device or DeviceClass) => index.AccessOf(owner),
        (ReferenceKind.Role, Device or DeviceClass) => index.RolesOf(owner),
        _ => null,
    };
}
