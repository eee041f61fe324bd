using System.Globalization;
using Lucene.Net.Documents;
using Lucene.Net.Util;

namespace Triage.Search.Indexing;

/// <summary>A note as a Lucene document, and back.</summary>
internal static class NoteDocument
{
    /// <summary>Raised with every change of the fields; an index of another format is rebuilt.</summary>
    public const int Format = 1;

    public const string Id = "id";
    public const string WholeName = "whole-name";
    public const string Kind = "kind";
    public const string Title = "title";
    public const string Outcome = "outcome";
    public const string Fix = "fix";
    public const string Date = "date";
    public const string DateColumn = "by-date";
    public const string WeightColumn = "weight";

    // longer values cannot be column values (32,766 bytes in Lucene)
    private const int LongestValue = 8_000;

    public static Document From(IndexedNote note)
    {
        var document = new Document
        {
            new StringField(Id, note.Id, Field.Store.YES),
            new StoredField(Kind, note.Kind),
            new StoredField(Title, note.Title),
            new SingleDocValuesField(WeightColumn, Weight(note.Hold)),
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
            }
        }

        foreach (var name in note.WholeNames.Select(Bare).Distinct().Where(n => n.Length is > 0 and < LongestValue))
        {
            document.Add(new StringField(WholeName, name, Field.Store.NO));
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

    private static void Store(Document document, string name, string? value)
    {
        if (value is not null)
        {
            document.Add(new StoredField(name, value));
        }
    }
}
