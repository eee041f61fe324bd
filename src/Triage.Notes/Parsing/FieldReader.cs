using System.Collections.Immutable;
using Triage.Notes.Kinds;

namespace Triage.Notes.Parsing;

/// <summary>
/// Reads the fields of one mapping by name; <see cref="FieldValues"/> by type. What is wrong goes to the log with its place; a field that cannot be read is
/// left out; one that its record cannot do without breaks it (<see cref="Broken"/>). <see cref="Done"/> names what nobody asked for.
/// </summary>
internal sealed class FieldReader(YamlMapping mapping, NoteLog log, bool isNote = false)
{
    private readonly HashSet<string> _known = [];

    public YamlMapping Mapping => mapping;

    /// <summary>The record cannot be used.</summary>
    public bool Broken { get; private set; }

    /// <summary>The value of a field; null when it is absent or empty.</summary>
    public YamlNode? Node(string key)
    {
        _known.Add(key);
        return mapping.Find(key)?.Value is { } value and not YamlScalar { IsNull: true } ? value : null;
    }

    public bool Has(string key) => Node(key) is not null;

    public YamlScalar? Scalar(string key)
    {
        switch (Node(key))
        {
            case null:
                return null;
            case YamlScalar scalar:
                return scalar;
            case { } other:
                log.Add(other, NoteProblems.NotText(key));
                return null;
        }
    }

    public YamlScalar? NeededScalar(string key)
    {
        var scalar = Scalar(key);
        if (scalar is null)
        {
            Break(mapping, NoteProblems.MissingField(key));
        }

        return scalar;
    }

    /// <summary>Paths of files inside the book.</summary>
    public ImmutableArray<string> Files(string key) =>
        [.. Scalars(key).Where(s => StaysInside(key, s)).Select(s => s.Text)];

    public string? NeededFile(string key)
    {
        var file = NeededScalar(key);
        Broken |= file is not null && !StaysInside(key, file);
        return file?.Text;
    }

    /// <summary>A group of fields; null when absent. Call its <see cref="Done"/> when it has been read.</summary>
    /// <param name="vital">What breaks it breaks the note, where this is the note; see <see cref="Follow"/>.</param>
    public FieldReader? Group(string key, bool vital = false)
    {
        switch (Node(key))
        {
            case null:
                return null;
            case YamlMapping group:
                return Inner(group, vital);
            case { } other:
                Report(other, NoteProblems.NotGroup(key), vital);
                return null;
        }
    }

    /// <summary>A list of groups, each read into a record; broken ones are left out.</summary>
    /// <param name="vital">A broken one breaks this record too.</param>
    /// <param name="plain">Reads an item that is one text; null where none may be.</param>
    public ImmutableArray<T> Each<T>(string key, Func<FieldReader, T> read, bool vital = false, Func<YamlScalar, T>? plain = null)
    {
        var all = ImmutableArray.CreateBuilder<T>();
        foreach (var item in Items(key))
        {
            if (plain is not null && item is YamlScalar text)
            {
                all.Add(plain(text));
                continue;
            }

            if (item is not YamlMapping group)
            {
                Report(item, NoteProblems.NotGroup(key), vital);
                continue;
            }

            var fields = new FieldReader(group, log, isNote && vital);
            var record = read(fields);
            fields.Done();
            Follow(fields, vital);
            if (!fields.Broken)
            {
                all.Add(record);
            }
        }

        return all.ToImmutable();
    }

    /// <summary>The items of a list; a value that is no list counts as a list of one.</summary>
    public ImmutableArray<YamlNode> Items(string key) => Node(key) switch
    {
        null => [],
        YamlSequence sequence => sequence.Items,
        { } one => [one],
    };

    public void Warn(YamlNode at, ProblemText text) => log.Add(at, text);

    public void Refer(ReferenceKind kind, YamlScalar at, string? within) => log.Refer(kind, at, within);

    /// <summary>A reader of a mapping inside this one.</summary>
    /// <param name="vital">What breaks it breaks the note, where this is the note.</param>
    public FieldReader Inner(YamlMapping inner, bool vital = false) => new(inner, log, isNote && vital);

    /// <summary>Names what is wrong with a value; a vital one breaks the record.</summary>
    public void Report(YamlNode at, ProblemText text, bool vital)
    {
        if (vital)
        {
            Break(at, text);
        }
        else
        {
            log.Add(at, text);
        }
    }

    /// <summary>The record cannot be used: an error when it is the note itself.</summary>
    public void Break(YamlNode at, ProblemText text)
    {
        Broken = true;
        log.Add(at, text, isNote ? Severity.Error : text.Severity == Severity.Error ? Severity.Warning : text.Severity);
    }

    /// <summary>Breaks this record when a vital one inside it is broken.</summary>
    public void Follow(FieldReader? inner, bool vital) => Broken |= vital && inner?.Broken == true;

    /// <summary>Names the fields that nobody asked for.</summary>
    public void Done()
    {
        foreach (var field in mapping.Fields.Where(f => !_known.Contains(f.Key.Text)))
        {
            log.Add(field.Key, NoteProblems.UnknownField(field.Key.Text, Nearest.To(field.Key.Text, _known)));
        }
    }

    /// <summary>The texts of a list; what is no text is named.</summary>
    public ImmutableArray<YamlScalar> Scalars(string key)
    {
        var all = ImmutableArray.CreateBuilder<YamlScalar>();
        foreach (var item in Items(key))
        {
            if (item is YamlScalar scalar)
            {
                all.Add(scalar);
            }
            else
            {
                log.Add(item, NoteProblems.NotText(key));
            }
        }

        return all.ToImmutable();
    }

    private bool StaysInside(string key, YamlScalar file)
    {
        var path = file.Text;
        var inside = !path.StartsWith('/') && !path.Contains('\\', StringComparison.Ordinal) && !path.Contains(':', StringComparison.Ordinal)
            && !path.Split('/').Contains("..");
        if (!inside)
        {
            log.Add(file, NoteProblems.LeavesFolder(key, path));
        }

        return inside;
    }
}
