using Triage.Notes.Kinds;

namespace Triage.Notes.Parsing;

/// <summary>Reads a chance: a word, a number, or either with what stands behind it.</summary>
internal static class ReadChance
{
    public static Chance? From(YamlNode node, string key, NoteLog log)
    {
        switch (node)
        {
            case YamlScalar scalar:
                return Plain(scalar, key, log);
            case YamlMapping mapping:
                return Weighted(new FieldReader(mapping, log), key, log);
            default:
                log.Add(node, NoteProblems.NotChance(key, "a list"));
                return null;
        }
    }

    private static Chance? Plain(YamlScalar scalar, string key, NoteLog log)
    {
        if (FrequencyWords.Find(scalar.Text) is { } word)
        {
            return word;
        }

        if (!FieldReader.TryNumber(scalar.Text, out var p))
        {
            log.Add(scalar, NoteProblems.NotChance(key, scalar.Text));
            return null;
        }

        if (p is < 0 or > 1)
        {
            log.Add(scalar, NoteProblems.OutsideChance(key, scalar.Text));
            return null;
        }

        return new Chance(p, FrequencyWords.NumberWeight);
    }

    private static Chance? Weighted(FieldReader fields, string key, NoteLog log)
    {
        var p = fields.NeededScalar("p") is { } scalar ? Plain(scalar, key, log) : null;
        var weight = fields.Text("jobs") is "exactly" ? double.PositiveInfinity : fields.Amount("jobs");
        var source = fields.Text("source");
        fields.Done();
        return p is null || fields.Broken ? null : p with { Weight = weight ?? p.Weight, Source = source };
    }
}
