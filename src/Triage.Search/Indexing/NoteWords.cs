using System.Collections.Immutable;
using Triage.Notes.Kinds;
using Triage.Notes.Markdown;

namespace Triage.Search.Indexing;

/// <summary>Chooses, kind by kind, which words of a note go into which field.</summary>
internal sealed class NoteWords(Func<string, Note?> find)
{
    public IndexedNote Of(Note note)
    {
        var common = new IndexedNote(note.Id, Written.As(note.Kind), note.Name)
        {
            Names = [note.Id, note.Name, .. note.Also, .. note.Formerly],
            WholeNames = [note.Id, note.Name, .. note.Also, .. note.Formerly],
            Body = NoteMarkdown.PlainText(note.Body).Trim(),
        };
        return note switch
        {
            DeviceClass c => common with
            {
                DeviceIds = [c.Id],
                Log =
                [
                    .. c.Roles.Select(r => r.Name), .. c.Builds.SelectMany(BuildWords), .. c.StopAtOnce.Select(s => s.Say), .. c.WhileOpen,
                    .. c.Access.Select(a => a.Name), .. c.Protect.SelectMany(p => Said([p.Name, p.Loses, .. p.Steps])), .. c.Proof.Select(p => p.Say), .. c.NotCovered,
                ],
            },
            Device d => common with
            {
                Names = [.. common.Names, .. Said(d.Maker, d.Model, Name(d.Class)), .. d.Boards],
                WholeNames = [.. common.WholeNames, .. Said(d.Model)],
                DeviceIds = [d.Id, d.Class],
                Log = [.. d.Parts.Select(PartWords), .. d.Drawings.SelectMany(g => Said(g.Board, g.Shows)), .. d.Access.Select(a => a.Name)],
            },
            PartClass p => common with
            {
                Causes = [.. p.Modes.Select(m => m.Name)],
                Log = [.. p.Wears, .. p.LookFor, .. p.TestInPlace, .. p.TestOut, .. p.MustMatch, .. p.MayBeBetter, .. p.MustNotChange, .. p.NewCanBeBad],
            },
            Fault f => OfFault(common, f),
            Finding f => common with
            {
                Says = [.. Said(f.Ask), .. f.Values.Select(v => v.Name), .. f.Values.SelectMany(v => v.Says)],
                FindingIds = [f.Id, .. f.Values.Select(v => $"{f.Id}={v.Id}")],
                DeviceIds = f.Classes,
            },
            Test t => common with
            {
                Says = [.. t.Revealed.SelectMany(f => Said(Name(f))), .. t.Outcomes.Select(o => o.Name)],
                FindingIds = t.Revealed,
                Causes = Said(Name(t.Decides)),
                CauseIds = Said(t.Decides),
                DeviceIds = t.Classes,
                Log = [.. t.Steps, .. t.Effort.Tools, .. Said(Name(t.MeasuresPart))],
            },
            Reset r => common with
            {
                Causes = [.. r.Clears.SelectMany(c => Said(Name(c.Fault)))],
                CauseIds = [.. r.Clears.Select(c => c.Fault)],
                DeviceIds = [.. Said(r.Class, r.Device)],
                Names = [.. common.Names, .. Said(Name(r.Class), Name(r.Device))],
                Log = [.. r.Steps, .. r.Before, .. Said(r.Erases)],
            },
            Job j => new JobWords(find).Of(common, j),
            _ => common,
        };
    }

    private IndexedNote OfFault(IndexedNote common, Fault f) => common with
    {
        Says = [.. f.Shows.Select(s => ValueName(find, s.Finding, s.Value))],
        FindingIds = [.. f.Shows.SelectMany(s => Said(s.Finding, s.Value is null ? null : $"{s.Finding}={s.Value}")).Distinct()],
        Causes = [.. f.Mends.SelectMany(m => Said(m.Name)), .. Said(Name(f.Part), f.Mode), .. f.LeadsTo.SelectMany(l => Said(Name(l.Fault)))],
        CauseIds = [f.Id],
        DeviceIds = [.. Said(f.Class, f.Device)],
        Log = [.. f.Mends.SelectMany(m => m.Steps.Concat(m.Proof.Select(p => p.Say))), .. Said(Name(f.Class), Name(f.Device), f.Role)],
    };

    private static IEnumerable<string> BuildWords(Trait trait) => trait.Values.SelectMany(v => v.Says.Prepend(v.Name)).Prepend(trait.Name);

    private string PartWords(DevicePart part) =>
        string.Join(' ', Said(part.Designator, Name(part.Part), part.Rating, part.Where));

    private string? Name(string? id) => id is null ? null : find(id)?.Name ?? id;

    internal static string ValueName(Func<string, Note?> find, string finding, string? value)
    {
        if (find(finding) is not Finding f)
        {
            return $"{finding} {value}".TrimEnd();
        }

        var named = value is null ? f.Values.LastOrDefault() : f.Values.FirstOrDefault(v => v.Id == value);
        return named is null || named.Name == named.Id ? $"{f.Name} {value}".TrimEnd() : named.Name;
    }

    internal static ImmutableArray<string> Said(params ReadOnlySpan<string?> words)
    {
        var said = ImmutableArray.CreateBuilder<string>();
        foreach (var word in words)
        {
            if (!string.IsNullOrWhiteSpace(word))
            {
                said.Add(word);
            }
        }

        return said.ToImmutable();
    }
}
