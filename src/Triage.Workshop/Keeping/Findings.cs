using System.Collections.Immutable;
using Triage.Notes;
using Triage.Workshop.Books;
using Triage.Workshop.Knowledge;

namespace Triage.Workshop.Keeping;

/// <summary>Files as they are beside what the ledger says of them.</summary>
internal sealed class Findings
{
    private readonly BookSource book;
    private readonly ImmutableDictionary<string, LedgerEntry> before;
    private readonly Dictionary<string, Seen> seen;
    private readonly HashSet<string> ids;
    private readonly List<Problem> damage = [];
    private readonly List<string> edited = [], moved = [];
    private readonly List<LedgerEntry> ledger = [];

    public Findings(BookSource book, ImmutableDictionary<string, LedgerEntry> before, Dictionary<string, Seen> seen)
    {
        (this.book, this.before, this.seen) = (book, before, seen);
        ids = [.. seen.Values.Select(s => s.Note).OfType<Notes.Kinds.Note>().SelectMany(n => n.Formerly.Append(n.Id))];
        foreach (var file in seen.Values.OrderBy(s => s.Path, StringComparer.Ordinal))
            There(file, before.GetValueOrDefault(file.Path));
        foreach (var entry in before.Values.Where(e => !seen.ContainsKey(e.Path)).OrderBy(e => e.Path, StringComparer.Ordinal))
            Gone(entry);
        Acceptable = damage.Count > 0;
        damage.AddRange(MissingFiles.Of(seen.Values.Select(s => s.Note).OfType<Notes.Kinds.Note>(), book.Folder));
    }

    private bool Acceptable { get; }

    /// <summary>What the ledger is to say from now on: of what is damaged still what it said before.</summary>
    public IEnumerable<LedgerEntry> Ledger => ledger;

    public VerifyResult Result => new()
    {
        Files = seen.Count,
        Bytes = seen.Values.Sum(s => s.Now.Bytes),
        New = seen.Keys.Count(p => !before.ContainsKey(p)),
        Edited = [.. edited],
        Moved = [.. moved],
        Acceptable = Acceptable,
        Damage = [.. damage.Select(d => d with { Severity = Severity.Error }).OrderBy(d => d.Path, StringComparer.Ordinal)],
    };

    private void There(Seen file, LedgerEntry? was)
    {
        var text = Damage(file, was);
        if (text is var (what, instead))
            damage.Add(new(file.Path, file.Unreadable?.Line ?? 0, file.Unreadable?.Column ?? 0, Severity.Error, what, instead));
        else if (was is not null && was.Sha256 != file.Now.Sha256)
            edited.Add(file.Path);
        if (text is null)
            ledger.Add(file.Now);
        else if (was is not null)
            ledger.Add(was);
    }

    private (string What, string Instead)? Damage(Seen file, LedgerEntry? was)
    {
        if (file.Unread is { } why)
            return DamageTexts.CannotRead(why);
        if (was is not null && was.Sha256 == file.Now.Sha256)
            return null;
        return was is not null && was.Bytes == file.Now.Bytes && was.Time == file.Now.Time ? DamageTexts.Rotten()
            : !file.Whole ? DamageTexts.Cut()
            : file.IsNotWhatItsNameSays ? DamageTexts.Other()
            : was is null ? null
            : file.Unreadable is { } wrong ? DamageTexts.Unreadable(wrong)
            : was.Id is { } id && !ids.Contains(id) ? DamageTexts.IdLost(id)
            : was.Log is { } log && file.Now.Log is { } now && now < log && file.Now.Id == was.Id ? DamageTexts.Shorter(now, log)
            : null;
    }

    private void Gone(LedgerEntry entry)
    {
        if (entry.Id is not { } id)
            return;
        if (ids.Contains(id))
        {
            moved.Add(entry.Path);
            return;
        }

        var (what, instead) = DamageTexts.Gone(id);
        damage.Add(new(entry.Path, 0, 0, Severity.Error, what, instead));
        ledger.Add(entry);
    }
}
