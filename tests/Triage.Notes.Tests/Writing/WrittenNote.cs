using System.Collections.Immutable;
using FsCheck;
using FsCheck.Fluent;

namespace Triage.Notes.Tests.Writing;

/// <summary>A field as somebody may have written it.</summary>
public sealed record Fragment(string Key, ImmutableArray<string> Lines);

/// <summary>A job note in somebody's own formatting, made of fields that are known.</summary>
public sealed record WrittenNote(string NewLine, bool Mark, ImmutableArray<Fragment> Fields, string Body)
{
    public string Text => (Mark ? "\uFEFF" : "") + Lines(["---"]) + string.Concat(Fields.Select(f => Lines(f.Lines))) + "---" + Body;

    /// <summary>Everything before a field's lines, and everything after them.</summary>
    public (string Before, string After) Around(string key)
    {
        var at = Fields.Select(f => f.Key).ToList().IndexOf(key);
        var before = (Mark ? "\uFEFF" : "") + Lines(["---"]) + string.Concat(Fields.Take(at).Select(f => Lines(f.Lines)));
        return (before, string.Concat(Fields.Skip(at + 1).Select(f => Lines(f.Lines))) + "---" + Body);
    }

    public override string ToString() => Text;

    private string Lines(IEnumerable<string> lines) => string.Concat(lines.Select(l => l + NewLine));
}

/// <summary>Generates notes with line ends, comments, anchors and quoting of all sorts.</summary>
public static class WrittenNotes
{
    private static readonly string[][] Ids = [["id: k-017"], ["'id': \"k-017\"   # from the label"]];

    private static readonly string[][] Names =
    [
        ["name: K-61, dead display"], ["name:   'it''s dead'  # odd"], ["\"name\": \"tab\\there\""],
        ["name: >-", "  folded over", "  two lines"], ["name: |", "  as typed", "", "  # no comment"], ["name: plain over", "  two lines"],
        ["name:", "  on the next line   # here"],
    ];

    private static readonly string[][] People =
    [
        ["owner: &who \"H. Amsel\"", "technician: *who"], ["owner: &who", "  H. Amsel", "technician:   *who # the same"],
        ["owner: !!str 12", "technician: Runa"],
    ];

    private static readonly string[][] Histories =
    [
        ["history: [a, 'b, c', \"d\"]"], ["history:", "- first", "- second # why"], ["history:", "    - first", "    # between", "    - >", "      folded", "    -  third"],
        ["history: [", "  one,   # in brackets", "  two", "]"], ["history: []  # none"], ["history:"], ["history: ~   # nobody asked"], ["history: loft"],
        ["history: &h", "  - a", "  -", "    b"], ["history:   # told by the owner", "  - a-b", "  -  # c-d", "    e"],
    ];

    private static readonly string[][] Consents =
    [
        ["consent: {spending-limit: 40, may-erase: true}"], ["consent:", "  spending-limit: 40   # said twice", "  # asked on the phone", "  may-erase: yes"],
        ["consent: &c { may-erase : false , }"], ["consent: {}"], ["consent:"],
    ];

    private static readonly string[][] Logs =
    [
        ["log: []"], ["log:"], ["log: []   # nothing yet"],
        ["log:", "  - {at: 2024-03-02, line: 'first'}   # quick", "  -   at: 2024-03-03", "      line: second", "  # at the end"],
        ["log:", "- at: 2024-03-02", "  line: |", "    typed", "    - like a list", "- {at: 2024-03-03,", "   line: x}"],
        ["log: [{at: 2024-03-02, line: a}, {at: 2024-03-03, line: b}]"],
    ];

    private static readonly string[][] Unknown =
    [
        ["x-shelf: {a: [1, 2], \"b c\": 'it''s'}"], ["# a comment of its own", "", "x-shelf:", "  deep:", "    - {k: v}"], ["", "x-shelf: 0x1F"],
    ];

    public static Arbitrary<WrittenNote> Note() =>
        (from newLine in Gen.Elements("\n", "\r\n")
         from mark in Gen.Elements(true, false)
         from id in One("id", Ids)
         from name in One("name", Names)
         from people in Maybe(Gen.Elements(People).Select(Pair))
         from history in Maybe(One("history", Histories))
         from consent in Maybe(One("consent", Consents))
         from unknown in Maybe(One("x-shelf", Unknown))
         from log in Maybe(One("log", Logs))
         from kindLast in Gen.Elements(true, false)
         from body in Gen.Elements("", newLine, $"{newLine}Text.{newLine}", $"  {newLine}{newLine}# Head{newLine}no end")
         let kind = new Fragment("kind", ["kind: job"])
         let format = new Fragment("format", ["format: 1 # first"])
         let middle = id.Concat(name).Concat(people).Concat(history).Concat(consent).Concat(unknown).Concat(log)
         select new WrittenNote(newLine, mark, [format, .. kindLast ? middle.Append(kind) : middle.Prepend(kind)], body)).ToArbitrary();

    private static Gen<ImmutableArray<Fragment>> One(string key, string[][] ways) =>
        Gen.Elements(ways).Select(lines => ImmutableArray.Create(new Fragment(key, [.. lines])));

    private static ImmutableArray<Fragment> Pair(string[] lines) =>
        [new Fragment("owner", [.. lines[..^1]]), new Fragment("technician", [lines[^1]])];

    private static Gen<ImmutableArray<Fragment>> Maybe(Gen<ImmutableArray<Fragment>> fragment) =>
        Gen.OneOf(fragment, fragment, Gen.Constant(ImmutableArray<Fragment>.Empty));
}
