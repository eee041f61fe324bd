using System.Collections.Immutable;
using System.Globalization;
using Triage.Notes.Kinds;
using Triage.Search.Indexing;
using Triage.Search.Queries;

namespace Triage.Search.Tests;

/// <summary>A handful of invented notes that tests search in.</summary>
internal static class Shelf
{
    public static ImmutableArray<Note> Notes { get; } =
    [
        new DeviceClass("electronic-keyboard", "Electronic keyboard") { Also = ["home keyboard", "synthesiser"] },
        new Device("corvane-k61", "Corvane K-61")
        {
            Class = "electronic-keyboard",
            Maker = "Corvane",
            Model = "K-61",
            Parts = [new("C14", "backup-capacitor", "backup-supply", "main board, beside the ribbon", "0.1F 5.5V"), new("IC3", "logic", null, null, "HD-44780")],
        },
        new Device("orlin-88", "Orlin 88") { Class = "electronic-keyboard", Maker = "Orlin", Model = "88" },
        new PartClass("backup-capacitor", "Back-up capacitor (double layer)")
        {
            Also = ["memory capacitor", "supercap"],
            Modes = [new("shorted", "shorted", null), new("leaking", "leaking electrolyte", null)],
        },
        new Finding("display", "Display")
        {
            Values =
            [
                new("normal", "display works", ["shows text"], null),
                new("blank", "nothing on the display", ["blank display", "no display"], null),
            ],
        },
        new Finding("sound", "Sound") { Values = [new("normal", "sound works", [], null), new("none", "no sound", ["silent"], null)] },
        new Fault("backup-capacitor-shorted", "Back-up capacitor shorted")
        {
            Part = "backup-capacitor",
            Mode = "shorted",
            Shows = [new("display", "blank", new(0.8, 3))],
            Mends = [new("replace-backup-capacitor", "Replace the back-up capacitor", new(0.95, 3)) { Steps = ["Lift the old part, IC3 out first."] }],
        },
        Job("2024-017", "K-61, dead display", "corvane-k61", "power lamp lit, nothing on the display, no sound", 3, JobOutcome.Mended, "display=blank", "sound=none") with
        {
            Causes = [new("backup-capacitor-shorted", Grade.Measured)],
            Log = [new Saw(Day(3), "display", "blank"), new Saw(Day(3), "sound", "none"), new QuickLine(Day(3), "C14 short, 47/16 fitted, plays"), new Fixed(Day(3), "replace-backup-capacitor", Effect.Works)],
            FollowUps = [new(Day(9), false, null)],
        },
        Job("2024-018", "Orlin 88, blank", "orlin-88", "blank display since the loft", 5, JobOutcome.Unsolved, "display=blank"),
        Job("2024-019", "Orlin 88 silent", "orlin-88", "no sound at all, display works", 7, JobOutcome.Mended, "sound=none", "display=normal") with
        {
            Body = "Output transistor **2SC1815** open. See [the part](note:backup-capacitor).",
        },
        Job("2024-020", "K-61 in again", "corvane-k61", "hums loudly", 8, null),
    ];

    public static NoteIndex Index(IEnumerable<Note>? more = null)
    {
        var index = NoteIndex.InMemory();
        Fill(index, [.. Notes, .. more ?? []]);
        return index;
    }

    public static void Fill(NoteIndex index, ImmutableArray<Note> notes)
    {
        var byId = notes.ToDictionary(n => n.Id);
        foreach (var note in notes)
        {
            index.Put(IndexedNote.From(note, id => byId.GetValueOrDefault(id)));
        }

        index.Synonyms = SynonymRings.From(notes);
        index.Refresh();
    }

    public static SearchResults Find(this NoteIndex index, SearchQuery query)
    {
        using var searcher = index.OpenSearcher();
        return searcher.Search(query);
    }

    public static SearchResults Find(this NoteIndex index, string text) => index.Find(new SearchQuery(text));

    public static DateTimeOffset Day(int day) => new(2024, 3, day, 12, 0, 0, TimeSpan.Zero);

    public static Job Job(string id, string name, string? device, string complaint, int day, JobOutcome? outcome, params string[] saw) => new(id, name)
    {
        Device = device,
        Complaint = complaint,
        Opened = Day(day),
        Closed = outcome is null ? null : Day(day),
        Outcome = outcome,
        Log = [.. saw.Select(s => s.Split('=')).Select(s => new Saw(Day(day), s[0], s[1]))],
    };

    public static string Text(this IFormattable value) => value.ToString(null, CultureInfo.InvariantCulture);
}
