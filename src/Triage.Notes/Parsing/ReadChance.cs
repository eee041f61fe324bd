using Triage.Notes.Kinds;

namespace Triage.Notes.Parsing;

/// <summary>Reads a chance: a word, a number, or either with what stands behind it.</summary>
internal static class ReadChance
{
    /// <param name="needed">A bad one breaks <paramref name="owner"/>.</param>
    public static Chance? From(YamlNode node, string key, FieldReader owner, bool needed)
    {
        switch (node)
        {
            case YamlScalar scalar:
                return Plain(scalar, key, owner, needed);
            case YamlMapping mapping:
                return Weighted(mapping, key, owner, needed);
            default:
                owner.Report(node, NoteProblems.NotChance(key, "a list"), needed);
                return null;
        }
    }

    private static Chance? Plain(YamlScalar scalar, string key, FieldReader owner, bool needed)
    {
        if (FrequencyWords.Find(scalar.Text) is { } word)
        {
            return word;
        }

        if (!FieldValues.TryNumber(scalar.Text, out var p))
        {
            owner.Report(scalar, NoteProblems.NotChance(key, scalar.Text), needed);
            return null;
        }

        if (p is < 0 or > 1)
        {
            owner.Report(scalar, NoteProblems.OutsideChance(key, scalar.Text, above: p > 1), needed);
            return null;
        }

        return new Chance(p, FrequencyWords.NumberWeight);
    }

    private static Chance? Weighted(YamlMapping mapping, string key, FieldReader owner, bool needed)
    {
        var fields = owner.Inner(mapping, needed);
        var p = fields.NeededScalar("p") is { } scalar ? Plain(scalar, key, owner, needed) : null;
        var weight = fields.Text("jobs") is "exactly" ? double.PositiveInfinity : fields.Amount("jobs");
        var source = fields.Text("source");
        fields.Done();
        owner.Follow(fields, needed);
        return p is null || fields.Broken ? null : p with { Weight = weight ?? p.Weight, Source = source };
    }
}
