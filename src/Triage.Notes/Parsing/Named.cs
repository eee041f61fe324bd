namespace Triage.Notes.Parsing;

/// <summary>Names that may stand once in their list; a second one breaks its record.</summary>
/// <param name="field">Field that holds the name.</param>
internal sealed class Named(string field)
{
    private readonly Dictionary<string, int> _lines = [];

    /// <summary>The name of one item; null when it is missing.</summary>
    public string? Once(FieldReader item)
    {
        if (item.NeededScalar(field) is not { } name)
        {
            return null;
        }

        if (!_lines.TryAdd(name.Text, name.Line))
        {
            item.Break(name, NoteProblems.NamedTwice(field, name.Text, _lines[name.Text]));
        }

        return name.Text;
    }
}
