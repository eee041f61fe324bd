using Triage.Notes.Kinds;
using Triage.Notes.Markdown;

namespace Triage.Notes.Parsing;

/// <summary>Reads the fields that every note has, and hands the others to the reader of its kind.</summary>
internal static class NoteFields
{
    public static Note? Read(NotePlace place, ref NoteText text, YamlMapping mapping, NoteLog log)
    {
        var fields = new FieldReader(mapping, log, isNote: true);
        text = text with { Editable = FormatIsOurs(fields, log) };
        if (!text.Editable || ReadKind(fields, log) is not { } kind)
        {
            return null;
        }

        var id = ReadId(fields, log);
        var name = fields.NeededText("name");
        var formerly = fields.Texts("formerly");
        var also = fields.Texts("also");
        var note = ReadOfKind(kind, id ?? "", name ?? "", fields);
        fields.Done();
        var bodyLine = text.LineAt(text.BodyStart) - 1;
        if (NoteMarkdown.TooInvolvedAt(text.Body) is { } at)
        {
            log.Add(bodyLine + at, 1, NoteProblems.BodyTooInvolved());
        }

        foreach (var link in NoteMarkdown.Links(text.Body))
        {
            var line = link.Line + bodyLine;
            log.Refer(new Reference(ReferenceKind.Note, link.Id, line, link.Column));
        }

        return log.HasError
            ? null
            : note with { Format = FormatOf(fields), Formerly = formerly, Also = also, Body = text.Body, Place = place, References = log.References };
    }

    private static Note ReadOfKind(NoteKind kind, string id, string name, FieldReader fields) => kind switch
    {
        NoteKind.DeviceClass => ReadDeviceClass.From(id, name, fields),
        NoteKind.Device => ReadDevice.From(id, name, fields),
        NoteKind.PartClass => ReadPartClass.From(id, name, fields),
        NoteKind.Fault => ReadFault.From(id, name, fields),
        NoteKind.Finding => ReadFinding.From(id, name, fields),
        NoteKind.Test => ReadTest.From(id, name, fields),
        NoteKind.Reset => ReadReset.From(id, name, fields),
        NoteKind.Job => ReadJob.From(id, name, fields),
    };

    private static int FormatOf(FieldReader fields) => fields.Scalar("format") is { Text: "2" } ? 2 : 1;

    private static bool FormatIsOurs(FieldReader fields, NoteLog log)
    {
        if (fields.Scalar("format") is not { } format)
        {
            log.Add(fields.Mapping, NoteProblems.NoFormat());
            return true;
        }

        switch (format.Text)
        {
            case var ours when NoteFormat.IsRead(ours):
                return true;
            case var newer when newer.Length > 0 && newer.All(char.IsAsciiDigit) && newer.TrimStart('0') is var number && number.Length > 0 && !NoteFormat.IsRead(number):
                log.Add(format, NoteProblems.NewerFormat(newer));
                return false;
            case var other:
                log.Add(format, NoteProblems.BadFormat(other));
                return false;
        }
    }

    private static NoteKind? ReadKind(FieldReader fields, NoteLog log)
    {
        if (fields.NeededScalar("kind") is not { } word)
        {
            return null;
        }

        var kind = Words.Find<NoteKind>(word.Text);
        if (kind is null)
        {
            log.Add(word, NoteProblems.UnknownKind(word.Text, Nearest.To(word.Text, Words.All<NoteKind>())));
        }

        return kind;
    }

    private static string? ReadId(FieldReader fields, NoteLog log)
    {
        if (fields.NeededScalar("id") is not { } id)
        {
            return null;
        }

        if (!IsId(id.Text))
        {
            log.Add(id, NoteProblems.BadId(id.Text));
        }

        return id.Text;
    }

    private static bool IsId(string text) =>
        text.Length > 0 && text.All(c => char.IsAsciiLetterLower(c) || char.IsAsciiDigit(c) || c == '-') && text[0] != '-' && text[^1] != '-';
}
