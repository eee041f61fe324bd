using System.Globalization;
using Lucene.Net.Documents;
using Lucene.Net.Index;
using Lucene.Net.Util;
using Triage.Search.Analysis;

namespace Triage.Search.Indexing;

/// <summary>A note as a Lucene document, and back.</summary>
internal static class NoteDocument
{
    /// <summary>Raised with every change of the fields; an index of another format is rebuilt.</summary>
    public const int Format = 2;

    public const string Id = "id";
    public const string WholeName = "whole-name";

    /// <summary>Words as they are written, for spelling and for words not yet typed to the end.</summary>
    public const string Word = NoteAnalyzer.WholeWords;

    /// <summary>All text in one field: how rare a word is among all notes, wherever it stands.</summary>
    public const string Every = "every";

    /// <summary>Finding ids and finding=value, as they stand.</summary>
    public const string Finding = "finding";

    public const string Kind = "kind";
    public const string Title = "title";
    public const string Outcome = "outcome";
    public const string Fix = "fix";
    public const string Date = "date";
    public const string DateColumn = "by-date";
    public const string WeightColumn = "weight";
    public const string HeldColumn = "held";

    // longer values cannot be column values (32,766 bytes in Lucene)
    private const int LongestValue = 8_000;

    private static readonly FieldType WordType = new(TextField.TYPE_NOT_STORED) { IndexOptions = IndexOptions.DOCS_ONLY, OmitNorms = true };

    public static Document From(IndexedNote note)
    {
        var document = new Document
        {
            new StringField(Id, note.Id, Field.Store.YES),
            new StoredField(Kind, note.Kind),
            new StoredField(Title, note.Title),
            new SingleDocValuesField(WeightColumn, Weight(note.Hold) * Worth(note.Kind)),
            new NumericDocValuesField(HeldColumn, note.Hold == Hold.Held ? 1 : 0),
            new NumericDocValuesField(DateColumn, note.Date?.UtcTicks ?? 0),
        };
        Store(document, Outcome, note.Outcome);
        Store(document, Fix, note.Fix);
        Store(document, Date, note.Date?.ToString("O", CultureInfo.InvariantCulture));
        foreach (var field in NoteField.All)
        {
            if (field.Text(note) is { Length: > 0 } text)
            {
                document.Add(new TextField(field.Name, text, Field.Store.YES));
                document.Add(new TextField(Every, text, Field.Store.NO));
                document.Add(new Field(Word, text, WordType));
            }
        }

        foreach (var name in note.WholeNames.Select(Bare).Distinct().Where(n => n.Length is > 0 and < LongestValue))
        {
            document.Add(new StringField(WholeName, name, Field.Store.NO));
        }

        foreach (var finding in note.FindingIds.Where(f => f.Length is > 0 and < LongestValue))
        {
            document.Add(new StringField(Finding, finding, Field.Store.YES));
        }

        foreach (var filter in NoteFilter.All)
        {
            foreach (var value in filter.Values(note).Distinct().Where(v => v.Length is > 0 and < LongestValue))
            {
                document.Add(new SortedSetDocValuesField(filter.Column, new BytesRef(value)));
            }
        }

        return document;
    }

    /// <summary>Letters and digits only, lower case: K-61 and k61 are one name.</summary>
    public static string Bare(string name) => string.Concat(name.Where(char.IsLetterOrDigit)).ToLowerInvariant();

    public static DateTimeOffset? DateOf(Document document) =>
        document.Get(Date) is { } date ? DateTimeOffset.Parse(date, CultureInfo.InvariantCulture) : null;

    /// <summary>Prior fixes that held come a little before those that did not; set by hand.</summary>
    private static float Weight(Hold hold) => hold switch
    {
        Hold.Held => 1.2f,
        Hold.Mended => 1.1f,
        Hold.NotMended => 1f,
    };

    /// <summary>People look for prior fixes: what only tells how to look comes after what tells what it is; set by hand on the odd half of the judged questions.</summary>
    private static float Worth(string kind) => kind switch
    {
        "test" => 0.75f,
        "finding" => 0.85f,
        _ => 1f,
    };

    private static void Store(Document document, string name, string? value)
    {
        if (value is not null)
        {
            document.Add(new StoredField(name, value));
        }
    }
}
