using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using Triage.Notes;

namespace Triage.Workshop.Exchange.Importing;

/// <summary>A column map as a person would write it, with remarks.</summary>
internal static class MapText
{
    private static readonly JsonSerializerOptions AsTyped = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    public static string Of(ColumnMap map, string table)
    {
        var lines = new List<string> { $"// A guess from the header and the first rows of {table.ReplaceLineEndings(" ")}. Read it, mend it, then: triage import TABLE --map THIS" };
        void Line(string name, string? value, string remark = "") => lines.AddRange(value is null ? [] : [$"  {Quoted(name)}: {value},{(remark.Length > 0 ? $" // {remark}" : "")}"]);
        lines.Add("{");
        Line("delimiter", Quoted(map.Delimiter));
        Line("encoding", Quoted(map.Encoding));
        Line("date-format", Quoted(map.DateFormat), "look at a row: is the day where this says?");
        Line("id", Object(("prefix", map.Id.Prefix), ("column", map.Id.Column)), map.Id.Column is null ? "no column is different in every row: rows are numbered" : "");
        Line("class", Object(("column", map.Class.Column), ("id", map.Class.Id), ("name", map.Class.Name)), map.Class is { Column: not null, Id: not null } ? "id and name are for empty cells" : "");
        Line("unit", map.Unit is { } unit ? Quoted(unit) : null, "write \"device\" instead when each name shall become a note");
        Line("closed", Object(("column", map.Closed.Column), ("fixed", map.Closed.Fixed)), map.Closed.Fixed is null ? "" : "no column of dates was found");
        Line("complaint", map.Complaint is { } complaint ? Quoted(complaint) : null);
        Line("cause", map.Cause is { } cause ? Quoted(cause) : null);
        Line("grade", map.Cause is null ? null : Quoted(Words.Of(map.Grade)), "how sure the causes are: told or hearsay, unless somebody measured");
        Line("outcome", Outcome(map.Outcome), "otherwise: what no line above names");
        Line("note-prefix", Quoted(map.NotePrefix));
        Line("others", "\"text\"", "every other column is kept as text below the job");
        lines.Add("}");
        return string.Join('\n', lines) + "\n";
    }

    private static string Outcome(OutcomeColumn outcome)
    {
        var otherwise = $"\"otherwise\": {Quoted(Words.Of(outcome.Otherwise!.Value))}";
        if (outcome.Column is null)
            return $"{{ {otherwise} }}";
        var values = outcome.Values.OrderBy(v => v.Value).ThenBy(v => v.Key, StringComparer.Ordinal).Select(v => $"      {Quoted(v.Key)}: {Quoted(Words.Of(v.Value))}");
        return new StringBuilder($"{{ \"column\": {Quoted(outcome.Column)},\n    \"values\": {{\n").AppendJoin(",\n", values).Append($"\n    }},\n    {otherwise} }}").ToString();
    }

    private static string Object(params (string Name, string? Value)[] fields) =>
        "{ " + string.Join(", ", fields.Where(f => f.Value is { Length: > 0 }).Select(f => $"{Quoted(f.Name)}: {Quoted(f.Value!)}")) + " }";

    private static string Quoted(string text) => JsonSerializer.Serialize(text, AsTyped);
}
